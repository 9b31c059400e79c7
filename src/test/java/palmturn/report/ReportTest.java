package palmturn.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.xml.sax.InputSource;
import palmturn.advise.Caution;
import palmturn.advise.LibraryDrill;
import palmturn.advise.Training;
import palmturn.measure.Measure;
import palmturn.measure.Measures;
import palmturn.wording.MeasureSentences;

class ReportTest {
  private static final Pattern SVG = Pattern.compile("<svg.*?</svg>", Pattern.DOTALL);

  static Stream<ReportInput> inputs() {
    return Stream.of(
        ReportSamples.twoBlocks(),
        ReportSamples.hostile(),
        ReportSamples.nothing(),
        ReportSamples.estimated());
  }

  @ParameterizedTest
  @MethodSource("inputs")
  void thePageHoldsEverythingAndFetchesNothing(ReportInput input) {
    String html = Report.of(input).html();
    assertFalse(html.contains("http:"), "an address");
    assertFalse(html.contains("https:"), "an address");
    assertFalse(html.contains("<link"));
    assertFalse(html.contains("@import"));
    Matcher url = Pattern.compile("url\\(([^)]{0,5})").matcher(html);
    while (url.find()) {
      assertTrue(url.group(1).startsWith("data:") || url.group(1).startsWith("#"), url.group(1));
    }
    Matcher source = Pattern.compile("src=\"([^\"]{0,11})").matcher(html);
    while (source.find()) {
      assertEquals("data:image/", source.group(1));
    }
    assertTrue(html.contains("default-src 'none'"));
  }

  @ParameterizedTest
  @MethodSource("inputs")
  void everyChartIsWellFormedNamedAndOneOfAKind(ReportInput input) throws Exception {
    String html = Report.of(input).html();
    Matcher svg = SVG.matcher(html);
    while (svg.find()) {
      DocumentBuilderFactory.newInstance()
          .newDocumentBuilder()
          .parse(new InputSource(new StringReader(svg.group())));
      assertTrue(svg.group().contains("aria-hidden") || svg.group().contains("<title"));
    }
    Matcher id = Pattern.compile(" id=\"([^\"]*)\"").matcher(html);
    Set<String> seen = new HashSet<>();
    while (id.find()) {
      assertTrue(seen.add(id.group(1)), () -> "twice: " + id.group(1));
    }
  }

  @Test
  void whatPeopleWroteIsNeverMarkup() {
    String html = Report.of(ReportSamples.hostile()).html();
    assertFalse(html.contains("<script"));
    assertTrue(html.contains("&lt;script&gt;"));
    assertFalse(Pattern.compile("(alt|title|content)=\"[^\"]*<").matcher(html).find());
  }

  @Test
  void theSameInputGivesTheSamePage() {
    assertEquals(
        Report.of(ReportSamples.twoBlocks()).html(), Report.of(ReportSamples.twoBlocks()).html());
  }

  @Test
  void everyMeasureHasASentenceOfItsOwn() {
    for (Measure measure : Measures.ALL) {
      assertTrue(MeasureSentences.knows(measure), measure.id());
    }
  }

  @ParameterizedTest
  @MethodSource("inputs")
  void everyRowSaysOneSentence(ReportInput input) {
    for (Page.TrialPart trial : Report.page(input).trials()) {
      for (Page.MeasureGroup group : trial.groups()) {
        for (Page.MeasureRow row : group.rows()) {
          assertTrue(row.sentence().endsWith("."), row.name());
          assertFalse(row.sentence().contains("null"), row.sentence());
          assertFalse(row.sentence().contains("NaN"), row.sentence());
          assertFalse(row.value().contains("-"), row.value());
        }
      }
    }
  }

  @Test
  void aCvNearItsTimingFloorIsShownAsAtMost() {
    ReportInput input = ReportSamples.twoBlocks();
    int checked = 0;
    for (int i = 0; i < input.score().trials().size(); i++) {
      var score = input.score().trials().get(i);
      Page.MeasureRow row =
          Report.page(input).trials().get(i).groups().stream()
              .flatMap(group -> group.rows().stream())
              .filter(each -> each.name().equals(Measures.STEADY_CV.name()))
              .findFirst()
              .orElseThrow();
      boolean near = score.rhythm().steadyCvPct() < 2 * score.rhythm().timingFloorPct();
      assertEquals(near, row.value().startsWith("≤\u00A0"), row.value());
      assertEquals(near, row.sentence().contains("at most"), row.sentence());
      checked += near ? 1 : 0;
    }
    assertTrue(checked > 0, "the sample holds none");
  }

  @Test
  void whatCantBeToldSaysWhy() {
    Page page = Report.page(ReportSamples.nothing());
    Page.TrialPart trial = page.trials().get(0);
    List<String> sentences =
        trial.groups().stream()
            .flatMap(group -> group.rows().stream())
            .filter(row -> row.value().equals("–"))
            .map(Page.MeasureRow::sentence)
            .toList();
    assertFalse(sentences.isEmpty());
    sentences.forEach(s -> assertTrue(s.startsWith("Can’t be told: "), s));
    assertTrue(page.open().contains("Filmed and not yet marked: right hand, baseline, repeat 1."));
    assertTrue(
        page.notShown().stream().anyMatch(s -> s.startsWith("The clip could not be opened")));
  }

  @Test
  void theEstimateSaysWhatItRestsOn() {
    Page.EstimatePart part = Report.page(ReportSamples.estimated()).trials().get(0).estimate();
    String words = (String.join(" ", part.sentences()) + " " + part.lines()).replace('\u00A0', ' ');
    for (String said :
        List.of(
            "found 28 slaps, 1 double, the reading has 25 slaps, 1 double",
            "within 25 ms and says the same",
            "words=sound, motion and shape",
            "12.0 ms before the picture",
            "timing floor 1.9 %",
            "lowest 0.30",
            "2.55 Hz, turns there and back",
            "about 172° from side to side; last third − first −32° (95 % interval −38 to −26)",
            "up to 4.8 cm",
            "lost for 0.4 s",
            "lost once, then up to about 1.8 cm away (SD 0.8)")) {
      assertTrue(words.contains(said), () -> said + " is missing in: " + words);
    }
    assertEquals(List.of("Two contacts were seen and not heard."), part.warnings());
    assertFalse(words.contains("agree"), words);
  }

  @Test
  void anUnreadTrialShowsItsEstimateAndNoFigure() {
    Page page = Report.page(ReportSamples.estimated());
    Page.TrialPart unread = page.trials().get(1);
    assertTrue(unread.groups().isEmpty());
    assertTrue(unread.strip().svg().contains("estimate, side unknown"));
    assertTrue(page.open().contains("Filmed and not yet marked: left hand, baseline, repeat 1."));
  }

  @Test
  void withoutAnEstimateNothingIsSaidOfOne() {
    for (Page.TrialPart trial : Report.page(ReportSamples.twoBlocks()).trials()) {
      assertEquals(null, trial.estimate());
      assertFalse(trial.strip().svg().contains("--sea"));
    }
  }

  @Test
  void everyDrillHasItsCautionsBesideIt() {
    String html = Report.of(ReportSamples.twoBlocks()).html();
    int train = html.indexOf("<h2>What to train, in full</h2>");
    assertTrue(train > 0);
    Training training = ReportSamples.twoBlocks().training();
    assertFalse(training.drills().isEmpty());
    for (LibraryDrill drill : training.drills()) {
      int from = html.indexOf("id=\"drill-" + drill.code() + "\"");
      assertTrue(from > train, drill.code());
      int next = html.indexOf("class=\"drill\"", from);
      String told = html.substring(from, next < 0 ? html.indexOf("</section>", from) : next);
      for (Caution caution : drill.cautions()) {
        assertTrue(told.contains(caution.text()), drill.code() + ": " + caution.code());
      }
    }
    for (Caution caution : List.of(Caution.URGENT, Caution.PAIN)) {
      int said = html.indexOf(caution.text(), train);
      assertTrue(said > train, caution.code());
      assertTrue(said < html.indexOf("class=\"drill\""), "before them");
    }
  }

  @Test
  void theCautionsAreThereInFull() {
    String html = Report.of(ReportSamples.nothing()).html();
    for (String words :
        List.of(
            "does not diagnose",
            "seek urgent medical care",
            "licensed clinician before going on",
            "wrist or elbow injury",
            "Head-turn and eye drills",
            "Breathing drills",
            "sore or red palm",
            "not a medical finding",
            "guardian’s consent",
            "nothing is sent anywhere")) {
      assertTrue(html.contains(words), words);
    }
  }

  @Test
  void faultsAreShownWithWordsForThoseWhoCantSeeThem() {
    String html = Report.of(ReportSamples.twoBlocks()).html();
    assertTrue(html.contains("<img src=\"data:image/jpeg;base64,"));
    assertFalse(html.contains("alt=\"\""));
    assertTrue(Pattern.compile("alt=\"Left hand, baseline, repeat 1 at \\d").matcher(html).find());
  }

  @Test
  void pagesForLooking() throws Exception {
    Path folder = Files.createDirectories(Path.of("target", "look"));
    Files.writeString(folder.resolve("report.html"), Report.of(ReportSamples.twoBlocks()).html());
    Files.writeString(folder.resolve("hostile.html"), Report.of(ReportSamples.hostile()).html());
    Files.writeString(folder.resolve("nothing.html"), Report.of(ReportSamples.nothing()).html());
    Files.writeString(
        folder.resolve("estimated.html"), Report.of(ReportSamples.estimated()).html());
    assertTrue(Files.size(folder.resolve("report.html")) > 100_000);
  }
}
