package palmturn.estimate.motion;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import palmturn.estimate.TrialCheck;
import palmturn.estimate.image.Footage;
import palmturn.numbers.Robust;

/** From motion to contacts, turns and a verdict, on made hands. */
class MotionTest {
  private static Motion only(MadeFootage made) {
    List<Motion> found = Motion.find(made.footage(), null);
    assertEquals(1, found.size());
    return found.get(0);
  }

  /** A hand that bounces off at once is timed early, by the same few milliseconds each time. */
  private static final double EARLY_S = 0.012;

  private static void assertFound(MadeFootage made, Motion motion, double withinS) {
    double[] truth = made.contactsS();
    double[] found = motion.stops().pictureS();
    assertEquals(truth.length, found.length, () -> Arrays.toString(found));
    double[] late = new double[truth.length];
    Arrays.setAll(late, j -> found[j] - truth[j]);
    double bias = Robust.median(late);
    assertEquals(0, bias, EARLY_S);
    for (int j = 0; j < truth.length; j++) {
      assertEquals(bias, late[j], withinS, "contact " + j);
    }
  }

  /** Poses are known but for their common sign. */
  private static void assertPoses(MadeFootage made, Motion motion) {
    int sign = made.poses()[0] * motion.turns().poses()[0];
    int[] signed = Arrays.stream(motion.turns().poses()).map(p -> sign * p).toArray();
    assertArrayEquals(made.poses(), signed);
  }

  @ParameterizedTest
  @CsvSource({"2,60", "3,30", "5,60", "5,30", "6.5,60", "8,60", "8,120", "5,240"})
  void findsEveryContactAtAnyRate(double slapHz, double fps) {
    MadeFootage made = MadeFootage.even(20, slapHz, fps).withNoise(0.05);
    Motion motion = only(made);
    assertFound(made, motion, Math.max(0.005, 0.25 / fps));
    assertPoses(made, motion);
    assertEquals(slapHz, 1 / motion.contacts().medianIntervalS(), 0.02 * slapHz);
  }

  @Test
  void irregularTempoAndUnevenFramesAreFound() {
    Random random = new Random(3);
    double[] contacts = new double[22];
    for (int j = 1; j < contacts.length; j++) {
      contacts[j] = contacts[j - 1] + 0.2 * (1 + 0.12 * random.nextGaussian());
    }
    MadeFootage made =
        MadeFootage.of(contacts, MadeFootage.alternating(22), 60).dropping(0.2, 5).withNoise(0.05);
    Motion motion = only(made);
    assertFound(made, motion, 0.02);
    assertPoses(made, motion);
  }

  @Test
  void aSecondContactWithoutATurnIsADouble() {
    double[] contacts = new double[21];
    int[] poses = MadeFootage.alternating(21);
    for (int j = 1; j < contacts.length; j++) {
      contacts[j] = contacts[j - 1] + (j == 9 || j == 14 ? 0.1 : 0.2);
    }
    for (int j = 9; j < 14; j++) {
      poses[j] = -poses[j];
    }
    MadeFootage made = MadeFootage.of(contacts, poses, 60).withNoise(0.05);
    Motion motion = only(made);
    assertFound(made, motion, 0.02);
    assertPoses(made, motion);
    for (int j = 1; j < contacts.length; j++) {
      assertEquals(j == 9 || j == 14, motion.turns().noTurn()[j - 1], "gap before contact " + j);
    }
  }

  @Test
  void mirroredFootageGivesTheSame() {
    Motion plain = only(MadeFootage.even(20, 5, 60).withNoise(0.02));
    Motion mirrored = only(MadeFootage.even(20, 5, 60).withNoise(0.02).mirrored());
    assertArrayEquals(plain.stops().pictureS(), mirrored.stops().pictureS(), 0.002);
  }

  @Test
  void somebodyElseWhoMovesMoreIsNotTakenForTheHand() {
    MadeFootage made = MadeFootage.even(20, 5, 60).withNoise(0.05).withSomebodyWaving();
    Motion motion = only(made);
    assertFound(made, motion, 0.005);
    assertEquals(List.of(), TrialCheck.objections(motion, null));
  }

  @Test
  void aHandThatLeavesThePictureIsSeenUntilThen() {
    MadeFootage made = MadeFootage.even(20, 5, 60).withNoise(0.05).leavingAt(0.8 + 11.5 * 0.2);
    Motion motion = only(made);
    assertEquals(12, motion.size(), 1);
    assertTrue(motion.stops().pictureS()[motion.size() - 1] < 0.8 + 12.5 * 0.2);
  }

  @ParameterizedTest
  @CsvSource({"0.5", "0.7", "1.5"})
  void stretchedTimeDividesRates(double k) {
    Footage footage = MadeFootage.even(20, 4.5, 120).withNoise(0.02).footage();
    Motion plain = Motion.find(footage, null).get(0);
    Motion stretched = Motion.find(footage.inRealTime(k), null).get(0);
    assertEquals(plain.size(), stretched.size());
    assertEquals(
        plain.contacts().medianIntervalS() * k, stretched.contacts().medianIntervalS(), 0.002);
  }

  @Test
  void twoAttemptsWithAGapBetweenAreTwo() {
    double[] contacts = new double[24];
    for (int j = 1; j < contacts.length; j++) {
      contacts[j] = contacts[j - 1] + (j == 12 ? 2.6 : 0.2);
    }
    List<Motion> found =
        Motion.find(MadeFootage.of(contacts, MadeFootage.alternating(24), 60).footage(), null);
    assertEquals(2, found.size());
    assertEquals(12, found.get(0).size());
    assertEquals(12, found.get(1).size());
  }

  @Test
  void aSlappingHandIsATrial() {
    assertEquals(List.of(), TrialCheck.objections(only(MadeFootage.even(20, 5, 60)), null));
  }

  @Test
  void clappingWithoutTurningIsNone() {
    List<Motion> found =
        Motion.find(MadeFootage.even(20, 5, 60).withNoise(0.05).withoutTurning().footage(), null);
    for (Motion motion : found) {
      assertFalse(TrialCheck.objections(motion, null).isEmpty());
    }
  }

  @Test
  void turningWithoutLiftingIsNone() {
    List<Motion> found =
        Motion.find(MadeFootage.even(20, 3, 60).withNoise(0.05).withoutLifting().footage(), null);
    for (Motion motion : found) {
      assertFalse(TrialCheck.objections(motion, null).isEmpty());
    }
  }

  @Test
  void noiseAndStillnessHoldNothing() {
    Footage footage = MadeFootage.even(6, 5, 60).footage();
    List<float[]> none = footage.right().stream().map(field -> new float[field.length]).toList();
    Footage still =
        new Footage(
            footage.width(),
            footage.height(),
            8,
            footage.timesS(),
            none,
            none,
            footage.pictures(),
            footage.camera(),
            0);
    assertEquals(List.of(), Motion.find(still, null));
  }

  @Test
  void tooFewContactsAreSaidToBeTooFew() {
    List<Motion> found = Motion.find(MadeFootage.even(4, 4, 60).footage(), null);
    for (Motion motion : found) {
      assertTrue(TrialCheck.objections(motion, null).get(0).startsWith("Only 4 stops"));
    }
  }
}
