package palmturn.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import palmturn.trial.Estimate;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.StartedFrom;
import palmturn.trial.TimeScale;
import palmturn.trial.Zone;

class EstimateOverlayTest {
  private final Estimate estimate = Samples.estimate();

  @Test
  void withoutAReadingEveryContactIsDrawn() {
    assertEquals(estimate.slaps().size(), EstimateOverlay.of(estimate, null).countShown());
  }

  @Test
  void contactThatAMarkAlreadyTellsIsNotDrawnTwice() {
    double firstS = estimate.slaps().get(0).timeS();
    EstimateOverlay hollow = EstimateOverlay.of(estimate, reading(Side.PALM, firstS + 0.02));
    assertTrue(hollow.hidden().get(0));
    assertEquals(estimate.slaps().size() - 1, hollow.countShown());
    assertFalse(EstimateOverlay.of(estimate, reading(Side.PALM, firstS + 0.03)).hidden().get(0));
  }

  @Test
  void oneMarkNamesTheSidesOfAllContacts() {
    double thirdS = estimate.slaps().get(2).timeS();
    assertEquals(
        List.of(Side.BACK, Side.PALM, Side.BACK),
        EstimateOverlay.of(estimate, reading(Side.BACK, thirdS)).slaps().subList(0, 3).stream()
            .map(EstimatedSlap::side)
            .toList());
  }

  @Test
  void oneMarkAgainstManyDoesNotTurnAllSides() {
    List<Slap> marks = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      Side side = (i % 2 == 0) == (i != 3) ? Side.PALM : Side.BACK;
      marks.add(mark(estimate.slaps().get(i).timeS(), side));
    }
    EstimateOverlay hollow = EstimateOverlay.of(estimate, reading().withSlaps(marks));
    assertEquals(Side.PALM, hollow.slaps().get(0).side());
    assertEquals(
        List.of(true, true, true, false, true, true), hollow.hidden().subList(0, 6), "the odd one");
  }

  @Test
  void doubleStandsBesideWhatItRepeats() {
    int at = estimate.slaps().indexOf(doubled());
    EstimateOverlay unsided = EstimateOverlay.of(estimate, null);
    assertEquals(at - 1, unsided.repeated(at));
    assertEquals(0, unsided.stemHeight(at - 1));
    assertTrue(unsided.stemHeight(at) > 0, "on the line it would hide behind what it repeats");
    EstimateOverlay sided = EstimateOverlay.of(estimate.withKnownSide(0.8, Side.PALM), null);
    assertEquals(sided.stemHeight(at - 1), sided.stemHeight(at));
  }

  @Test
  void doubtIsToldByTheOutlineNotByColour() {
    EstimatedSlap sure = Samples.found(1, 0, Zone.UNKNOWN, false, 0.9);
    EstimatedSlap unsure = Samples.found(1, 0, Zone.UNKNOWN, false, 0.3);
    assertNotEquals(head(sure), head(unsure));
    assertNotEquals(head(sure), head(Samples.found(1, 0, Zone.UNKNOWN, true, 0.9)));
    assertNotEquals(head(sure.withSide(Side.PALM)), head(sure.withSide(Side.BACK)));
  }

  @Test
  void turnIsShownWithThePalmUpOnceASideIsKnown() {
    double firstS = estimate.slaps().get(0).timeS();
    double asMade = at(EstimateOverlay.of(estimate, null), firstS);
    assertTrue(at(EstimateOverlay.of(estimate, reading(Side.PALM, firstS)), firstS) > 0.5);
    assertTrue(at(EstimateOverlay.of(estimate, reading(Side.BACK, firstS)), firstS) < -0.5);
    assertEquals(1, Math.abs(asMade), 0.3);
  }

  private static double at(EstimateOverlay hollow, double timeS) {
    int i = 0;
    while (hollow.turn().timesS().get(i) < timeS) {
      i++;
    }
    return hollow.turn().values().get(i);
  }

  @Test
  void copiedMarkStaysHollowUntilItIsSeen() {
    Reading copied = estimate.withKnownSide(0.8, Side.PALM).toReading("AK");
    String unseen = svg(withHollow(strip(copied, Palette.LIGHT), null));
    assertTrue(unseen.contains("copied, not looked at yet"));
    Pattern solidHead = Pattern.compile("<ellipse[^>]*fill:var\\(--ink\\)");
    assertFalse(solidHead.matcher(unseen).find());
    Reading seen =
        copied.withSlaps(copied.slaps().stream().map(slap -> slap.withSeen(true)).toList());
    String solid = svg(withHollow(strip(seen, Palette.LIGHT), null));
    assertFalse(solid.contains("copied"));
    assertFalse(solid.contains("var(--sea)"));
    assertTrue(solidHead.matcher(solid).find());
  }

  @Test
  void onsetsAreShownOnThePicturesClock() {
    EstimateOverlay hollow = EstimateOverlay.of(estimate, null);
    assertEquals(estimate.slaps().get(0).timeS(), hollow.onsetsS().get(0), 1e-9);
  }

  @Test
  void legendNamesOnlyWhatIsDrawn() {
    String unsided = svg(strip(null, Palette.LIGHT));
    assertTrue(unsided.contains("side unknown"));
    assertTrue(unsided.contains("double"));
    assertTrue(unsided.contains("unsure"));
    String blind = svg(withHollow(strip(null, Palette.LIGHT), null));
    assertFalse(blind.contains("estimate"));
    assertFalse(blind.contains("var(--sea)"), "nothing of the estimate may shine through");
  }

  @Test
  void everyColourFollowsTheTheme() {
    assertFalse(svg(strip(Samples.everyKind(), Palette.LIGHT)).contains("rgb("));
  }

  @ParameterizedTest
  @EnumSource(BeatStripPainterTest.Theme.class)
  void picturesForLooking(BeatStripPainterTest.Theme theme) throws Exception {
    for (Reading reading : new Reading[] {null, Samples.everyKind()}) {
      BeatStrip strip = strip(reading, theme.palette());
      BeatStripPainterTest.draw(
          "hollow-" + (reading == null ? "alone-" : "beside-") + theme,
          theme,
          g -> {
            BeatStripPainter.paint(g, strip);
            StripLegend.paint(g, strip, 20, 312, 1200);
          });
    }
  }

  private EstimatedSlap doubled() {
    return estimate.slaps().stream().filter(EstimatedSlap::isDouble).findFirst().orElseThrow();
  }

  private static Reading reading() {
    return Reading.begin("AK", StartedFrom.NOTHING);
  }

  private static Reading reading(Side side, double timeS) {
    return reading().withSlaps(List.of(mark(timeS, side)));
  }

  private static Slap mark(double timeS, Side side) {
    return Slap.onFrame(Slap.Kind.SLAP, timeS, 1 / 60.0, side, Zone.CENTRE);
  }

  private BeatStrip strip(Reading reading, Palette palette) {
    return new BeatStrip(
        reading == null ? List.of() : reading.slaps(),
        reading == null ? List.of() : reading.spans(),
        EstimateOverlay.of(estimate, reading),
        TimeScale.REAL,
        reading == null ? null : new BeatStrip.Window(0.8, 5.8),
        new BeatStrip.View(20, 1220, 0.45, 192),
        BeatStrip.Lanes.APP,
        palette,
        List.of(),
        true,
        null);
  }

  private static BeatStrip withHollow(BeatStrip s, EstimateOverlay hollow) {
    return new BeatStrip(
        s.slaps(),
        s.spans(),
        hollow,
        s.scale(),
        s.window(),
        s.view(),
        s.lanes(),
        s.palette(),
        s.framesS(),
        s.words(),
        s.playhead());
  }

  private static String svg(BeatStrip strip) {
    return SvgChart.svg(
        "strip",
        "strip",
        1240,
        360,
        g -> {
          BeatStripPainter.paint(g, strip);
          StripLegend.paint(g, strip, 20, 312, 1200);
        });
  }

  private static String head(EstimatedSlap slap) {
    return SvgChart.svg(
        "head",
        "head",
        40,
        40,
        g ->
            MarkShapes.drawHollowHead(
                g,
                slap.isDouble(),
                slap.side(),
                slap.zone(),
                20,
                20,
                1,
                Palette.LIGHT.sea(),
                Palette.LIGHT.sheet(),
                OverlayPainter.outline(slap)));
  }
}
