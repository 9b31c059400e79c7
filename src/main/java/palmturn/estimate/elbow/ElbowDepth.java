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
 * The elbow's displacement in space, from that in the picture.
 *
 * <p>An arm is rigid. While the hand stays on the target and the upper arm hangs from a still
 * shoulder, the elbow can at first move in one direction only: level, and across its own forearm. A
 * forearm that points out of the picture plane by an angle φ shows cos φ of its own length, and sin
 * φ of the elbow's sideways displacement, so that a centimetre outwards in the picture is 1/√(1 −
 * (length seen/true length)²) in space. That is exact for small displacements; in large ones the
 * arm turns, and the elbow moves farther than that. Inwards there is the trunk: an elbow that moves
 * there is pulled by its hand, and its displacement is used as seen.
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

  /** Standard deviation of a measured forearm, per cent: Palmturn's choice, no source. */
  private static final double MEASURED_SPREAD_PCT = 2;

  /** Standard deviation of the length seen, per cent, from drawn clips: the wrist is nearer. */
  private static final double SEEN_SPREAD_PCT = 5;

  /** The same for an elbow found by the program, which is 2 cm off in drawn clips. */
  private static final double SEEN_FROM_FOUND_SPREAD_PCT = 12;

  /** Largest share seen of the forearm's length; with more, it may be parallel to the picture. */
  private static final double MOST_SEEN = 0.95;

  /** Time from the first slap in which the arm is measured, before an elbow drifts. */
  private static final double REST_S = 1;

  /** Least presence: below it the network more likely sees no hand than one. */
  private static final double SURE_PRESENCE = 0.5;

  /** Fewest frames for a stable median. */
  private static final int FEWEST = 10;

  /** A length and its spread, one SD. */
  private record Length(double cm, double spreadPct) {}

  private ElbowDepth() {}

  /**
   * Returns the elbow's displacement in space, null where unknown: no scale, one that assumes the
   * forearm parallel to the picture, no wrist, or a forearm that is nearly parallel.
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

  /**
   * Returns the wrist's median offset to the right of its elbow at the start, pixels; null where
   * seen too rarely.
   */
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
