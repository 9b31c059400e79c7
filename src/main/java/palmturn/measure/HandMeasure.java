package palmturn.measure;

import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * One figure of a hand over all its trials, declared once for table, tooltip, report and docs.
 *
 * @param id its key in JSON
 * @param name as shown, in lower case
 * @param unit as shown
 * @param help one sentence in plain words
 * @param formula how it is computed
 * @param source a citation, or "Palmturn's choice, no source"
 * @param form how its figures are written
 * @param better which direction is better
 * @param of the figure of a hand, null where it can't be told
 */
public record HandMeasure(
    String id,
    String name,
    String unit,
    String help,
    String formula,
    String source,
    Measure.Form form,
    Measure.Better better,
    Function<CeilingScore, @Nullable Double> of) {

  /** The highest pace at which a hand is still clean. */
  public static final HandMeasure CLEAN_CEILING =
      new HandMeasure(
          "cleanCeilingSlapsPerS",
          "clean ceiling",
          "slaps/s",
          "The pace at which nine attempts in ten are still clean; faster than that, faults are"
              + " more.",
          "where a logistic regression of fault on local rate 2/(t_{i+1}−t_{i−1}), over the hand's"
              + " trials and its pace ladder, is at 10 %; never outside the rates filmed; interval"
              + " by bootstrap over trials and attempts",
          "Palmturn's choice, no source; correction: Firth 1993",
          Measure.Form.HUNDREDTHS,
          Measure.Better.HIGHER,
          CeilingScore::cleanCeilingSlapsPerS);

  /** Returns the figure of a hand, null where it can't be told. */
  public @Nullable Double value(CeilingScore score) {
    return of.apply(score);
  }
}
