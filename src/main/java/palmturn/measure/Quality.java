package palmturn.measure;

import org.jspecify.annotations.Nullable;
import palmturn.numbers.Range;
import palmturn.trial.Coded;

/** What a trial is judged by; each has one headline measure. */
public enum Quality implements Coded {
  SPEED("speed", 0, Double.POSITIVE_INFINITY),
  ACCURACY("accuracy", 0, 100),
  RHYTHM("rhythm", 0, Double.POSITIVE_INFINITY),
  ENDURANCE("endurance", Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY),
  DRIFT("drift", 0, Double.POSITIVE_INFINITY);

  private final String code;
  private final double least;
  private final double most;

  Quality(String code, double least, double most) {
    this.code = code;
    this.least = least;
    this.most = most;
  }

  /**
   * Returns the part of an interval of the headline measure that it can take at all: a t-interval
   * of few trials may reach below no slaps a second or beyond all of them clean.
   */
  @Nullable Range possible(@Nullable Range interval) {
    return interval == null ? null : new Range(clamped(interval.low()), clamped(interval.high()));
  }

  /** Returns the least value that the headline measure can take, which may be without end. */
  public double least() {
    return least;
  }

  /** Returns the largest value that the headline measure can take, which may be without end. */
  public double most() {
    return most;
  }

  private double clamped(double value) {
    return Math.max(least, Math.min(most, value));
  }

  @Override
  public String code() {
    return code;
  }
}
