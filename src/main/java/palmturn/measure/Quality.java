package palmturn.measure;

import org.jspecify.annotations.Nullable;
import palmturn.numbers.Range;
import palmturn.trial.Coded;

/** The qualities that a trial is judged by; each has one headline measure. */
public enum Quality implements Coded {
  SPEED("Speed", "slaps/s", "% of the mean", 0, Double.POSITIVE_INFINITY),
  ACCURACY("Accuracy", "points", "points", 0, 100),
  RHYTHM("Rhythm", "points", "points", 0, Double.POSITIVE_INFINITY),
  ENDURANCE("Endurance", "%/s", "%/s", Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY),
  DRIFT("Elbow", "cm", "cm", 0, Double.POSITIVE_INFINITY);

  private final String shownName;
  private final String differenceUnit;
  private final String marginUnit;
  private final double least;
  private final double most;

  Quality(String shownName, String differenceUnit, String marginUnit, double least, double most) {
    this.shownName = shownName;
    this.differenceUnit = differenceUnit;
    this.marginUnit = marginUnit;
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

  /** Returns its name as shown, with a capital. */
  public String shownName() {
    return shownName;
  }

  /** Returns the unit of a difference of two headline figures. */
  public String differenceUnit() {
    return differenceUnit;
  }

  /** Returns what its margin, a difference too small to matter, is given in. */
  public String marginUnit() {
    return marginUnit;
  }

  /** Returns whether its limit is the least that is good, not the most. */
  public boolean limitIsLeast() {
    return this == SPEED || this == ACCURACY;
  }

  /** Returns a headline figure named and with its unit, such as "clean share 84 %". */
  public String figure(double value) {
    Measure measure = Measures.headline(this);
    String figure = measure.text(value) + " " + measure.unit();
    return switch (this) {
      case SPEED -> figure;
      case ACCURACY, RHYTHM, ENDURANCE -> measure.name() + " " + figure;
      case DRIFT -> "elbow drift " + figure;
    };
  }

  private double clamped(double value) {
    return Math.max(least, Math.min(most, value));
  }
}
