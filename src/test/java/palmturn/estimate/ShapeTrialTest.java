package palmturn.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import palmturn.clip.ClipFile;
import palmturn.clip.Progress;
import palmturn.estimate.hands.Installed;
import palmturn.estimate.hands.NetworkUse;
import palmturn.estimate.hands.Networks;
import palmturn.estimate.request.Hints;
import palmturn.estimate.request.KnownSide;
import palmturn.estimate.request.Request;
import palmturn.lab.elbow.ElbowErrors;
import palmturn.lab.elbow.ElbowSearchErrors;
import palmturn.lab.elbow.ElbowTruth;
import palmturn.numbers.Stats;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate;
import palmturn.trial.Estimate.Source;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Hand;
import palmturn.trial.Side;
import palmturn.trial.Span;

/** Whole estimates with the landmark networks, and what is left of them without. */
class ShapeTrialTest {
  private static final double ELBOW_LIMIT_CM = 3;

  private static Estimate estimate(
      Path clip, Hand hand, @Nullable Double toS, Set<Source> use, @Nullable Path networks)
      throws Exception {
    Request request = new Request(hand, null, toS, null, 1, use, Hints.NONE, ELBOW_LIMIT_CM, null);
    NetworkUse looking = networks == null ? null : NetworkUse.usual(networks);
    return Estimator.estimate(ClipFile.open(clip), request, looking, Progress.NONE);
  }

  private static NetworkUse installed() {
    return NetworkUse.usual(Installed.folder());
  }

  private static Path drawn() throws Exception {
    return drawn("zones-right-wide-1.mp4");
  }

  private static Path drawn(String name) throws Exception {
    return Path.of(Objects.requireNonNull(Networks.class.getResource(name)).toURI());
  }

  /** Returns time, side and zone of the drawn clip's contacts. */
  private static List<String[]> truth() throws Exception {
    return Files.readAllLines(drawn().resolveSibling("zones-right-wide-1.truth.csv")).stream()
        .skip(1)
        .map(line -> line.split(",", -1))
        .toList();
  }

  @Test
  void aTrialFullOfOffCentreSlapsIsFoundWithItsSidesAndZones() throws Exception {
    Estimate found =
        estimate(drawn(), Hand.RIGHT, null, EnumSet.allOf(Source.class), Installed.folder());
    List<String[]> truth = truth();
    assertEquals(truth.size(), found.slaps().size());
    for (int i = 0; i < truth.size(); i++) {
      EstimatedSlap slap = found.slaps().get(i);
      assertEquals(Double.parseDouble(truth.get(i)[0]), slap.timeS(), 0.02);
      assertEquals(truth.get(i)[1], slap.side().code(), "at " + slap.timeS() + " s");
      assertEquals(truth.get(i)[2], slap.zone().code(), "at " + slap.timeS() + " s");
      assertTrue(slap.sources().contains(Source.SHAPE));
    }
    assertTrue(
        found.warnings().stream().anyMatch(each -> each.contains("not in its motion")),
        found.warnings().toString());
  }

  @Test
  void aNamedSideCountsBeforeTheShapeAndTheDifferenceIsSaid() throws Exception {
    Request request =
        new Request(
            Hand.RIGHT,
            null,
            3.0,
            null,
            1,
            EnumSet.of(Source.MOTION, Source.SHAPE),
            Hints.NONE,
            ELBOW_LIMIT_CM,
            new KnownSide(0.951, Side.BACK));
    ClipFile clip = ClipFile.open(Path.of("sample-clips-synthetic/right-baseline-1.mp4"));
    Estimate found = Estimator.estimate(clip, request, installed(), Progress.NONE);
    assertEquals(Side.BACK, found.slaps().get(0).side());
    assertTrue(
        found.warnings().stream().anyMatch(each -> each.contains("the name counts")),
        found.warnings().toString());
  }

  @Test
  void aTrialFoundByItsShapeKeepsWhatElseThereIsToSay() throws Exception {
    Request slowed =
        new Request(
            Hand.RIGHT,
            null,
            null,
            null,
            1.001,
            EnumSet.allOf(Source.class),
            Hints.NONE,
            ELBOW_LIMIT_CM,
            null);
    Estimate found = Estimator.estimate(ClipFile.open(drawn()), slowed, installed(), Progress.NONE);
    String said = String.join(" ", found.warnings());
    assertTrue(said.contains("not in its motion") && said.contains("in slow motion"), said);
    assertFalse(said.contains("No trial"), said);
  }

  /** Motion alone ends 8 cm from this elbow, on a shelf that has the colour of skin. */
  @Test
  void theElbowIsFoundWithoutAClickWhereMotionAloneIsLedAstray() throws Exception {
    ElbowTruth truth =
        ElbowTruth.read(Path.of("sample-clips-synthetic/right-baseline-1.truth.json"));
    ElbowPath path = ElbowSearchErrors.find(truth, Installed.folder());
    assertNotNull(path);
    double[] errors = ElbowErrors.errorsCm(path, truth);
    assertTrue(
        ElbowErrors.percentWithin(errors, 1) >= 95, "p95 " + Stats.percentile(errors, 95) + " cm");
    assertTrue(ElbowErrors.percentWithin(errors, ElbowErrors.CLOSE_CM) >= 80);
  }

  @Test
  void withoutTheNetworksThatTrialIsNotFoundAndTheReasonIsGiven() throws Exception {
    Estimate found = estimate(drawn(), Hand.RIGHT, null, EnumSet.allOf(Source.class), null);
    assertFalse(found.trialFound());
    assertTrue(found.warnings().contains(TrialCheck.NO_TURN));
    assertFalse(found.sources().contains(Source.SHAPE));
  }

  @Test
  void aBentWristIsFoundWhereItIs() throws Exception {
    Path clip = Path.of("sample-clips-synthetic/left-baseline-3.mp4");
    Estimate found =
        estimate(clip, Hand.LEFT, null, EnumSet.allOf(Source.class), Installed.folder());
    List<Estimate.EstimatedSpan> bent =
        found.spans().stream().filter(span -> span.kind() == Span.SpanKind.BENT_WRIST).toList();
    assertEquals(1, bent.size());
    assertEquals(3.2, bent.get(0).startS(), 0.3);
    assertEquals(4.1, bent.get(0).endS(), 0.3);
    Estimate.Shape shape = found.shape();
    assertNotNull(shape);
    assertFalse(shape.wristBendDeg().timesS().isEmpty());
    assertNotNull(shape.targetElbow());
    assertNotNull(shape.turnRange());
  }

  @Test
  void aTurnThatShrinksIsToldInDegreesAndSaid() throws Exception {
    Path clip = drawn("short-turn-right-wide-11.mp4");
    Estimate found =
        estimate(
            clip, Hand.RIGHT, null, EnumSet.of(Source.MOTION, Source.SHAPE), Installed.folder());
    Estimate.TurnRange turns = Objects.requireNonNull(found.shape()).turnRange();
    assertNotNull(turns);
    // As drawn: see the README beside the clip.
    assertEquals(175.5, turns.medianDeg(), 6);
    Estimate.TurnChange change = turns.change();
    assertNotNull(change);
    assertEquals(175.9, change.firstThirdDeg(), 6);
    assertEquals(138.6, change.lastThirdDeg(), 6);
    assertTrue(
        found.warnings().stream().anyMatch(each -> each.startsWith("The turn shrank: ")),
        found.warnings().toString());
  }

  @Test
  void shapeThatIsNotAskedForIsNotUsed() throws Exception {
    Path clip = Path.of("sample-clips-synthetic/right-baseline-1.mp4");
    Estimate found = estimate(clip, Hand.RIGHT, 3.0, EnumSet.of(Source.MOTION), Path.of("nowhere"));
    assertTrue(found.trialFound());
    assertFalse(found.sources().contains(Source.SHAPE));
  }

  @Test
  void networksThatAreNotThereAreSaidAndDoNoHarm() throws Exception {
    Path clip = Path.of("sample-clips-synthetic/right-baseline-1.mp4");
    Estimate found =
        estimate(
            clip, Hand.RIGHT, 3.0, EnumSet.of(Source.MOTION, Source.SHAPE), Path.of("nowhere"));
    assertTrue(found.trialFound());
    assertTrue(
        found.warnings().stream().anyMatch(each -> each.contains("Shape was not used")),
        found.warnings().toString());
  }
}
