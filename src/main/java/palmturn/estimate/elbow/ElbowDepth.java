package palmturn.estimate.elbow;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;
import palmturn.estimate.hands.ElbowAlong;
import palmturn.estimate.hands.HandFollower;
import palmturn.estimate.hands.HandPaths;
import palmturn.estimate.request.Hints;
import palmturn.numbers.Robust;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate.ElbowInSpace;

/**
 * How far an elbow goes in space, from how far it goes across the picture.
 *
 * <p>An arm does not stretch. While the hand stays on the target and the upper arm hangs from a
 * shoulder that stays, the elbow can at first go one way only: level, and across its own forearm. A
 * forearm that points out of the picture's plane by an angle φ shows cos φ of its own length, and
 * sin φ of the elbow's way to the side, so that a centimetre outwards in the picture is 1/√(1 −
 * (length seen/true length)²) in space. That is exact for a short way; on a long one the arm turns,
 * and an elbow goes farther than that. Inwards there is the trunk: an elbow that goes there is
 * drawn along by its hand, and its way is taken as seen.
 */
final class ElbowDepth {
  /**
   * Elbow to wrist of an average adult, cm: forearm-hand length less hand length, mean of the means
   * of 4,082 men (28.7, SD 1.6) and 1,986 women (25.9, SD 1.5). Gordon CC et al. (2014), 2012
   * Anthropometric Survey of U.S. Army Personnel, Natick/TR-15/007.
   */
  static final double AVERAGE_FOREARM_CM = 27.3;

  /** Spread of both sexes together in the same survey: SD/mean, per cent. */
  static final double AVERAGE_FOREARM_SPREAD_PCT = 7.7;

  /** What a forearm that somebody measured is known to, per cent: Palmturn's choice, no source. */
  private static final double MEASURED_SPREAD_PCT = 2;

  /** What the length seen is known to, per cent, from drawn clips: the wrist is nearer. */
  private static final double SEEN_SPREAD_PCT = 5;

  /** The same where the program found the elbow: it is 2 cm beside it in drawn clips. */
  private static final double SEEN_FROM_FOUND_SPREAD_PCT = 12;

  /** A forearm that shows more than this of its length may lie flat in the picture. */
  private static final double MOST_SEEN = 0.95;

  /** The arm is measured in the first second of slapping, before an elbow drifts. */
  private static final double REST_S = 1;

  /** Under this the network is more likely to see no hand than one. */
  private static final double SURE_PRESENCE = 0.5;

  /** Fewer frames give no steady median. */
  private static final int FEWEST = 10;

  /** A length and its spread, one SD. */
  private record Length(double cm, double spreadPct) {}

  private ElbowDepth() {}

  /**
   * Returns the elbow's way in space, null where it can't be told: no scale, one that takes the
   * forearm to lie flat in the picture, no wrist, or a forearm that does lie nearly so.
   *
   * @param hands the hands over time, real seconds
   * @param firstSlapS media seconds
   */
  static @Nullable ElbowInSpace of(
      ElbowPath path,
      HandPaths hands,
      double realPerMediaS,
      double firstSlapS,
      ElbowScale scale,
      Hints hints) {
    Double seenPx = seenPx(path, hands, realPerMediaS, firstSlapS);
    Double cm = path.cmPerPixel();
    if (seenPx == null || cm == null || scale.byForearm()) {
      return null;
    }
    Length forearm = forearm(hints);
    double seenSpread = hints.elbow() == null ? SEEN_FROM_FOUND_SPREAD_PCT : SEEN_SPREAD_PCT;
    double scaleSpread = scale.spreadPct() == null ? 0 : scale.spreadPct();
    double spread = Math.hypot(Math.hypot(forearm.spreadPct, seenSpread), scaleSpread) / 100;
    double share = Math.abs(seenPx) * cm / forearm.cm;
    if (share * (1 + spread) > MOST_SEEN) {
      return null;
    }
    DoubleUnaryOperator most =
        seen -> mostCm(path, cm, perOut(seen), seenPx < 0, firstSlapS - ElbowDrift.PLACE_S);
    return new ElbowInSpace(
        perOut(share),
        seenPx < 0,
        most.applyAsDouble(share),
        most.applyAsDouble(share * (1 - spread)),
        most.applyAsDouble(share * (1 + spread)));
  }

  private static double perOut(double shareSeen) {
    return 1 / Math.sqrt(1 - shareSeen * shareSeen);
  }

  private static double mostCm(
      ElbowPath path, double cm, double perOut, boolean outIsRight, double fromS) {
    double most = 0;
    for (ElbowPath.Sample sample : path.samples()) {
      if (sample.timeS() >= fromS) {
        most = Math.max(most, cm * ElbowInSpace.distancePx(sample, perOut, outIsRight));
      }
    }
    return most;
  }

  private static Length forearm(Hints hints) {
    Hints likely = hints.plausible();
    if (likely.forearmCm() != null) {
      return new Length(likely.forearmCm(), MEASURED_SPREAD_PCT);
    }
    return likely.statureCm() != null
        ? new Length(
            ElbowScale.FOREARM_OF_STATURE * likely.statureCm(),
            ElbowScale.FOREARM_OF_STATURE_SPREAD_PCT)
        : new Length(AVERAGE_FOREARM_CM, AVERAGE_FOREARM_SPREAD_PCT);
  }

  /** Returns how far right of its elbow the wrist is at the start; null if hardly seen. */
  private static @Nullable Double seenPx(
      ElbowPath path, HandPaths hands, double realPerMediaS, double firstSlapS) {
    List<Double> seen = new ArrayList<>();
    double toS = firstSlapS + REST_S / realPerMediaS;
    for (HandFollower.TimedHand hand : hands.moving()) {
      double timeS = hand.timeS() / realPerMediaS;
      boolean atStart = timeS >= firstSlapS && timeS <= toS;
      double @Nullable [] elbow = atStart ? ElbowAlong.at(path, timeS) : null;
      if (elbow != null && hand.marks().presence() >= SURE_PRESENCE) {
        seen.add(hand.marks().wristX() - elbow[0]);
      }
    }
    return seen.size() < FEWEST
        ? null
        : Robust.median(seen.stream().mapToDouble(Double::doubleValue).toArray());
  }
}
