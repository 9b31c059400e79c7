package palmturn.wording;

import org.jspecify.annotations.Nullable;
import palmturn.measure.Decimals;
import palmturn.measure.Limit;
import palmturn.measure.LimitVerdict;
import palmturn.measure.Limits;
import palmturn.measure.Measures;
import palmturn.measure.Quality;
import palmturn.measure.RetestScore;
import palmturn.measure.SideScore;

/**
 * A verdict as a shape and words, never as a colour alone.
 *
 * @param shape names the icon
 * @param words the verdict, a few words
 * @param wrong whether it is drawn in the colour of what is wrong
 */
public record VerdictLabel(Shape shape, String words, boolean wrong) {
  private static final VerdictLabel NO_LIMIT = new VerdictLabel(Shape.DASH, "no limit set", false);
  private static final VerdictLabel CANNOT_TELL =
      new VerdictLabel(Shape.DASH, "can’t be told", false);

  /** The icon beside a verdict's words. */
  public enum Shape {
    TICK,
    TRIANGLE,
    BARRED_RING,
    EQUALS,
    DASH
  }

  /** Returns how a quality's headline figure stands to its limit. */
  public static VerdictLabel of(Quality quality, @Nullable LimitVerdict verdict, Limits limits) {
    Limit limit = limits.of(quality);
    if (limit == null) {
      return NO_LIMIT;
    }
    String value = limit(quality, limit);
    return switch (verdict == null ? LimitVerdict.CANNOT_TELL : verdict) {
      case WITHIN -> new VerdictLabel(Shape.TICK, "within limit " + value, false);
      case OVER ->
          new VerdictLabel(
              Shape.TRIANGLE,
              (quality.limitIsLeast() ? "under limit " : "over limit ") + value,
              true);
      case UNCLEAR ->
          new VerdictLabel(
              Shape.BARRED_RING, "limit %s: can’t be told yet".formatted(value), false);
      case CANNOT_TELL -> CANNOT_TELL;
    };
  }

  /** Returns a limit with its unit. */
  public static String limit(Quality quality, Limit limit) {
    return Figures.withUnit(Decimals.plain(limit.value()), Measures.headline(quality).unit());
  }

  /** Returns what may be said of the two hands. */
  public static VerdictLabel of(SideScore.SideVerdict verdict) {
    return switch (verdict) {
      case BALANCED -> new VerdictLabel(Shape.EQUALS, "balanced", false);
      case WEAKER_LEFT -> new VerdictLabel(Shape.TRIANGLE, "weaker left", true);
      case WEAKER_RIGHT -> new VerdictLabel(Shape.TRIANGLE, "weaker right", true);
      case UNCLEAR -> new VerdictLabel(Shape.BARRED_RING, "unclear", false);
      case CANNOT_TELL -> CANNOT_TELL;
    };
  }

  /** Returns what may be said of a change. */
  public static VerdictLabel of(RetestScore.ChangeVerdict verdict) {
    return switch (verdict) {
      case BETTER -> new VerdictLabel(Shape.TICK, "better", false);
      case WORSE -> new VerdictLabel(Shape.TRIANGLE, "worse", true);
      case NO_CHANGE -> new VerdictLabel(Shape.EQUALS, "no change", false);
      case UNCLEAR -> new VerdictLabel(Shape.BARRED_RING, "unclear", false);
      case CANNOT_TELL -> CANNOT_TELL;
    };
  }
}
