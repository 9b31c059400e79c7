package palmturn.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.PDXObject;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import palmturn.trial.Hand;
import palmturn.trial.TrialId;

/** The PDF, read back by the library that other programs read it with. */
class PdfTest {
  private static Report report;
  private static Page page;
  private static byte[] a4;

  @BeforeAll
  static void made() throws IOException {
    ReportInput input = ReportSamples.twoBlocks();
    report = Report.of(input);
    page = Report.page(input);
    a4 = report.pdf(Paper.A4);
    Path folder = Files.createDirectories(Path.of("target", "look"));
    Files.write(folder.resolve("report.pdf"), a4);
  }

  @Test
  void everySentenceAndFigureCanBeReadAsText() throws IOException {
    try (PDDocument document = Loader.loadPDF(a4)) {
      // What is broken after a hyphen is read as two words.
      String text = flat(text(document, 1, document.getNumberOfPages())).replace("- ", "-");
      assertTrue(text.contains(page.title()), "title");
      for (Page.Sentence each : page.lead().sentences()) {
        String sentence = flat(each.before() + each.strong() + each.after()).replace("- ", "-");
        assertTrue(text.contains(sentence), () -> "missing: " + sentence);
      }
      for (String caution : page.cautions()) {
        assertTrue(text.contains(flat(caution)), () -> "missing: " + caution);
      }
      for (Page.TrialPart trial : page.trials()) {
        for (Page.MeasureGroup group : trial.groups()) {
          for (Page.MeasureRow row : group.rows()) {
            assertTrue(text.contains(flat(row.sentence())), () -> "missing: " + row.sentence());
          }
        }
      }
      assertFalse(text.contains("□"), "a character that the typeface lacks");
    }
  }

  @Test
  void theFirstPageHoldsAllThatIsForTheAthlete() throws IOException {
    ReportInput input = ReportSamples.read(ReportSamples.twoBlocks());
    Page page = Report.page(input);
    try (PDDocument document = Loader.loadPDF(Report.of(input).pdf(Paper.A4))) {
      String first = flat(text(document, 1, 1));
      for (Page.QualityRow row : page.lead().rows()) {
        assertTrue(first.contains(row.name()), row.name());
        assertTrue(first.contains(flat(row.line())), row.line());
      }
      List<String> cautions = page.cautions();
      assertTrue(first.contains(flat(cautions.get(cautions.size() - 1))), "the last caution");
    }
  }

  @ParameterizedTest
  @EnumSource
  void theFirstPageHoldsHoweverMuchIsOpenAndSaid(Paper paper) throws IOException {
    ReportInput input = ReportSamples.muchOpen();
    Page much = Report.page(input);
    assertTrue(much.open().size() > 5, much.open().toString());
    byte[] pdf = Report.of(input).pdf(paper);
    Files.write(Path.of("target", "look", "much-open-" + paper + ".pdf"), pdf);
    try (PDDocument document = Loader.loadPDF(pdf)) {
      String first = flat(text(document, 1, 1));
      List<String> cautions = much.cautions();
      assertTrue(first.contains(flat(cautions.get(cautions.size() - 1))), "the last caution");
      for (Page.QualityRow row : much.lead().rows()) {
        assertTrue(first.contains(flat(row.line())), row.line());
      }
      String details =
          pageNamed(document, first, "(?:And \\d+ more|\\d+ things): see page (\\d+)\\.");
      for (String line : much.open()) {
        assertTrue(details.contains(flat(line)), line);
      }
      String words = pageNamed(document, first, "The coach’s words in full: page (\\d+)\\.");
      assertTrue(words.contains("Messages coach, 16 November 2026"), words);
    }
  }

  private static String pageNamed(PDDocument document, String first, String words)
      throws IOException {
    Matcher named = Pattern.compile(words).matcher(first);
    assertTrue(named.find(), first);
    int at = Integer.parseInt(named.group(1));
    assertTrue(at > 1);
    return flat(text(document, at, at));
  }

  @Test
  void chartsAreVectorsWithTextAndOnlyStillsArePixels() throws IOException {
    try (PDDocument document = Loader.loadPDF(a4)) {
      int forms = 0;
      int images = 0;
      for (PDPage each : document.getPages()) {
        for (PDXObject object : objects(each.getResources())) {
          forms += object instanceof PDFormXObject ? 1 : 0;
          images += object instanceof PDImageXObject ? 1 : 0;
          if (object instanceof PDFormXObject form) {
            assertEquals(
                0,
                objects(form.getResources()).stream()
                    .filter(PDImageXObject.class::isInstance)
                    .count(),
                "pixels in a chart");
          }
        }
      }
      int stills = page.trials().stream().mapToInt(trial -> trial.pictures().size()).sum();
      assertTrue(stills > 0);
      assertEquals(stills, images);
      int charts = 2 * page.trials().size() + 2 * (page.lead().rows().size() + 2);
      assertTrue(forms >= charts, () -> "fewer than " + charts);
      assertTrue(flat(text(document, 1, 1)).contains("limit 80"), "words in a chart");
    }
  }

  @Test
  void fontsAreInsideAndThereIsNoOtherThanLato() throws IOException {
    try (PDDocument document = Loader.loadPDF(a4)) {
      Set<String> names = new HashSet<>();
      for (PDPage each : document.getPages()) {
        for (COSName name : each.getResources().getFontNames()) {
          PDFont font = each.getResources().getFont(name);
          assertTrue(font.isEmbedded(), font.getName());
          names.add(font.getName().replaceFirst(".*\\+", ""));
        }
      }
      assertEquals(Set.of("Lato-Regular", "Lato-Bold"), names);
    }
  }

  @Test
  void screenReadersGetTitleLanguageTagsAndWordsForCharts() throws IOException {
    try (PDDocument document = Loader.loadPDF(a4)) {
      assertEquals(page.title(), document.getDocumentInformation().getTitle());
      assertEquals("en", document.getDocumentCatalog().getLanguage());
      assertTrue(document.getDocumentCatalog().getMarkInfo().isMarked());
      assertNotNull(document.getDocumentCatalog().getStructureTreeRoot());
      assertTrue(document.getDocumentCatalog().getViewerPreferences().displayDocTitle());
      assertTrue(document.getDocumentCatalog().getMetadata() != null);
    }
  }

  @ParameterizedTest
  @EnumSource
  void everyPageHasThePapersSizeAndItsNumber(Paper paper) throws IOException {
    byte[] pdf = paper == Paper.A4 ? a4 : report.pdf(paper);
    PDRectangle size = paper == Paper.A4 ? PDRectangle.A4 : PDRectangle.LETTER;
    try (PDDocument document = Loader.loadPDF(pdf)) {
      int pages = document.getNumberOfPages();
      assertTrue(pages > 2);
      for (int i = 1; i <= pages; i++) {
        PDRectangle box = document.getPage(i - 1).getMediaBox();
        assertEquals(size.getWidth(), box.getWidth(), 0.5);
        assertEquals(size.getHeight(), box.getHeight(), 0.5);
        assertTrue(text(document, i, i).contains("page %d of %d".formatted(i, pages)));
      }
    }
  }

  @ParameterizedTest
  @EnumSource
  void noHeadingStandsAloneAtTheFootOfAPageAndNoTableIsCut(Paper paper) throws IOException {
    byte[] pdf = paper == Paper.A4 ? a4 : report.pdf(paper);
    Set<String> headings = new HashSet<>(Set.of("What was filmed", "Messages"));
    page.trials().forEach(trial -> headings.add(trial.heading()));
    page.blocks().forEach(block -> headings.add(block.heading()));
    page.changes().forEach(change -> headings.add(change.heading()));
    try (PDDocument document = Loader.loadPDF(pdf)) {
      int heads = 0;
      for (int i = 1; i <= document.getNumberOfPages(); i++) {
        List<String> lines = new ArrayList<>(flatLines(text(document, i, i)));
        assertFalse(headings.contains(lines.get(lines.size() - 1)), "page " + i);
        heads += (int) lines.stream().filter(line -> line.startsWith("Measure Figure")).count();
      }
      // A table that goes on over the page repeats its head.
      assertEquals(page.trials().size(), heads);
    }
  }

  @Test
  void whatPeopleWroteCanBeAnything() throws IOException {
    ReportInput hostile = ReportSamples.hostile("<b>&\"'\u0000\u0007\uD800]]> {{x}} \u202E手");
    byte[] pdf = Report.of(hostile).pdf(Paper.A4);
    try (PDDocument document = Loader.loadPDF(pdf)) {
      String text = flat(text(document, 1, document.getNumberOfPages()));
      assertTrue(text.contains("<b>&\"'"), text.substring(0, 200));
    }
    String html = Report.of(hostile).html();
    assertTrue(html.contains("&lt;b>&amp;") || html.contains("&lt;b&gt;&amp;"));
    assertTrue(html.chars().noneMatch(c -> c < 0x20 && c != '\n' && c != '\r' && c != '\t'));
  }

  @Test
  void theSameInputGivesTheSameFile() {
    ReportInput input =
        ReportSamples.of(ReportSamples.filmed(new TrialId(Hand.LEFT, "baseline", 1)));
    assertArrayEquals(Report.of(input).pdf(Paper.A4), Report.of(input).pdf(Paper.A4));
  }

  private static List<PDXObject> objects(PDResources resources) throws IOException {
    List<PDXObject> objects = new ArrayList<>();
    if (resources != null) {
      for (COSName name : resources.getXObjectNames()) {
        objects.add(resources.getXObject(name));
      }
    }
    return objects;
  }

  private static String text(PDDocument document, int from, int to) throws IOException {
    PDFTextStripper stripper = new PDFTextStripper();
    stripper.setStartPage(from);
    stripper.setEndPage(to);
    return stripper.getText(document);
  }

  private static String flat(String text) {
    return text.replaceAll("[\\s\\u00A0]+", " ").strip();
  }

  private static List<String> flatLines(String text) {
    return text.lines().map(PdfTest::flat).filter(line -> !line.isEmpty()).toList();
  }
}
