package palmturn.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.trial.Extra;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.StartedFrom;
import palmturn.trial.TimedBy;
import palmturn.trial.Zone;

class MarksCsvTest {
  private static final String HEADER = "timeS,endS,kind,side,zone,timedBy,resolutionS,note\r\n";

  @Test
  void aReadingIsWrittenInOrderOfTime() {
    Reading reading =
        Reading.begin("A", StartedFrom.NOTHING)
            .plus(Slap.onFrame(Slap.Kind.SLAP, 1.25, 0.0167, Side.PALM, Zone.CENTRE))
            .plus(
                Slap.onFrame(Slap.Kind.OTHER, 1.5, 0.0167, Side.BACK, Zone.UNKNOWN)
                    .withNote("hit \"sleeve\", hard"))
            .withSpans(List.of(new Span(Span.SpanKind.PAUSE, 1.3, 1.4, "", Extra.NONE)));
    assertEquals(
        HEADER
            + "1.25,,slap,palm,centre,picture,0.0167,\r\n"
            + "1.3,1.4,pause,,,,,\r\n"
            + "1.5,,other,back,unknown,picture,0.0167,\"hit \"\"sleeve\"\", hard\"\r\n",
        MarksCsv.write(reading));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 5, 8, 13, 21, 34, 55, 89})
  void whatIsWrittenIsReadBackTheSame(long seed) throws Exception {
    Random random = new Random(seed);
    for (int round = 0; round < 50; round++) {
      Reading reading = reading(random);
      MarksCsv.Marks back = MarksCsv.parse(MarksCsv.write(reading), 9);
      assertEquals(reading.slaps(), back.slaps());
      assertEquals(reading.spans(), back.spans());
    }
  }

  /** A spreadsheet runs what it takes for a formula, whoever wrote it. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "=HYPERLINK(\"x\")",
        "+1+2",
        "-2+3",
        "@SUM(A1)",
        "\t=1",
        "\r=1",
        "'=1",
        "''=1",
        "-",
        "=",
      })
  void aNoteIsWrittenSoThatNoSpreadsheetTakesItForAFormula(String note) throws Exception {
    Reading reading =
        Reading.begin("A", StartedFrom.NOTHING)
            .plus(Slap.onFrame(Slap.Kind.OTHER, 1, 0.02, Side.PALM, Zone.CENTRE).withNote(note));
    String csv = MarksCsv.write(reading);
    String cell = csv.substring(csv.lastIndexOf("0.02,") + 5);
    assertTrue(cell.startsWith("'") || cell.startsWith("\"'"), cell);
    assertEquals(reading.slaps(), MarksCsv.parse(csv, 9).slaps());
  }

  @ParameterizedTest
  @ValueSource(strings = {"'tis off", "a=b", "1-2", "-0.25"})
  void otherNotesAreWrittenAsTheyAre(String note) throws Exception {
    Reading reading =
        Reading.begin("A", StartedFrom.NOTHING)
            .plus(Slap.onFrame(Slap.Kind.OTHER, 1, 0.02, Side.PALM, Zone.CENTRE).withNote(note));
    String csv = MarksCsv.write(reading);
    assertTrue(csv.endsWith(note + "\r\n"), csv);
    assertEquals(reading.slaps(), MarksCsv.parse(csv, 9).slaps());
  }

  @Test
  void theLastThreeColumnsMayBeLeftOut() throws Exception {
    MarksCsv.Marks marks =
        MarksCsv.parse("timeS,endS,kind,side,zone\n1.5,,slap,palm,centre\n", 0.04);
    assertEquals(
        List.of(Slap.onFrame(Slap.Kind.SLAP, 1.5, 0.04, Side.PALM, Zone.CENTRE)), marks.slaps());
  }

  @Test
  void columnsAreKnownByNameAndEmptyCellsAreUnknown() throws Exception {
    MarksCsv.Marks marks =
        MarksCsv.parse("\uFEFFkind,timeS,endS,zone,side,note\nslap, 2 ,,,,ok\n\n", 0.02);
    Slap slap = marks.slaps().get(0);
    assertEquals(Side.UNKNOWN, slap.side());
    assertEquals(Zone.UNKNOWN, slap.zone());
    assertEquals(2, slap.timeS());
    assertEquals("ok", slap.note());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "1,,slip,palm,centre|kind \"slip\" is not one of slap",
        "x,,slap,palm,centre|timeS \"x\" is not a number",
        "NaN,,slap,palm,centre|timeS \"NaN\" is not a number",
        "0x1p3,,slap,palm,centre|is not a number",
        "1e999,,slap,palm,centre|is not a number",
        ",,slap,palm,centre|timeS is empty",
        "1,2,slap,palm,centre|endS must be empty",
        "1,,pause,,|endS is empty",
        "2,1,pause,,|endS must be after timeS",
        "1,2,pause,palm,|side and zone must be empty",
        "1,,slap,left,centre|side \"left\" is not one of palm, back, unknown",
        "1,,slap,palm|4 cells, where the header has 5",
        "1,,slap,palm,cen\"tre|a quote stands inside",
        "1,,slap,palm,\"centre|never closed",
        "1,,slap,palm,\"centre\"x|follows the closing quote"
      })
  void everyErrorNamesItsLineOnOneLine(String row, String what) {
    String text = "timeS,endS,kind,side,zone\n1,,slap,palm,\"centre\"\n" + row;
    MarksFormatException error =
        assertThrows(MarksFormatException.class, () -> MarksCsv.parse(text, 0.02));
    assertEquals(3, error.line());
    assertTrue(error.getMessage().startsWith("line 3: "), error.getMessage());
    assertTrue(error.getMessage().contains(what), error.getMessage());
    assertFalse(error.getMessage().contains("\n"));
  }

  @Test
  void linesInsideQuotesAreCounted() {
    String text = HEADER + "1,,slap,palm,centre,picture,0.1,\"two\r\nlines\"\r\n2,,slip,,,,,\r\n";
    MarksFormatException error =
        assertThrows(MarksFormatException.class, () -> MarksCsv.parse(text, 0.02));
    assertEquals(4, error.line());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "''|no header",
        "timeS,kind,side,zone|the column endS is missing",
        "timeS,endS,kind,side,zone,zone|twice",
        "timeS;endS;kind;side;zone|unknown column"
      })
  void aWrongHeaderIsSaidSo(String text, String what) {
    MarksFormatException error =
        assertThrows(MarksFormatException.class, () -> MarksCsv.parse(text, 0.02));
    assertTrue(error.getMessage().contains(what), error.getMessage());
  }

  private static Reading reading(Random random) {
    List<Slap> slaps = new ArrayList<>();
    List<Span> spans = new ArrayList<>();
    for (int i = random.nextInt(12); i > 0; i--) {
      TimedBy timedBy = one(random, TimedBy.values());
      double timeS = random.nextDouble() * Math.pow(10, random.nextInt(6) - 3);
      slaps.add(
          new Slap(
              one(random, Slap.Kind.values()),
              timeS,
              one(random, Side.values()),
              one(random, Zone.values()),
              timedBy,
              random.nextDouble() / 10,
              timedBy == TimedBy.PICTURE ? timeS : null,
              null,
              true,
              note(random),
              Extra.NONE));
    }
    for (int i = random.nextInt(4); i > 0; i--) {
      double startS = random.nextDouble() * 10;
      spans.add(
          new Span(
              one(random, Span.SpanKind.values()),
              startS,
              startS + 1e-3 + random.nextDouble(),
              note(random),
              Extra.NONE));
    }
    return new Reading("A", false, StartedFrom.NOTHING, slaps, spans, Extra.NONE);
  }

  private static String note(Random random) {
    String alphabet = "ab ,\"\r\n;'é手=";
    StringBuilder note = new StringBuilder();
    for (int i = random.nextInt(8); i > 0; i--) {
      note.append(alphabet.charAt(random.nextInt(alphabet.length())));
    }
    return note.toString();
  }

  private static <T> T one(Random random, T[] values) {
    return values[random.nextInt(values.length)];
  }
}
