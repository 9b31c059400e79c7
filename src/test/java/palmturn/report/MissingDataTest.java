package palmturn.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import palmturn.trial.Extra;
import palmturn.trial.Hand;
import palmturn.trial.Message;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.StartedFrom;
import palmturn.trial.TrialId;
import palmturn.trial.Zone;

/** Where something is missing, the first page says what, and shows no figure in its place. */
class MissingDataTest {
  private static final Map<String, ReportInput> SEEN = new TreeMap<>();

  private static TrialId right(int repeat) {
    return new TrialId(Hand.RIGHT, "baseline", repeat);
  }

  private static TrialId left(int repeat) {
    return new TrialId(Hand.LEFT, "baseline", repeat);
  }

  private static Page page(String name, ReportInput input) {
    SEEN.put(name, input);
    Page page = Report.page(input);
    String html = Report.of(input).html();
    for (String never : List.of("NaN", "null", "Infinity", ">-", "99999")) {
      assertFalse(html.replaceAll("base64,[^\"]*", "").contains(never), never);
    }
    return page;
  }

  private static String open(Page page) {
    return String.join(" ", page.open()).replace('\u00A0', ' ');
  }

  private static String said(Page page) {
    Page.BlockPart lead = page.lead();
    assertNotNull(lead);
    StringBuilder words = new StringBuilder();
    for (Page.Sentence each : lead.sentences()) {
      words.append(each.before()).append(each.strong()).append(each.after()).append(' ');
    }
    return words.toString().replace('\u00A0', ' ');
  }

  private static Page.QualityRow row(Page page, String name) {
    Page.BlockPart lead = page.lead();
    assertNotNull(lead);
    return lead.rows().stream().filter(row -> row.name().equals(name)).findFirst().orElseThrow();
  }

  @Test
  void oneTrialOnlyHasNoIntervalAndIsComparedWithNothing() {
    Page page = page("one-trial", ReportSamples.of(ReportSamples.filmed(right(1))));
    assertTrue(open(page).contains("one read trial of the right hand"), open(page));
    assertTrue(open(page).contains("no read trial of the left hand"), open(page));
    assertTrue(said(page).contains("the hands can’t be compared"), said(page));
    assertNull(row(page, "Speed").left());
    assertNull(row(page, "Speed").verdict());
    assertNotNull(row(page, "Speed").right());
    assertTrue(page.changes().isEmpty());
  }

  @Test
  void oneHandOnlySaysSoAndStillTellsItsFigures() {
    Page page =
        page(
            "one-hand",
            ReportSamples.of(
                ReportSamples.filmed(left(1)),
                ReportSamples.filmed(left(2)),
                ReportSamples.filmed(left(3))));
    assertTrue(said(page).startsWith("Only the left hand has marks here"), said(page));
    assertTrue(said(page).contains("slaps/s"), said(page));
    assertTrue(open(page).contains("no read trial of the right hand"), open(page));
    assertEquals("Only the left hand has figures here.", row(page, "Accuracy").line());
  }

  @Test
  void unequalCountsAreSaidAndTheHandsStillCompared() {
    Page page =
        page(
            "unequal",
            ReportSamples.of(
                ReportSamples.filmed(left(1)),
                ReportSamples.filmed(left(2)),
                ReportSamples.filmed(right(1)),
                ReportSamples.filmed(right(2)),
                ReportSamples.filmed(right(3))));
    assertTrue(
        open(page).contains("Baseline: 2 read trials of the left hand and 3 of the right"),
        open(page));
    assertNotNull(row(page, "Speed").verdict());
    assertTrue(row(page, "Speed").line().startsWith("right − left"), row(page, "Speed").line());
  }

  @Test
  void anUnfinishedReadingIsNamedBesideEveryFigureThatRestsOnIt() {
    Page page =
        page(
            "unfinished",
            ReportSamples.of(
                ReportSamples.filmed(left(1)),
                ReportSamples.filmed(left(2)),
                ReportSamples.filmed(right(1)),
                ReportSamples.filmed(right(2), reading -> reading.withFinished(false))));
    assertTrue(open(page).contains("Reading still open, so its figures may change: right"));
    assertEquals("read by B. Marsh (still open)", row(page, "Speed").readBy());
    assertEquals("read by B. Marsh", page.glance().get(0).readBy());
    assertEquals("read by B. Marsh (still open)", page.glance().get(3).readBy());
  }

  @Test
  void aReadingWithoutASlapHasNoFigureAndNoZero() {
    Reading empty =
        new Reading("B. Marsh", true, StartedFrom.NOTHING, List.of(), List.of(), Extra.NONE);
    Page page =
        page(
            "no-slaps",
            ReportSamples.of(
                ReportSamples.filmed(left(1), reading -> empty),
                ReportSamples.filmed(right(1), reading -> empty)));
    assertTrue(open(page).contains("Read to the end, and not one slap in it: "), open(page));
    for (Page.QualityRow row : page.lead().rows()) {
      assertNull(row.left(), row.name());
      assertNull(row.right(), row.name());
    }
    assertEquals("–", page.glance().get(0).rate());
    assertEquals("–", page.glance().get(0).clean());
    assertTrue(said(page).contains("Speed can’t be compared"), said(page));
  }

  @Test
  void whereEverySlapIsFaultyTheCleanShareIsNothingAndSaidSo() {
    Page page =
        page(
            "all-faults",
            ReportSamples.of(
                ReportSamples.filmed(left(1), MissingDataTest::faulty),
                ReportSamples.filmed(left(2), MissingDataTest::faulty),
                ReportSamples.filmed(right(1), MissingDataTest::faulty),
                ReportSamples.filmed(right(2), MissingDataTest::faulty)));
    assertEquals("0", row(page, "Accuracy").left());
    assertEquals("0", row(page, "Accuracy").right());
    assertNotNull(row(page, "Speed").left());
    assertTrue(page.trials().get(0).faults().contains("on the fingers"));
    assertTrue(page.trials().get(0).pictureNote().startsWith("6 of "));
  }

  private static Reading faulty(Reading reading) {
    return new Reading(
        reading.reader(),
        true,
        StartedFrom.NOTHING,
        reading.slaps().stream()
            .filter(Slap::counts)
            .map(slap -> slap.withZone(Zone.FINGERS))
            .toList(),
        List.of(),
        Extra.NONE);
  }

  @Test
  void unknownSidesLeaveTheTurnsUntoldAndNothingElse() {
    Page page =
        page(
            "no-sides",
            ReportSamples.of(
                ReportSamples.filmed(
                    right(1),
                    reading ->
                        new Reading(
                            reading.reader(),
                            true,
                            StartedFrom.NOTHING,
                            reading.slaps().stream()
                                .filter(Slap::counts)
                                .map(slap -> slap.withSide(Side.UNKNOWN))
                                .toList(),
                            List.of(),
                            Extra.NONE))));
    assertTrue(
        page.notShown()
            .contains("The side of a slap could not be told: right hand, baseline, repeat 1."));
    assertNotNull(row(page, "Speed").right());
  }

  @Test
  void readingsOfSeveralPeopleAreNamedRowByRow() {
    Page page =
        page(
            "two-readers",
            ReportSamples.of(
                ReportSamples.filmed(left(1)),
                ReportSamples.filmed(left(2)),
                ReportSamples.filmed(right(1)),
                ReportSamples.filmed(
                    right(2),
                    reading ->
                        new Reading(
                            "C",
                            true,
                            StartedFrom.NOTHING,
                            reading.slaps(),
                            List.of(),
                            Extra.NONE))));
    assertEquals("read by B. Marsh and C", row(page, "Rhythm").readBy());
    assertEquals("", page.readBy());
    assertTrue(
        String.join(" ", page.intro())
            .contains("readings by B. Marsh and C; each trial says whose"));
  }

  @Test
  void theNewestBlockThatTellsOfBothHandsLeads() {
    Page page =
        page(
            "half-retest",
            ReportSamples.of(
                ReportSamples.filmed(left(1)),
                ReportSamples.filmed(right(1)),
                ReportSamples.filmed(new TrialId(Hand.LEFT, "after-1", 1))));
    assertEquals("baseline", page.lead().block());
    assertEquals("after-1", page.blocks().get(0).block());
  }

  @Test
  void theCoachsLastWordAboutTheWholeStandsOnTheFirstPage() {
    ReportInput plain = ReportSamples.of(ReportSamples.filmed(left(1)));
    assertNull(page("no-words", plain).coach(), "a word about a moment is no word about the whole");
    Instant at = Instant.parse("2026-11-15T09:30:00Z");
    Page page =
        page(
            "words",
            ReportSamples.withMessages(
                plain,
                new Message("coach", at, null, null, "Too early.", Extra.NONE),
                new Message(
                    "Coach", at.plusSeconds(9), null, null, "Well done.\n\nOn we go.", Extra.NONE),
                new Message("athlete", at.plusSeconds(20), null, null, "Thanks.", Extra.NONE),
                new Message("coach", at.plusSeconds(30), left(1), 2.0, "Here.", Extra.NONE)));
    assertEquals(List.of("Well done.", "On we go."), page.coach().paragraphs());
    assertEquals(4, page.messages().size());
  }

  @AfterAll
  static void pagesForLooking() throws Exception {
    Path folder = Files.createDirectories(Path.of("target", "look"));
    for (Map.Entry<String, ReportInput> each : SEEN.entrySet()) {
      Files.write(folder.resolve(each.getKey() + ".pdf"), Report.of(each.getValue()).pdf(Paper.A4));
    }
  }
}
