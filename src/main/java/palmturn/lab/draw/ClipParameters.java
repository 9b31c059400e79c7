package palmturn.lab.draw;

import java.util.List;
import java.util.Locale;
import palmturn.trial.Hand;

/**
 * The parameters of a clip to draw. Times of faults and stretches are seconds after the first slap.
 *
 * @param content the test, or something else; then there are no slaps, faults or stretches
 * @param hand the moving hand
 * @param tempo how fast and how evenly it slaps
 * @param faults at a slap each
 * @param stretches faults over a span of time
 * @param filming how it is filmed
 * @param sound what there is to hear
 * @param length how long it is
 * @param seed of everything random
 */
public record ClipParameters(
    ClipContent content,
    Hand hand,
    Tempo tempo,
    List<Fault> faults,
    List<FaultStretch> stretches,
    Filming filming,
    SoundKind sound,
    Length length,
    long seed) {

  /**
   * The rate and the regularity of a hand's slaps.
   *
   * @param rateSlapsPerS slaps a second, doubles left out
   * @param intervalCvPct irregularity of the intervals, before turn bias and slow-down
   * @param turnBiasPct how much longer palm to back takes than back to palm, % of the mean interval
   * @param slowDownPctPerS growth of the intervals, % a second
   */
  public record Tempo(
      double rateSlapsPerS, double intervalCvPct, double turnBiasPct, double slowDownPctPerS) {
    public Tempo {
      if (!(rateSlapsPerS > 0.5 && rateSlapsPerS < 12)) {
        throw new IllegalArgumentException(
            "a rate must lie in 0.5 to 12 slaps/s: " + rateSlapsPerS);
      }
    }
  }

  /**
   * The length of a clip in its three parts, seconds.
   *
   * @param leadInS hands held still before the first slap
   * @param slappingS from the first slap, seconds; the last one falls at or before its end
   * @param tailS hands held still after {@code slappingS}
   */
  public record Length(double leadInS, double slappingS, double tailS) {
    public Length {
      if (leadInS < 0.3 || tailS < 0.3) {
        throw new IllegalArgumentException("a clip needs 0.3 s before and after the slaps");
      }
    }
  }

  /** A kind of fault at one slap. */
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

  /** A kind of fault over a span of time. */
  public enum StretchKind {
    BENT_WRIST,
    ELBOW_OUT,
    SHORT_TURN
  }

  /**
   * A fault over a span of time.
   *
   * @param kind what goes wrong
   * @param fromS seconds after the first slap
   * @param toS seconds after the first slap
   * @param amount largest bend in degrees, down towards the target, largest displacement of the
   *     elbow in space in cm, or the most degrees that a turn falls short, half of them at either
   *     side
   */
  public record FaultStretch(StretchKind kind, double fromS, double toS, double amount) {
    /** The largest displacement of an elbow whose hand stays on the target. */
    private static final double MOST_OUT_CM = 15;

    public FaultStretch {
      if (kind == StretchKind.ELBOW_OUT && !(amount >= 0 && amount <= MOST_OUT_CM)) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT, "an elbow goes out by 0 to %.0f cm, not %s", MOST_OUT_CM, amount));
      }
    }
  }

  public ClipParameters {
    faults = List.copyOf(faults);
    stretches = List.copyOf(stretches);
    if (length.slappingS() < 2 / tempo.rateSlapsPerS()) {
      throw new IllegalArgumentException("a clip needs two slaps");
    }
    if (content != ClipContent.SLAPS && !(faults.isEmpty() && stretches.isEmpty())) {
      throw new IllegalArgumentException("faults need slaps");
    }
  }

  /** Returns when the first slap falls, seconds from the clip's begin. */
  double firstSlapS() {
    return length.leadInS();
  }

  /** Returns when slapping ends, seconds from the clip's begin. */
  double slappingEndS() {
    return length.leadInS() + length.slappingS();
  }

  /** Returns the length of the clip, seconds. */
  public double lengthS() {
    return length.leadInS() + length.slappingS() + length.tailS();
  }

  /** Returns these with other stretches. */
  ClipParameters with(FaultStretch... others) {
    return new ClipParameters(
        content, hand, tempo, faults, List.of(others), filming, sound, length, seed);
  }
}
