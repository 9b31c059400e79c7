package palmturn.lab.draw;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.clip.ClipFile;
import palmturn.clip.Sound;
import palmturn.trial.Hand;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.TimedBy;

class SyntheticClipTest {
  private static final long[] SEEDS = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12};

  @TempDir Path folder;

  private static ClipParameters small(long seed, List<ClipParameters.Fault> faults) {
    return clip(
        Hand.LEFT,
        new ClipParameters.Tempo(5, 5, 4, 0),
        faults,
        List.of(),
        new Filming(30, 160, 120, 0.3, 0),
        new ClipParameters.Length(0.3, 0.45, 0.3),
        seed);
  }

  private static ClipParameters clip(
      Hand hand,
      ClipParameters.Tempo tempo,
      List<ClipParameters.Fault> faults,
      List<ClipParameters.FaultStretch> stretches,
      Filming filming,
      ClipParameters.Length length,
      long seed) {
    return new ClipParameters(
        ClipContent.SLAPS, hand, tempo, faults, stretches, filming, SoundKind.SLAPS, length, seed);
  }

  private static ClipParameters whole(long seed) {
    return clip(
        Hand.RIGHT,
        new ClipParameters.Tempo(5.1, 6, 5, 2),
        List.of(
            new ClipParameters.Fault(ClipParameters.FaultKind.FINGERS, 1),
            new ClipParameters.Fault(ClipParameters.FaultKind.WRIST, 2),
            new ClipParameters.Fault(ClipParameters.FaultKind.EDGE, 3),
            new ClipParameters.Fault(ClipParameters.FaultKind.PART_TURN, 4),
            new ClipParameters.Fault(ClipParameters.FaultKind.DOUBLE, 2.5)),
        List.of(
            new ClipParameters.FaultStretch(ClipParameters.StretchKind.BENT_WRIST, 1.2, 1.9, 30),
            new ClipParameters.FaultStretch(ClipParameters.StretchKind.ELBOW_OUT, 3.2, 4.4, 4.5)),
        new Filming(60, 160, 120, 0, 0),
        new ClipParameters.Length(0.9, 5.15, 0.5),
        seed);
  }

  @Test
  void sameSeedGivesTheSameBytesAndAnotherSeedOthers() throws Exception {
    byte[] first = written(1);
    assertArrayEquals(first, written(1));
    assertFalse(Arrays.equals(first, written(2)));
  }

  private byte[] written(long seed) throws Exception {
    Path file = folder.resolve("clip.mp4");
    SyntheticClip.plan(small(seed, List.of())).write(file, share -> {});
    return Files.readAllBytes(file);
  }

  @Test
  void theDrawnHandsTouchAtEveryContactAndAreApartBetween() {
    SyntheticClip clip = SyntheticClip.plan(whole(3));
    Truth truth = clip.truth();
    for (Contact contact : truth.contacts()) {
      assertEquals(0, clip.gapAtContactCm(contact), 0.01, contact.toString());
    }
    double highest = Arrays.stream(truth.gapCm()).max().orElse(0);
    assertTrue(highest > 5 && highest < 9, "lift " + highest);
  }

  @Test
  void theHandIsTurnedToTheSideThatTheTruthNames() {
    Truth truth = SyntheticClip.plan(whole(4)).truth();
    for (Contact contact : truth.contacts()) {
      double turned = truth.rotationDeg()[(int) Math.round(contact.timeS() * truth.seriesHz())];
      assertEquals(contact.side() == Side.PALM, turned < 90, contact.toString());
    }
  }

  @Test
  void rateAndIntervalCvAreWhatWasAskedWhereNothingElseStretchesTheIntervals() {
    for (long seed : SEEDS) {
      RealisedMeasures realised =
          RealisedMeasures.of(ContactSchedule.of(stretched(seed, 0, 0)), List.of());
      assertEquals(5.1, realised.rateSlapsPerS(), 0.05, "seed " + seed);
      // The draws have 6 % over 26 intervals. The window can leave out the last of them, at most
      // 2.35 SD from the mean, and 6 sqrt((25 - 2.35^2 * 26/25) / 24) = 5.4.
      assertEquals(6, realised.intervalCvPct(), 0.63, "seed " + seed);
    }
  }

  @Test
  void turnBiasAndSlowDownAreWhatWasAskedOnTheAverageOverSeeds() {
    double bias = 0;
    double slow = 0;
    for (long seed : SEEDS) {
      RealisedMeasures realised =
          RealisedMeasures.of(ContactSchedule.of(stretched(seed, 9, 4)), List.of());
      bias += realised.turnBiasPct() / SEEDS.length;
      slow += realised.slowDownPctPerS() / SEEDS.length;
    }
    // Of one clip with 6 % noise in 25 intervals the SDs are about 2.4 and 0.85; here three of the
    // mean's.
    assertEquals(9, bias, 3 * 2.4 / Math.sqrt(SEEDS.length));
    assertEquals(4, slow, 3 * 0.85 / Math.sqrt(SEEDS.length));
  }

  private static ClipParameters stretched(long seed, double biasPct, double slowPct) {
    List<ClipParameters.Fault> doubled =
        List.of(new ClipParameters.Fault(ClipParameters.FaultKind.DOUBLE, 2.5));
    return clip(
        Hand.RIGHT,
        new ClipParameters.Tempo(5.1, 6, biasPct, slowPct),
        doubled,
        List.of(),
        new Filming(60, 160, 120, 0, 0),
        new ClipParameters.Length(0.9, 5.15, 0.5),
        seed);
  }

  @Test
  void theElbowGoesAsFarAsWasAskedAndNoFurther() {
    Truth truth = SyntheticClip.plan(whole(7)).truth();
    double farthest = Arrays.stream(truth.elbowInSpaceCm()).max().orElse(0);
    assertEquals(4.5, farthest, 1.0);
  }

  @Test
  void anElbowThatGoesFartherOutThanAnArmLetsItIsRefused() {
    assertThrows(
        IllegalArgumentException.class,
        () -> new ClipParameters.FaultStretch(ClipParameters.StretchKind.ELBOW_OUT, 0.5, 1.5, 50));
  }

  @Test
  void anElbowThatGoesOutKeepsItsArmsLength() {
    Vec wrist = Body.ELBOW.plus(Body.TARGET.minus(Body.ELBOW).unit().times(Arm.FOREARM_CM));
    for (double cm = 0; cm <= 12; cm += 1.5) {
      Vec elbow = Body.elbowOut(cm);
      assertEquals(cm, elbow.minus(Body.ELBOW).length(), 1e-9);
      assertEquals(Body.UPPER_ARM_CM, elbow.minus(Body.SHOULDER).length(), 1e-9);
      assertEquals(Arm.FOREARM_CM, elbow.minus(wrist).length(), 1e-9);
      assertTrue(elbow.x() <= Body.ELBOW.x() && elbow.z() >= Body.ELBOW.z(), elbow::toString);
    }
  }

  @Test
  void theSoundBeginsAtTheContactPlusItsDelay() {
    SyntheticClip clip = SyntheticClip.plan(whole(8));
    Truth truth = clip.truth();
    float[] sound = clip.sound();
    for (Contact contact : truth.contacts()) {
      if (contact.kind() == Slap.Kind.DOUBLE) {
        continue;
      }
      int due = (int) Math.round((contact.timeS() + truth.soundDelayS()) * truth.soundHz());
      double before = loudest(sound, due - 480, due - 2);
      double after = loudest(sound, due, due + 96);
      assertTrue(after > 4 * before, "%s: %s then %s".formatted(contact, before, after));
    }
  }

  private static double loudest(float[] sound, int from, int to) {
    double most = 0;
    for (int i = from; i < to; i++) {
      most = Math.max(most, Math.abs(sound[i]));
    }
    return most;
  }

  @Test
  void theFileReadsBackWithItsPictureTimesAndItsSoundInPlace() throws Exception {
    Path file = folder.resolve("back.mp4");
    SyntheticClip clip = SyntheticClip.plan(small(5, List.of()));
    List<Double> shares = new ArrayList<>();
    clip.write(file, shares::add);
    assertEquals(1.0, shares.get(shares.size() - 1));
    ClipFile read = ClipFile.open(file);
    Truth truth = clip.truth();
    assertArrayEquals(truth.frameTimesS(), read.frames().timesS(), 1e-5);
    Sound sound = read.sound();
    assertNotNull(sound);
    double due = truth.contacts().get(0).timeS() + truth.soundDelayS();
    int at = 0;
    while (Math.abs(sound.samples()[at]) < 0.2) {
      at++;
    }
    assertEquals(due, sound.firstS() + (double) at / sound.sampleRate(), 0.001);
  }

  @Test
  void theCarefulReaderIsCloseToTheTruthAndTimedBySound() {
    Truth truth = SyntheticClip.plan(whole(9)).truth();
    List<Slap> slaps = CarefulReader.read(truth, "A", 9).slaps();
    assertEquals(truth.contacts().size(), slaps.size());
    long bySound = slaps.stream().filter(s -> s.timedBy() == TimedBy.SOUND).count();
    assertTrue(bySound >= slaps.size() - 1);
    for (int i = 0; i < slaps.size(); i++) {
      double off = slaps.get(i).timeS() - truth.contacts().get(i).timeS();
      double most = slaps.get(i).timedBy() == TimedBy.SOUND ? 0.002 : 1.0 / 60 + 1e-4;
      assertTrue(Math.abs(off) <= most, "mark %d is off by %s".formatted(i, off));
    }
  }
}
