package palmturn.estimate.hands;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Quantiles;
import palmturn.numbers.Robust;
import palmturn.trial.Zone;

/**
 * The zones of the target hand that contacts landed on, by the middle of the moving palm on the
 * target's own axes in the picture, from its wrist to the middle finger's knuckle and from the
 * little finger's knuckle to the index finger's.
 */
final class ContactZones {
  /** Time to either side of a contact in which the hand rests on the target. */
  private static final double AROUND_S = 0.02;

  /**
   * Height of the moving hand's middle over the target's, palm lengths: one is on top of the other.
   */
  private static final double THICKNESS_PALMS = 0.3;

  /**
   * Farther along than this from the middle is on the fingers, nearer the wrist than that on the
   * wrist, in palm lengths of about 8 cm: Palmturn's choice.
   */
  private static final double FINGERS = 0.5;

  /** The palm reaches a little less far to the wrist than to the fingers. */
  private static final double WRIST = -0.45;

  /** Farther across than this, in widths of the knuckles, is beside the palm. */
  private static final double EDGE = 0.6;

  /** One standard deviation of a place, in the same lengths; measured on drawn clips. */
  private static final double SPREAD = 0.13;

  /** A side whose look scatters more than this does not show how it lies across the target. */
  private static final double MOST_LOOK_SPREAD = 0.2;

  /** Prior share of slaps on the edge where it can't be seen: Palmturn's choice. */
  private static final double EDGE_UNSEEN = 0.15;

  /** Least confidence of a zone; with less it stays unknown. */
  private static final double LEAST_SURE = 0.75;

  /** The usual place of a side's contacts may differ from the middle by no more than this. */
  private static final double MOST_SHIFT = 0.2;

  /** Usual place across the target, where the moving hand comes from its side; from drawn clips. */
  private static final double USUAL_ACROSS = -0.65;

  /** The same across, where the camera's place shifts contacts more. */
  private static final double MOST_SHIFT_ACROSS = 0.45;

  /**
   * One contact's place.
   *
   * @param along from the target's middle to its fingers, palm lengths
   * @param across from the target's middle to its index finger, widths of the knuckles
   */
  record TargetPoint(double along, double across) {}

  /**
   * A contact's estimated zone.
   *
   * @param zone {@code UNKNOWN} where it can't be determined
   * @param confidence 0 to 1
   */
  record ZoneEstimate(Zone zone, double confidence) {
    static final ZoneEstimate UNKNOWN = new ZoneEstimate(Zone.UNKNOWN, 0);
  }

  private ContactZones() {}

  /** Returns the zone of each contact. */
  static List<ZoneEstimate> of(HandPaths paths, List<PosedContact> touches) {
    List<@Nullable TargetPoint> places = new ArrayList<>();
    for (PosedContact touch : touches) {
      places.add(place(paths, touch.timeS()));
    }
    List<ZoneEstimate> landed = new ArrayList<>();
    for (int i = 0; i < places.size(); i++) {
      TargetPoint place = places.get(i);
      int pose = touches.get(i).pose();
      landed.add(
          place == null
              ? ZoneEstimate.UNKNOWN
              : zone(
                  place.along() - usual(places, touches, pose, true),
                  place.across() - usual(places, touches, pose, false),
                  showsEdge(paths, touches, pose)));
    }
    return landed;
  }

  /**
   * Returns the position of the middle of the moving palm at a moment, null where it was not seen.
   */
  static @Nullable TargetPoint place(HandPaths paths, double timeS) {
    List<HandMarks> seen = paths.around(timeS, AROUND_S, AROUND_S);
    if (seen.isEmpty()) {
      return null;
    }
    HandMarks target = paths.targetAt(timeS);
    double[] x = target.x();
    double[] y = target.y();
    double alongX = x[HandMarks.MIDDLE] - x[HandMarks.WRIST];
    double alongY = y[HandMarks.MIDDLE] - y[HandMarks.WRIST];
    double acrossX = x[HandMarks.INDEX] - x[HandMarks.LITTLE];
    double acrossY = y[HandMarks.INDEX] - y[HandMarks.LITTLE];
    double area = alongX * acrossY - alongY * acrossX;
    if (Math.abs(area) < 1) {
      return null;
    }
    double[] along = new double[seen.size()];
    double[] across = new double[seen.size()];
    for (int i = 0; i < along.length; i++) {
      double right = seen.get(i).palmX() - target.palmX();
      double down = seen.get(i).palmY() - target.palmY() + THICKNESS_PALMS * target.palmLength();
      along[i] = (right * acrossY - down * acrossX) / area;
      across[i] = (alongX * down - alongY * right) / area;
    }
    return new TargetPoint(Robust.median(along), Robust.median(across));
  }

  /**
   * Returns where a side's contacts usually land: how high the camera stands shifts them all. Only
   * so far, so that a hand that always lands on the fingers is not mistaken for one that never
   * does.
   */
  private static double usual(
      List<@Nullable TargetPoint> places, List<PosedContact> touches, int pose, boolean along) {
    double median = Robust.median(of(places, touches, pose, along));
    double from = along ? 0 : USUAL_ACROSS;
    double most = along ? MOST_SHIFT : MOST_SHIFT_ACROSS;
    return Math.max(from - most, Math.min(from + most, median));
  }

  /**
   * Returns whether a side shows how it lies across the target: not where it looks different from
   * contact to contact, as it does edge on.
   */
  private static boolean showsEdge(HandPaths paths, List<PosedContact> touches, int pose) {
    double[] shown =
        touches.stream()
            .filter(touch -> touch.pose() == pose)
            .map(touch -> paths.around(touch.timeS(), AROUND_S, AROUND_S))
            .filter(seen -> !seen.isEmpty())
            .mapToDouble(
                seen -> Robust.median(seen.stream().mapToDouble(paths::palmShown).toArray()))
            .toArray();
    return shown.length > 0 && Robust.sdFromMad(shown) < MOST_LOOK_SPREAD;
  }

  private static double[] of(
      List<@Nullable TargetPoint> places, List<PosedContact> touches, int pose, boolean along) {
    DoubleStream.Builder same = DoubleStream.builder();
    for (int i = 0; i < places.size(); i++) {
      TargetPoint place = places.get(i);
      if (place != null && touches.get(i).pose() == pose) {
        same.add(along ? place.along() : place.across());
      }
    }
    return same.build().toArray();
  }

  private static ZoneEstimate zone(double along, double across, boolean showsEdge) {
    double fingers = beyond(along - FINGERS);
    double wrist = beyond(WRIST - along);
    double between = 1 - fingers - wrist;
    double edge = between * (showsEdge ? beyond(Math.abs(across) - EDGE) : EDGE_UNSEEN);
    double centre = between - edge;
    double best = Math.max(Math.max(fingers, wrist), Math.max(edge, centre));
    if (best < LEAST_SURE) {
      return new ZoneEstimate(Zone.UNKNOWN, 0);
    }
    Zone zone =
        best == fingers
            ? Zone.FINGERS
            : best == wrist ? Zone.WRIST : best == edge ? Zone.EDGE : Zone.CENTRE;
    return new ZoneEstimate(zone, best);
  }

  private static double beyond(double by) {
    return Quantiles.normalCdf(by / SPREAD);
  }
}
