package palmturn.synth;

import java.util.List;
import palmturn.trial.Hand;

/**
 * What a drawn clip shall show. Times of faults and stretches are seconds after the first slap.
 *
 * @param hand the moving hand
 * @param rateSlapsPerS slaps a second, doubles left out
 * @param intervalCvPct irregularity of the intervals, before turn bias and slow-down
 * @param turnBiasPct how much longer palm to back takes than back to palm, % of the mean interval
 * @param slowDownPctPerS growth of the intervals, % a second
 * @param faults at a slap each
 * @param stretches faults over a span of time
 * @param framesPerS whole frames a second
 * @param width pixels, even
 * @param height pixels, even
 * @param shakePx standard deviation of the camera's shake, pixels
 * @param seed of everything random
 * @param leadInS hands held still before the first slap
 * @param slappingS from the first slap, seconds; the last one falls at or before its end
 * @param tailS hands held still after {@code slappingS}
 */
public record Parameters(
    Hand hand,
    double rateSlapsPerS,
    double intervalCvPct,
    double turnBiasPct,
    double slowDownPctPerS,
    List<Fault> faults,
    List<Stretch> stretches,
    int framesPerS,
    int width,
    int height,
    double shakePx,
    long seed,
    double leadInS,
    double slappingS,
    double tailS) {

  /** What can go wrong at a slap. */
  public enum FaultKind {
    FINGERS,
    WRIST,
    EDGE,
    DOUBLE,
    PART_TURN,
    MISSED
  }

  /**
   * A fault at the slap nearest to a moment, or for a double right after it.
   *
   * @param kind what goes wrong
   * @param atS seconds after the first slap
   */
  public record Fault(FaultKind kind, double atS) {}

  /** What can go wrong over a span of time. */
  public enum StretchKind {
    BENT_WRIST,
    ELBOW_OUT
  }

  /**
   * A fault over a span of time.
   *
   * @param kind what goes wrong
   * @param fromS seconds after the first slap
   * @param toS seconds after the first slap
   * @param amount largest bend in degrees, or largest way of the elbow in cm
   */
  public record Stretch(StretchKind kind, double fromS, double toS, double amount) {}

  public Parameters {
    faults = List.copyOf(faults);
    stretches = List.copyOf(stretches);
    if (!(rateSlapsPerS > 0.5 && rateSlapsPerS < 12)) {
      throw new IllegalArgumentException("a rate must lie in 0.5 to 12 slaps/s: " + rateSlapsPerS);
    }
    if (framesPerS < 1 || leadInS < 0.3 || slappingS < 2 / rateSlapsPerS || tailS < 0.3) {
      throw new IllegalArgumentException(
          "a clip needs 1 frame/s or more, 0.3 s before and after, and two slaps between");
    }
  }

  /** Returns the length of the clip, seconds. */
  public double lengthS() {
    return leadInS + slappingS + tailS;
  }

  /** Returns the number of pictures. */
  public int frames() {
    return (int) Math.round(lengthS() * framesPerS);
  }
}
