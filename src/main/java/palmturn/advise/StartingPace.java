package palmturn.advise;

import org.jspecify.annotations.Nullable;
import palmturn.measure.CeilingScore;
import palmturn.measure.Decimals;
import palmturn.measure.HandMeasure;
import palmturn.measure.Measures;
import palmturn.measure.Quality;
import palmturn.trial.DrillHand;
import palmturn.trial.Hand;

/**
 * The click rate at which a hand starts a drill.
 *
 * @param slapsPerS rounded down to a tenth
 * @param words where it comes from
 */
public record StartingPace(double slapsPerS, String words) {
  /**
   * Share of its own rate that stands for the clean ceiling of a hand that is not clean enough at
   * that rate, or whose ceiling lies below what was filmed: the middle step of the pace ladder.
   * Palmturn's choice, no source.
   */
  static final double UNCLEAN_SHARE = 0.75;

  /**
   * Returns the click to start a drill at; null for a drill without a click, and where neither a
   * clean ceiling nor a rate is known. For both hands it is the slower one's.
   */
  public static @Nullable StartingPace of(Evidence evidence, LibraryDrill drill, DrillHand hand) {
    return switch (hand) {
      case LEFT -> of(evidence, drill, Hand.LEFT);
      case RIGHT -> of(evidence, drill, Hand.RIGHT);
      case BOTH -> slower(of(evidence, drill, Hand.LEFT), of(evidence, drill, Hand.RIGHT));
      case NONE -> null;
    };
  }

  private static @Nullable StartingPace slower(
      @Nullable StartingPace left, @Nullable StartingPace right) {
    if (left == null || right == null) {
      return null;
    }
    return left.slapsPerS <= right.slapsPerS ? left : right;
  }

  private static @Nullable StartingPace of(Evidence evidence, LibraryDrill drill, Hand hand) {
    Double share = drill.paceShare();
    if (share == null) {
      return null;
    }
    String pct = Decimals.fixed(100 * share, 0);
    CeilingScore ceiling = evidence.ceiling(hand);
    Double found = ceiling == null ? null : ceiling.cleanCeilingSlapsPerS();
    if (found != null) {
      return at(
          share * found,
          "%s %% of the %s hand's clean ceiling, %s"
              .formatted(pct, hand.code(), HandMeasure.CLEAN_CEILING.form().text(found)));
    }
    HandFigures state = HandFigures.of(evidence, hand);
    Double rate = state.mean(Quality.SPEED);
    if (rate == null) {
      return null;
    }
    HandFigures.LimitCheck clean = state.checkLimit(Quality.ACCURACY, evidence.limits());
    boolean under =
        ceiling != null && ceiling.outcome() == CeilingScore.CeilingOutcome.UNDER_FILMED;
    if (clean != null && !clean.over() && !under) {
      return at(
          share * rate,
          "%s %% of %s, the %s hand's own rate, since its clean ceiling is not known"
              .formatted(pct, Measures.RATE.text(rate), hand.code()));
    }
    return at(
        share * UNCLEAN_SHARE * rate,
        "%s %% of %s, which is %s %% of the %s hand's own rate, since its clean ceiling %s"
            .formatted(
                pct,
                Measures.RATE.text(UNCLEAN_SHARE * rate),
                Decimals.fixed(100 * UNCLEAN_SHARE, 0),
                hand.code(),
                under ? "lies below what was filmed" : "is not known"));
  }

  private static StartingPace at(double slapsPerS, String words) {
    return new StartingPace(Math.floor(10 * slapsPerS + 1e-9) / 10, words);
  }
}
