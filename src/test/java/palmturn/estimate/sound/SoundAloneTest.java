package palmturn.estimate.sound;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.lab.onsets.DrawnSound;
import palmturn.trial.Curve;

class SoundAloneTest {
  private static final double[] TRIAL = DrawnSound.onsetTimes(1, 0.2, 0.05, 26, 31);

  @Test
  void aTrialIsOneSeriesWithAWarning() {
    SoundAlone heard = SoundAlone.of(at(TRIAL));
    assertEquals(26, heard.slaps().size());
    assertEquals(List.of(SoundAlone.UNCONFIRMED), heard.warnings());
  }

  @Test
  void aBangBeforeAndADoorAfterAreLeftOut() {
    double[] times = new double[TRIAL.length + 2];
    System.arraycopy(TRIAL, 0, times, 1, TRIAL.length);
    times[0] = 0.2;
    times[times.length - 1] = TRIAL[TRIAL.length - 1] + 3;
    assertEquals(at(TRIAL).clear(), SoundAlone.of(at(times)).slaps());
  }

  @Test
  void twoAttemptsWithARestBetweenAreBothKept() {
    double[] second = Arrays.stream(TRIAL).map(t -> t + 20).toArray();
    double[] both = new double[52];
    System.arraycopy(TRIAL, 0, both, 0, 26);
    System.arraycopy(second, 0, both, 26, 26);
    assertEquals(52, SoundAlone.of(at(both)).slaps().size());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "1", "1 1.2 1.4 1.6", "1 2.1 3.2 4.3 5.4 6.5 7.6 8.7"})
  void tooFewOrTooSlowIsNoSeries(String times) {
    double[] timesS =
        Arrays.stream(times.split(" "))
            .filter(t -> !t.isEmpty())
            .mapToDouble(Double::parseDouble)
            .toArray();
    SoundAlone heard = SoundAlone.of(at(timesS));
    assertEquals(List.of(), heard.slaps());
    assertEquals(List.of(SoundAlone.NO_SERIES), heard.warnings());
  }

  @Test
  void unevenSoundsAreNoSeries() {
    assertEquals(
        List.of(),
        SoundAlone.of(at(1, 1.1, 1.6, 1.75, 2.5, 2.6, 3.3, 3.9, 4.0, 4.7, 4.95, 5.05)).slaps());
  }

  @Test
  void aMetronomeIsSuspected() {
    double[] beats = DrawnSound.onsetTimes(0.2, 60 / 132.0, 0, 15, 1);
    assertEquals(
        List.of(SoundAlone.UNCONFIRMED, SoundAlone.MAYBE_METRONOME),
        SoundAlone.of(at(beats)).warnings());
    Onsets heard = Onsets.of(new DrawnSound(48_000, 7, 3).addMetronome(0.5).sound(), 0, 7);
    assertEquals(
        List.of(SoundAlone.UNCONFIRMED, SoundAlone.MAYBE_METRONOME),
        SoundAlone.of(heard).warnings());
  }

  @Test
  void drawnSlapsInNoiseAreAllKept() {
    DrawnSound drawn = new DrawnSound(48_000, 7, 4).addSlaps(TRIAL, 0.8).addNoise(1e-3);
    List<Onset> slaps = SoundAlone.of(Onsets.of(drawn.sound(), 0, 7)).slaps();
    assertEquals(26, slaps.size());
    for (int i = 0; i < 26; i++) {
      assertEquals(TRIAL[i], slaps.get(i).timeS(), 0.003, String.format(Locale.ROOT, "%d", i));
    }
  }

  private static Onsets at(double... timesS) {
    List<Onset> onsets = Arrays.stream(timesS).mapToObj(t -> new Onset(t, 1)).toList();
    return new Onsets(Curve.EMPTY, onsets, onsets);
  }
}
