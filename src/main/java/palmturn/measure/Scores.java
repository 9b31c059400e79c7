package palmturn.measure;

import org.jspecify.annotations.Nullable;
import palmturn.trial.Reading;
import palmturn.trial.Trial;

/** Turns readings into figures. */
public final class Scores {
  private Scores() {}

  /** Returns the figures of a reading for which no elbow was tracked. */
  public static TrialScore trial(Trial trial, Reading reading, double windowS, Limits limits) {
    return trial(trial, reading, windowS, limits, null);
  }

  /**
   * Returns the figures of a reading.
   *
   * @param windowS the protocol's seconds, real time
   * @param elbow where the elbow was, if it was tracked
   */
  public static TrialScore trial(
      Trial trial, Reading reading, double windowS, Limits limits, @Nullable ElbowSeries elbow) {
    Window window = Window.of(trial, reading, windowS);
    Series series = Series.of(trial, window);
    Accuracy accuracy = Accuracy.of(window);
    Speed speed = Speed.of(window, accuracy.cleanSharePct());
    Rhythm rhythm = Rhythm.of(window, series);
    Endurance endurance = Endurance.of(window, series);
    Drift drift = Drift.of(window, elbow, limits.elbowCm().value());
    return new TrialScore(
        trial.id(),
        reading.reader(),
        reading.independent(),
        speed,
        accuracy,
        rhythm,
        endurance,
        drift,
        series.intervals(),
        Verdicts.of(speed, accuracy, rhythm, endurance, drift, limits),
        trial.timeScale().refusedWhy());
  }
}
