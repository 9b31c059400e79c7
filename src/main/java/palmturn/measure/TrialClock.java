package palmturn.measure;

import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Reading;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.TimeScale;
import palmturn.trial.Trial;

/**
 * A trial's marks and its own clock: real seconds since its first slap, or since its first frame
 * where no slap is known.
 *
 * @param scale how media seconds become real ones
 * @param zeroS where the clock begins, media seconds
 * @param marks all marks of the trial's stretch, in order of time
 * @param slaps those of them that count, numbered from 1
 * @param spans faults over a stretch
 */
public record TrialClock(
    TimeScale scale, double zeroS, List<Slap> marks, List<Slap> slaps, List<Span> spans) {
  public TrialClock {
    marks = List.copyOf(marks);
    slaps = List.copyOf(slaps);
    spans = List.copyOf(spans);
  }

  /**
   * Returns the marks of a trial.
   *
   * @param reading null where there are none to be shown
   * @param firstFrameS time of the trial's first frame, media seconds
   */
  public static TrialClock of(Trial trial, @Nullable Reading reading, double firstFrameS) {
    if (reading == null) {
      return new TrialClock(trial.timeScale(), firstFrameS, List.of(), List.of(), List.of());
    }
    double fromS = trial.fromS() == null ? Double.NEGATIVE_INFINITY : trial.fromS();
    double toS = trial.toS() == null ? Double.POSITIVE_INFINITY : trial.toS();
    List<Slap> marks =
        reading.slaps().stream()
            .filter(mark -> mark.timeS() >= fromS && mark.timeS() <= toS)
            .toList();
    List<Slap> slaps = marks.stream().filter(Slap::counts).toList();
    return new TrialClock(
        trial.timeScale(),
        slaps.isEmpty() ? firstFrameS : slaps.get(0).timeS(),
        marks,
        slaps,
        reading.spans());
  }

  /** Returns a moment on the trial's own clock, real seconds. */
  public double realS(double mediaS) {
    return scale.realBetween(zeroS, mediaS);
  }

  /** Returns the media moment at which the trial's own clock shows a time. */
  public double mediaS(double realS) {
    return scale.mediaAfter(zeroS, realS);
  }

  /** Returns when a slap comes on the trial's own clock; where no slap is known, its beginning. */
  public double slapS(int number) {
    return slaps.isEmpty() ? 0 : realS(slaps.get(number - 1).timeS());
  }

  /** Returns the number of the last slap at or before a media moment, 0 for none. */
  public int lastAt(double mediaS) {
    int number = 0;
    while (number < slaps.size() && slaps.get(number).timeS() <= mediaS) {
      number++;
    }
    return number;
  }
}
