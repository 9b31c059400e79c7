package palmturn.report;

import org.jspecify.annotations.Nullable;
import palmturn.measure.Limit;
import palmturn.measure.LimitVerdict;
import palmturn.measure.Limits;
import palmturn.measure.Quality;
import palmturn.measure.RetestScore;
import palmturn.measure.SideScore;

/**
 * A verdict as a shape and a word, never as a colour alone.
 *
 * @param shape names the icon
 * @param word what it says
 * @param wrong whether it is drawn in the colour of what is wrong
 */
public record Verdict(Shape shape, String word, boolean wrong) {
  /** The icon beside a verdict's word. */
  public enum Shape {
    TICK,
    TRIANGLE,
    BARRED_RING,
    EQUALS,
    DASH
  }

  static final Verdict NO_LIMIT = new Verdict(Shape.DASH, "no limit set", false);

  /** Returns how a quality's headline figure stands to its limit. */
  static Verdict of(Quality quality, @Nullable LimitVerdict verdict, Limits limits) {
    Limit limit = limit(quality, limits);
    if (limit == null) {
      return NO_LIMIT;
    }
    String value = Figures.plain(limit.value());
    return switch (verdict == null ? LimitVerdict.CANNOT_TELL : verdict) {
      case WITHIN -> new Verdict(Shape.TICK, "within " + value, false);
      case OVER -> new Verdict(Shape.TRIANGLE, (least(quality) ? "under " : "over ") + value, true);
      case UNCLEAR -> new Verdict(Shape.BARRED_RING, "limit " + value + ": unclear", false);
      case CANNOT_TELL -> new Verdict(Shape.DASH, "can’t tell", false);
    };
  }

  /** Returns what may be said of the two hands. */
  static Verdict of(SideScore.Verdict verdict) {
    return switch (verdict) {
      case BALANCED -> new Verdict(Shape.EQUALS, "balanced", false);
      case WEAKER_LEFT -> new Verdict(Shape.TRIANGLE, "weaker left", true);
      case WEAKER_RIGHT -> new Verdict(Shape.TRIANGLE, "weaker right", true);
      case UNCLEAR -> new Verdict(Shape.BARRED_RING, "unclear", false);
      case CANNOT_TELL -> new Verdict(Shape.DASH, "can’t tell", false);
    };
  }

  /** Returns what may be said of a change. */
  static Verdict of(RetestScore.Verdict verdict) {
    return switch (verdict) {
      case BETTER -> new Verdict(Shape.TICK, "better", false);
      case WORSE -> new Verdict(Shape.TRIANGLE, "worse", true);
      case NO_CHANGE -> new Verdict(Shape.EQUALS, "no change", false);
      case UNCLEAR -> new Verdict(Shape.BARRED_RING, "unclear", false);
      case CANNOT_TELL -> new Verdict(Shape.DASH, "can’t tell", false);
    };
  }

  /** Returns the limit of a quality's headline measure, null where there is none. */
  static @Nullable Limit limit(Quality quality, Limits limits) {
    return limits.of(quality);
  }

  /** Returns whether the limit is the least that is good, not the most. */
  static boolean least(Quality quality) {
    return quality == Quality.SPEED || quality == Quality.ACCURACY;
  }
}
