package palmturn.estimate.sound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.clip.ClipFile;
import palmturn.clip.Sound;
import palmturn.clip.SoundTrack;
import palmturn.lab.onsets.DrawnSound;
import palmturn.lab.onsets.KnownSound;
import palmturn.numbers.Stats;
import palmturn.settle.Matching;
import palmturn.trial.Slap;

class OnsetsTest {
  private static final int RATE = 48_000;
  private static final double[] TIMES = DrawnSound.onsetTimes(0.6, 0.2, 0.06, 26, 11);

  @TempDir Path folder;

  @Test
  void everyStrikeOfARealHandDrumIsHeardOnceWithinAMillisecond() throws Exception {
    Matching found = KnownSound.drum().matchClear();
    assertExact(found, 61);
    assertTrue(meanAbsolute(found) < 0.001, "mean error " + meanAbsolute(found));
    List<Double> differences = Arrays.stream(found.differencesS()).boxed().toList();
    assertEquals(Slap.SOUND_SD_S, sd(differences), 0.0001);
  }

  @Test
  void everySlapOfTheBundledClipsIsHeardOnce() throws Exception {
    List<Double> differences = new ArrayList<>();
    for (KnownSound clip : KnownSound.bundled(false)) {
      Matching found = clip.matchClear();
      assertExact(found, clip.timesS().length);
      Arrays.stream(found.differencesS()).forEach(differences::add);
    }
    assertTrue(differences.size() > 250);
    assertEquals(Slap.SOUND_SD_S, sd(differences), 0.0001);
  }

  @Test
  void aFileGoneThroughInStretchesGivesTheOnsetsOfItsWholeSound() throws Exception {
    for (String name : List.of("right-baseline-1", "left-after-1-2")) {
      ClipFile clip = ClipFile.open(Path.of("sample-clips-synthetic", name + ".mp4"));
      Sound whole = Objects.requireNonNull(clip.sound());
      SoundTrack inStretches = Objects.requireNonNull(clip.soundTrack());
      Onsets onsets = Onsets.of(whole, 0, 8);
      assertTrue(onsets.candidates().size() > 10);
      assertEquals(onsets, Onsets.of(inStretches, 0, 8));
      assertEquals(Onsets.of(whole, 2, 4), Onsets.of(inStretches, 2, 4));
    }
  }

  @Test
  void theirDoubleTapsAreAmongTheCandidates() throws Exception {
    for (KnownSound clip : KnownSound.bundled(true)) {
      assertEquals(List.of(), clip.matchCandidates().onlyA(), clip.name());
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {8_000, 11_025, 16_000, 22_050, 44_100, 48_000, 96_000})
  void anySampleRateWillDo(int rate) {
    assertExact(heard(new DrawnSound(rate, 7, 1).addSlaps(TIMES, 0.8).addNoise(3e-4).sound()));
  }

  @Test
  void slapsThatPeakAt35DecibelsUnderFullScaleAreHeard() {
    DrawnSound quiet = new DrawnSound(RATE, 7, 2).addSlaps(TIMES, 0.8).addNoise(3e-3);
    assertExact(heard(quiet.scaleToPeak(Math.pow(10, -35 / 20.0)).sound()));
  }

  @Test
  void slapsThatAreCutOffAtFullScaleAreHeardOnce() {
    assertExact(
        heard(
            new DrawnSound(RATE, 7, 3).addSlaps(TIMES, 0.8).addNoise(3e-4).scaleToPeak(4).sound()));
  }

  @Test
  void echoesOfAHardRoomGiveNoSecondMarks() {
    DrawnSound room = new DrawnSound(RATE, 7, 4).addSlaps(TIMES, 0.5).addNoise(3e-4);
    assertExact(heard(room.addEchoes(0.35, 0.043, 0.071, 0.113).sound()));
  }

  @Test
  void puffsOfAirGiveNoSecondMarks() {
    DrawnSound air =
        new DrawnSound(RATE, 7, 5).addSlaps(TIMES, 0.8).addPuffs(TIMES, 0.12).addNoise(3e-4);
    assertExact(heard(air.sound()));
  }

  @Test
  void whatACodecPutsBeforeASlapGivesNoMarkAndNoEarlyTime() throws Exception {
    Sound sharp = new DrawnSound(RATE, 7, 6).addSlaps(TIMES, 0.8).addNoise(1e-4).sound();
    Matching found = new KnownSound("sharp", sharp, TIMES).encoded(folder, 48_000).matchClear();
    assertExact(found, TIMES.length);
    assertTrue(Math.abs(Stats.mean(found.differencesS())) < 0.0005);
  }

  @ParameterizedTest
  @ValueSource(longs = {21, 22, 23})
  void underTalkOrAMetronomeSlapsStayAmongTheCandidates(long seed) {
    double[] times = DrawnSound.onsetTimes(0.6, 0.19, 0.08, 26, seed);
    DrawnSound both =
        new DrawnSound(RATE, 7, seed).addSlaps(times, 0.6).addTalk(0.3).addMetronome(0.3);
    Matching found = new KnownSound("talk", both.addNoise(3e-4).sound(), times).matchCandidates();
    assertTrue(found.counts().recall() >= 0.9, "recall " + found.counts().recall());
  }

  @Test
  void timesFollowTheClockOfTheSound() {
    Sound sound = new DrawnSound(RATE, 7, 7).addSlaps(TIMES, 0.8).addNoise(3e-4).sound();
    Sound later = new Sound(12.5, RATE, sound.samples());
    List<Onset> now = Onsets.of(sound, 0, 7).candidates();
    List<Onset> then = Onsets.of(later, 12.5, 19.5).candidates();
    assertEquals(now.size(), then.size());
    for (int i = 0; i < now.size(); i++) {
      assertEquals(now.get(i).timeS() + 12.5, then.get(i).timeS(), 1e-9);
    }
  }

  @Test
  void onlyTheStretchAskedForIsSearched() {
    Sound sound = new DrawnSound(RATE, 7, 8).addSlaps(TIMES, 0.8).addNoise(3e-4).sound();
    Onsets part = Onsets.of(sound, 2, 4);
    long inside = Arrays.stream(TIMES).filter(t -> t > 2 && t < 4).count();
    assertEquals(inside, part.clear().size());
    assertTrue(part.strength().timesS().get(0) >= 2);
  }

  @Test
  void nothingIsHeardWhereNothingSounds() {
    assertEquals(List.of(), Onsets.of(new Sound(0, RATE, new float[7 * RATE]), 0, 7).candidates());
    assertEquals(Onsets.NONE, Onsets.of(new Sound(0, RATE, new float[RATE]), 3, 4));
    assertEquals(Onsets.NONE, Onsets.of(new Sound(0, RATE, new float[0]), 0, 7));
    assertEquals(Onsets.NONE, Onsets.of(new Sound(0, RATE, new float[RATE]), 0.5, 0.2));
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 10, 200, 2_000})
  void aSoundOfAFewSamplesIsNoError(int samples) {
    float[] few = new float[samples];
    few[samples / 2] = 0.9f;
    assertTrue(Onsets.of(new Sound(0, RATE, few), 0, 1).candidates().size() <= 1);
  }

  @ParameterizedTest
  @ValueSource(doubles = {1e-4, 1e-3, 1e-2, 0.2})
  void steadyNoiseHoldsNoOnsetAfterItsBeginning(double level) {
    Onsets noise = Onsets.of(new DrawnSound(RATE, 7, 9).addNoise(level).sound(), 0.1, 7);
    assertEquals(List.of(), noise.candidates());
  }

  private static Matching heard(Sound sound) {
    return new KnownSound("", sound, TIMES).matchClear();
  }

  private static void assertExact(Matching found) {
    assertExact(found, TIMES.length);
    assertTrue(meanAbsolute(found) < 0.001, "mean error " + meanAbsolute(found));
  }

  private static void assertExact(Matching found, int count) {
    assertEquals(List.of(), found.onlyA(), "not heard");
    assertEquals(List.of(), found.onlyB(), "invented");
    assertEquals(count, found.pairs().size());
  }

  private static double sd(List<Double> values) {
    Double sd = Stats.sd(values.stream().mapToDouble(Double::doubleValue).toArray());
    return sd == null ? Double.NaN : sd;
  }

  private static double meanAbsolute(Matching found) {
    return Arrays.stream(found.differencesS()).map(Math::abs).average().orElseThrow();
  }
}
