package palmturn.estimate.elbow;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import palmturn.estimate.request.Hints;

/**
 * Scale of the upright full-size picture at the elbow, and its source.
 *
 * @param source in words: {@code given}, {@code forearm}, {@code hand length, by landmarks}, {@code
 *     stature, estimated} or {@code none}
 * @param cmPerPixel null where unknown
 * @param forearmPx length of the forearm in the picture, null where it was not measured
 * @param spreadPct one standard deviation of the scale, null where two places give it
 */
public record ElbowScale(
    String source,
    @Nullable Double cmPerPixel,
    @Nullable Double forearmPx,
    @Nullable Double spreadPct) {
  private static final String FOREARM = "forearm";
  private static final String HAND = "hand length, by landmarks";
  private static final String STATURE = "stature, estimated";

  /** No scale. */
  static final ElbowScale NONE = new ElbowScale("none", null, null, null);

  /**
   * Elbow to wrist as a share of stature: forearm-hand length less hand length, mean of the ratios
   * of 4,082 men (0.1634) and 1,986 women (0.1589). Gordon CC et al. (2014), 2012 Anthropometric
   * Survey of U.S. Army Personnel, Natick/TR-15/007. Adults only.
   */
  static final double FOREARM_OF_STATURE = 0.161;

  /** Spread of that share in the same survey, both sexes together: SD/mean, per cent. */
  static final double FOREARM_OF_STATURE_SPREAD_PCT = 4.1;

  /** Standard deviation of the forearm's length in the picture, per cent, from drawn clips. */
  static final double FOREARM_IN_PICTURE_SPREAD_PCT = 15;

  /**
   * Standard deviation of the scale by the hand's length, per cent; docs/measured/elbow.md, five
   * views.
   */
  static final double HAND_IN_PICTURE_SPREAD_PCT = 14;

  /**
   * Returns the best scale that the hints allow: two places a known length apart, else the measured
   * forearm, else the measured hand, else an average forearm for the stature.
   *
   * @param forearmPx length of the forearm in the picture, null where it was not measured
   * @param handPx length of the moving hand in the picture, null where its shape was not seen
   */
  static ElbowScale from(Hints hints, @Nullable Double forearmPx, @Nullable Double handPx) {
    Double armPx = forearmPx != null && forearmPx > 0 ? forearmPx : null;
    if (hints.scale() != null) {
      return new ElbowScale("given", hints.scale().cmPerPixel(), armPx, null);
    }
    if (armPx != null && hints.forearmCm() != null) {
      return new ElbowScale(
          FOREARM, hints.forearmCm() / armPx, armPx, FOREARM_IN_PICTURE_SPREAD_PCT);
    }
    if (handPx != null && handPx > 0 && hints.handCm() != null) {
      return new ElbowScale(HAND, hints.handCm() / handPx, armPx, HAND_IN_PICTURE_SPREAD_PCT);
    }
    if (armPx != null && hints.statureCm() != null) {
      return new ElbowScale(
          STATURE,
          FOREARM_OF_STATURE * hints.statureCm() / armPx,
          armPx,
          Math.hypot(FOREARM_OF_STATURE_SPREAD_PCT, FOREARM_IN_PICTURE_SPREAD_PCT));
    }
    return new ElbowScale("none", null, armPx, null);
  }

  /**
   * Returns whether the scale comes from the forearm's length in the picture, assumed parallel to
   * it.
   */
  boolean byForearm() {
    return source.equals(FOREARM) || source.equals(STATURE);
  }

  /** Returns the caution to show beside lengths in centimetres, null without one. */
  @Nullable String caution() {
    if (cmPerPixel == null) {
      return "There is no scale: the elbow's drift has no centimetres. Give two places a known"
          + " length apart, or the athlete's forearm.";
    }
    return spreadPct == null
        ? null
        : String.format(
            Locale.ROOT,
            "The elbow's centimetres rest on the %s: they may be off by %.0f %% (one SD).",
            basis(),
            spreadPct);
  }

  private String basis() {
    return switch (source) {
      case FOREARM -> "forearm's length in the picture";
      case HAND -> "hand's length in the picture";
      default -> "stature and an average adult's forearm";
    };
  }
}
