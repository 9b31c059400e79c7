package palmturn.measure;

import java.util.function.Function;
import org.jspecify.annotations.Nullable;

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
 * @param better which direction is better
 * @param of the figure of a trial, null where it can't be told
 */
public record Measure(
    String id,
    Quality quality,
    String name,
    String unit,
    String help,
    String formula,
    String source,
    Better better,
    Function<TrialScore, @Nullable Double> of) {

  /** Which direction of a measure is better. */
  public enum Better {
    HIGHER,
    LOWER,
    /** Nearer to 0. */
    ZERO,
    NEITHER
  }

  /** Returns the figure of a trial, null where it can't be told. */
  public @Nullable Double value(TrialScore score) {
    return of.apply(score);
  }
}
