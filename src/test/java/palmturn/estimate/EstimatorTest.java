package palmturn.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.clip.ClipFile;
import palmturn.clip.Progress;
import palmturn.clip.StoppedException;
import palmturn.estimate.request.Hints;
import palmturn.estimate.request.KnownSide;
import palmturn.estimate.request.Request;
import palmturn.estimate.sound.SoundAlone;
import palmturn.lab.bench.ClipTruth;
import palmturn.numbers.Robust;
import palmturn.settle.Matching;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate;
import palmturn.trial.Estimate.Source;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Hand;
import palmturn.trial.Side;
import palmturn.trial.TimedBy;

/** Whole estimates: bundled clips against their truth, and clips without a trial. */
class EstimatorTest {
  private static final double ELBOW_LIMIT_CM = 3;
  private static final Path BUNDLED = Path.of("sample-clips-synthetic");

  private static ClipTruth truth(String name) throws Exception {
    return ClipTruth.read(Files.readString(BUNDLED.resolve(name + ".truth.json")));
  }

  private static Estimate bundled(String name, Set<Source> use, @Nullable Double toS)
      throws Exception {
    ClipTruth.TrueContact known = truth(name).contacts().get(4);
    Request request =
        new Request(
            Hand.RIGHT,
            null,
            toS,
            null,
            1,
            use,
            Hints.NONE,
            ELBOW_LIMIT_CM,
            new KnownSide(known.timeS(), known.side()));
    return Estimator.estimate(
        ClipFile.open(BUNDLED.resolve(name + ".mp4")), request, null, Progress.NONE);
  }

  private static Estimate real(String name) throws Exception {
    Path file = Path.of(Objects.requireNonNull(ClipFile.class.getResource(name), name).toURI());
    return Estimator.estimate(
        ClipFile.open(file), Request.of(Hand.RIGHT, ELBOW_LIMIT_CM), null, Progress.NONE);
  }

  private static double[] times(Estimate estimate) {
    return estimate.slaps().stream().mapToDouble(EstimatedSlap::timeS).toArray();
  }

  @Test
  void aHeightInMetresGivesNoCentimetresButAWarning() throws Exception {
    Request request =
        new Request(
            Hand.LEFT,
            null,
            3.0,
            null,
            1,
            Set.of(Source.MOTION),
            Hints.NONE.withLengths(null, null, 1.72),
            ELBOW_LIMIT_CM,
            null);
    ClipFile clip = ClipFile.open(BUNDLED.resolve("left-baseline-1.mp4"));
    Estimate estimate = Estimator.estimate(clip, request, null, Progress.NONE);
    ElbowPath elbow = estimate.elbow();
    assertNotNull(elbow);
    assertNull(elbow.maxCm());
    assertTrue(
        estimate.warnings().stream().anyMatch(said -> said.contains("height of 1.72 cm")),
        estimate.warnings().toString());
  }

  @ParameterizedTest
  @CsvSource({"right-baseline-1, SOUND MOTION, 1", "left-baseline-2, MOTION, 4"})
  void aBundledTrialComesOutAsItIs(String name, String sources, double meanErrorMs)
      throws Exception {
    Set<Source> use =
        sources.contains("SOUND") ? Set.of(Source.SOUND, Source.MOTION) : Set.of(Source.MOTION);
    Estimate estimate = bundled(name, use, null);
    ClipTruth truth = truth(name);
    double[] wanted = truth.contacts().stream().mapToDouble(ClipTruth.TrueContact::timeS).toArray();
    assertTrue(estimate.trialFound());
    Matching matching = Matching.of(wanted, times(estimate), 0.025);
    assertEquals(wanted.length, matching.pairs().size());
    assertEquals(wanted.length, estimate.slaps().size());

    double[] late = matching.differencesS();
    double offset = Robust.median(late);
    double error = Arrays.stream(late).map(d -> Math.abs(d - offset)).average().orElse(0);
    assertEquals(0, 1000 * error, meanErrorMs);
    for (int j = 0; j < wanted.length; j++) {
      EstimatedSlap slap = estimate.slaps().get(j);
      assertEquals(truth.contacts().get(j).side(), slap.side(), "side of slap " + j);
      assertEquals(truth.contacts().get(j).isDouble(), slap.isDouble(), "double " + j);
      assertEquals(use.contains(Source.SOUND) ? TimedBy.SOUND : TimedBy.MOTION, slap.timedBy());
    }
    double[] slaps =
        truth.contacts().stream()
            .filter(contact -> !contact.isDouble())
            .mapToDouble(ClipTruth.TrueContact::timeS)
            .toArray();
    double rate = (slaps.length - 1) / (slaps[slaps.length - 1] - slaps[0]);
    assertEquals(rate, value(estimate.figures().rateSlapsPerS()), 0.005 * rate);
    assertEquals(rate / 2, value(estimate.figures().rotation().frequencyHz()), 0.005 * rate / 2);
  }

  @Test
  void aClipInSlowMotionIsToldInRealTime() throws Exception {
    ClipFile clip = ClipFile.open(BUNDLED.resolve("left-baseline-2.mp4"));
    Request half =
        new Request(
            Hand.RIGHT,
            null,
            null,
            120.0,
            0.5,
            Set.of(Source.SOUND, Source.MOTION),
            Hints.NONE,
            ELBOW_LIMIT_CM,
            null);
    Estimate slow = Estimator.estimate(clip, half, null, Progress.NONE);
    Estimate plain = bundled("left-baseline-2", Set.of(Source.MOTION), null);
    double rate = value(plain.figures().rateSlapsPerS());
    assertEquals(2 * rate, value(slow.figures().rateSlapsPerS()), 0.01 * rate);
    assertEquals(Set.of(Source.MOTION), slow.sources());
    double halfFrameS = 0.5 / 60;
    assertEquals(times(plain)[3], times(slow)[3], halfFrameS);
  }

  @Test
  void neitherSoundNorMotionFindsNothingAndSaysSo() throws Exception {
    Estimate estimate = bundled("right-baseline-3", Set.of(Source.SHAPE), null);
    assertFalse(estimate.trialFound());
    assertTrue(estimate.warnings().get(0).startsWith("No source was allowed"));
  }

  @ParameterizedTest
  @CsvSource({"RIGHT, true", "LEFT, false"})
  void theElbowIsFoundOnTheMovingArmOrNotAtAll(Hand hand, boolean found) throws Exception {
    Request request =
        new Request(
            hand, null, 4.0, null, 1, Set.of(Source.MOTION), Hints.NONE, ELBOW_LIMIT_CM, null);
    Estimate estimate =
        Estimator.estimate(
            ClipFile.open(BUNDLED.resolve("right-baseline-2.mp4")), request, null, Progress.NONE);
    assertEquals(found, estimate.elbow() != null);
    assertEquals(
        !found,
        estimate.warnings().stream().anyMatch(warning -> warning.contains("could not be found")));
  }

  @Test
  void withoutAKnownSideTheSidesStayOpenUntilOneIsNamed() throws Exception {
    ClipFile clip = ClipFile.open(BUNDLED.resolve("right-baseline-3.mp4"));
    Request request =
        new Request(
            Hand.RIGHT,
            null,
            4.0,
            null,
            1,
            Set.of(Source.MOTION),
            Hints.NONE,
            ELBOW_LIMIT_CM,
            null);
    Estimate open = Estimator.estimate(clip, request, null, Progress.NONE);
    assertTrue(open.slaps().stream().allMatch(slap -> slap.side() == Side.UNKNOWN));
    ClipTruth.TrueContact first = truth("right-baseline-3").contacts().get(0);
    Estimate named = open.withKnownSide(first.timeS(), first.side());
    for (int j = 0; j < named.slaps().size(); j++) {
      assertEquals(truth("right-baseline-3").contacts().get(j).side(), named.slaps().get(j).side());
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "asl_hand.25fps.mp4",
        "slow_supination.mp4",
        "silent-black-10s.mp4",
        "sample_12_5fps_720p_1s.mp4",
        "sample_shorter_audio.mp4",
        "trim_optimization_failure.mp4"
      })
  void clipsWithoutATrialHaveNoSlapsAndSayWhy(String name) throws Exception {
    Estimate estimate = real(name);
    assertFalse(estimate.trialFound());
    assertEquals(List.of(), estimate.slaps());
    assertNull(estimate.figures().rateSlapsPerS());
    assertTrue(estimate.warnings().contains("No trial was found."), estimate.warnings()::toString);
  }

  @Test
  void twoTurnsAreTooFew() throws Exception {
    double secondS = truth("right-baseline-1").contacts().get(2).timeS();
    Estimate estimate =
        bundled("right-baseline-1", Set.of(Source.SOUND, Source.MOTION), secondS + 0.08);
    assertFalse(estimate.trialFound());
    assertEquals(List.of(), estimate.slaps());
  }

  @Test
  void threeFramesAreTooFew() throws Exception {
    Estimate estimate = bundled("right-baseline-1", Set.of(Source.MOTION), 0.04);
    assertFalse(estimate.trialFound());
    assertTrue(
        estimate.warnings().stream().anyMatch(warning -> warning.contains("too few to see")));
  }

  @Test
  void soundAloneSaysThatItCannotTell() throws Exception {
    Estimate estimate = bundled("right-baseline-3", Set.of(Source.SOUND), null);
    assertTrue(estimate.warnings().contains(SoundAlone.UNCONFIRMED));
    assertEquals(Set.of(Source.SOUND), estimate.sources());
    double[] wanted =
        truth("right-baseline-3").contacts().stream()
            .mapToDouble(ClipTruth.TrueContact::timeS)
            .toArray();
    assertEquals(wanted.length, Matching.of(wanted, times(estimate), 0.025).pairs().size());
  }

  @Test
  void itStopsWhenToldTo() {
    Progress stopped =
        new Progress() {
          @Override
          public void at(double share, String what) {}

          @Override
          public boolean stopped() {
            return true;
          }
        };
    assertThrows(
        StoppedException.class,
        () ->
            Estimator.estimate(
                ClipFile.open(BUNDLED.resolve("right-baseline-1.mp4")),
                Request.of(Hand.RIGHT, ELBOW_LIMIT_CM),
                null,
                stopped));
  }

  private static double value(@Nullable Double value) {
    assertNotNull(value);
    return value;
  }
}
