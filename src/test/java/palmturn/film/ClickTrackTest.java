package palmturn.film;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ClickTrackTest {
  /** 20 ms, as long as the longest click. */
  private static final int QUIET = 960;

  @ParameterizedTest
  @CsvSource({"5.2, 5, 4", "0.5, 2, 0", "20, 3, 16", "3.3333, 7, 1", "7.1, 600, 4"})
  void theFileHasItsClicksWhereTheyShouldBeToTheSample(double pace, double forS, int countIn)
      throws Exception {
    short[] read = read(ClickTrack.of(pace, forS, countIn).wav());
    List<Long> expected = new ArrayList<>();
    for (int k = 0; k < countIn; k++) {
      expected.add(Math.round(48_000 * (0.5 + 2 * k / pace)));
    }
    // Worked out from the start each time: rounding must not add up.
    for (int k = 0; k <= Math.floor(forS * pace + 1e-9); k++) {
      expected.add(Math.round(48_000 * (0.5 + (2 * countIn + k) / pace)));
    }
    assertEquals(expected, onsets(read));
  }

  @Test
  void aPaceOfFiveForFiveSecondsIsTwentySixClicks() {
    ClickTrack track = ClickTrack.of(5, 5, 4);
    assertEquals(26, track.slaps().size());
    assertEquals(5 * 48_000, track.slaps().get(25) - track.slaps().get(0));
    // One for each turn there and back, the last of them one such turn before the first slap.
    assertEquals(4, track.countIn().size());
    assertEquals(19_200, track.slaps().get(0) - track.countIn().get(3));
  }

  @Test
  void countingInSoundsLowerThanSlapping() throws Exception {
    ClickTrack track = ClickTrack.of(4, 2, 2);
    short[] read = read(track.wav());
    assertTrue(crossings(read, track.countIn().get(0)) < crossings(read, track.slaps().get(0)));
  }

  @Test
  void theSameTrackIsTheSameFile() {
    assertArrayEquals(ClickTrack.of(5.2, 5, 4).wav(), ClickTrack.of(5.2, 5, 4).wav());
  }

  @ParameterizedTest
  @CsvSource({
    "0.4, 5, 4",
    "21, 5, 4",
    "NaN, 5, 4",
    "5, 0.1, 4",
    "5, 601, 4",
    "5, 5, -1",
    "5, 5, 17"
  })
  void whatIsOutOfBoundsIsNamed(double pace, double forS, int countIn) {
    String message =
        assertThrows(IllegalArgumentException.class, () -> ClickTrack.of(pace, forS, countIn))
            .getMessage();
    assertTrue(message.contains(" must be ") && message.contains(" to "), message);
  }

  private static short[] read(byte[] wav) throws Exception {
    try (AudioInputStream in = AudioSystem.getAudioInputStream(new ByteArrayInputStream(wav))) {
      AudioFormat format = in.getFormat();
      assertEquals(48_000, format.getSampleRate());
      assertEquals(16, format.getSampleSizeInBits());
      assertEquals(1, format.getChannels());
      byte[] bytes = in.readAllBytes();
      short[] samples = new short[bytes.length / 2];
      for (int i = 0; i < samples.length; i++) {
        samples[i] = (short) ((bytes[2 * i] & 0xff) | bytes[2 * i + 1] << 8);
      }
      return samples;
    }
  }

  /** Returns each first sample after a silence of at least 20 ms. */
  private static List<Long> onsets(short[] samples) {
    List<Long> onsets = new ArrayList<>();
    int silent = QUIET;
    for (int i = 0; i < samples.length; i++) {
      if (samples[i] != 0 && silent >= QUIET) {
        onsets.add((long) i);
      }
      silent = samples[i] == 0 ? silent + 1 : 0;
    }
    return onsets;
  }

  private static long crossings(short[] samples, long from) {
    return Stream.iterate((int) from, i -> i + 1)
        .limit(480)
        .filter(i -> (samples[i] < 0) != (samples[i + 1] < 0))
        .count();
  }
}
