package palmturn.measure;

import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Range;

/**
 * One figure of a trial, declared once for table, tooltip, CSV, report and docs.
 *
 * @param id its key in JSON and CSV
 * @param quality what it says something about
 * @param name as shown, in lower case
 * @param unit as shown, empty for a plain count or ratio
 * @param help one sentence in plain words
 * @param formula how it is computed
 * @param source a citation, or "Palmturn's choice, no source"
 * @param form how its figures are written
 * @param better which direction is better
 * @param of the figure of a trial, null where it can't be told
 * @param interval95 the 95 % interval of that figure, null where there is none
 */
public record Measure(
    String id,
    Quality quality,
    String name,
    String unit,
    String help,
    String formula,
    String source,
    Form form,
    Better better,
    Function<TrialScore, @Nullable Double> of,
    Function<TrialScore, @Nullable Range> interval95) {

  /** A measure of a trial whose figure comes without an interval. */
  Measure(
      String id,
      Quality quality,
      String name,
      String unit,
      String help,
      String formula,
      String source,
      Form form,
      Better better,
      Function<TrialScore, @Nullable Double> of) {
    this(id, quality, name, unit, help, formula, source, form, better, of, score -> null);
  }

  /** The better direction of a measure. */
  public enum Better {
    HIGHER,
    LOWER,
    /** Nearer to 0. */
    ZERO,
    NEITHER
  }

  /** The decimals of a measure's figures, and whether a figure above 0 has a sign. */
  public enum Form {
    COUNT(0, false),
    WHOLE(0, false),
    SIGNED_WHOLE(0, true),
    TENTHS(1, false),
    SIGNED_TENTHS(1, true),
    HUNDREDTHS(2, false);

    private final int decimals;
    private final boolean signed;

    Form(int decimals, boolean signed) {
      this.decimals = decimals;
      this.signed = signed;
    }

    /** Returns a figure as text, without its unit. */
    public String text(double value) {
      return signed ? Decimals.signed(value, decimals) : Decimals.fixed(value, decimals);
    }

    /** Returns both ends of an interval of figures as text. */
    public String text(Range range) {
      return text(range.low()) + " to " + text(range.high());
    }

    /** Returns a difference of two figures as text, always with its sign. */
    public String difference(double value) {
      return Decimals.signed(value, decimals);
    }

    /** Returns both ends of an interval of a difference as text. */
    public String difference(Range range) {
      return difference(range.low()) + " to " + difference(range.high());
    }

    /** Returns the size of a difference as text, for where its direction is said in words. */
    public String size(double difference) {
      return Decimals.fixed(Math.abs(difference), decimals);
    }

    /** Returns an interval of a difference, turned round where the difference is below 0. */
    public String size(double difference, Range range) {
      double sign = difference < 0 ? -1 : 1;
      double a = sign * range.low();
      double b = sign * range.high();
      return "%s to %s"
          .formatted(
              Decimals.fixed(Math.min(a, b), decimals), Decimals.fixed(Math.max(a, b), decimals));
    }
  }

  /** Returns the figure of a trial, null where it can't be told. */
  public @Nullable Double value(TrialScore score) {
    return of.apply(score);
  }

  /** Returns the 95 % interval of a trial's figure, null where there is none. */
  public @Nullable Range interval95(TrialScore score) {
    return interval95.apply(score);
  }

  /** Returns a figure as text, without its unit. */
  public String text(double value) {
    return form.text(value);
  }

  /** Returns both ends of an interval as text, without their unit. */
  public String text(Range range) {
    return form.text(range);
  }
}
