package palmturn.estimate.hands;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Robust;

/**
 * The bend of the wrist at each contact: the angle in the picture between the line from elbow to
 * wrist and that from wrist to middle knuckle, less the median for that side of the hand.
 *
 * @param bends one for each contact that shows it, in order
 * @param spans stretches over the limit
 */
record WristBend(List<Bend> bends, List<Span> spans) {
  /** Time around a contact in which the hand rests on the target. */
  private static final double AROUND_S = 0.035;

  /** Largest apparent bend of a straight wrist, from landmarks beside the bones. */
  private static final double MOST_USUAL_DEG = 40;

  /**
   * Bent farther than this in the picture, by the median of three contacts: Palmturn's choice. Of
   * single straight wrists, nineteen of twenty stayed within it in drawn clips of two makers; of a
   * bend, the picture shows a half to all and more, by where the camera stands.
   */
  static final double LIMIT_DEG = 8;

  /** Fewer contacts of a side give no steady median. */
  private static final int FEWEST = 4;

  /** One bent contact is no stretch. */
  private static final int FEWEST_BENT = 2;

  /**
   * The bend at a contact.
   *
   * @param timeS real seconds
   * @param deg from the usual, in the picture; over 0 clockwise
   */
  record Bend(double timeS, double deg) {}

  /**
   * A stretch with a bent wrist.
   *
   * @param startS real seconds
   * @param endS real seconds
   * @param largestDeg largest bend in it
   */
  record Span(double startS, double endS, double largestDeg) {}

  /**
   * Returns the bends, null where too little was seen.
   *
   * @param elbow the moving arm's elbow on the stage at a moment, x and y; null where it is lost
   */
  static @Nullable WristBend of(
      HandPaths paths, List<PosedContact> touches, DoubleFunction<double @Nullable []> elbow) {
    List<Bend> seen = new ArrayList<>();
    List<Integer> poses = new ArrayList<>();
    for (PosedContact touch : touches) {
      double @Nullable [] from = elbow.apply(touch.timeS());
      List<HandMarks> hands = paths.around(touch.timeS(), AROUND_S, AROUND_S);
      if (from != null && !hands.isEmpty() && touch.pose() != 0) {
        double[] angles = hands.stream().mapToDouble(hand -> angle(from, hand)).toArray();
        seen.add(new Bend(touch.timeS(), Math.toDegrees(Robust.median(angles))));
        poses.add(touch.pose());
      }
    }
    Double plus = usual(seen, poses, 1);
    Double minus = usual(seen, poses, -1);
    if (plus == null || minus == null) {
      return null;
    }
    List<Bend> bends = new ArrayList<>();
    for (int i = 0; i < seen.size(); i++) {
      double usual = poses.get(i) > 0 ? plus : minus;
      bends.add(new Bend(seen.get(i).timeS(), seen.get(i).deg() - usual));
    }
    return new WristBend(bends, spans(bends));
  }

  private static double angle(double[] elbow, HandMarks hand) {
    double forearm =
        Math.atan2(hand.y()[HandMarks.WRIST] - elbow[1], hand.x()[HandMarks.WRIST] - elbow[0]);
    double bend = hand.direction() - forearm;
    return Math.atan2(Math.sin(bend), Math.cos(bend));
  }

  /** Returns a side's median angle, null where it is implausible: the elbow is elsewhere. */
  private static @Nullable Double usual(List<Bend> seen, List<Integer> poses, int pose) {
    List<Double> same = new ArrayList<>();
    for (int i = 0; i < seen.size(); i++) {
      if (poses.get(i) == pose) {
        same.add(seen.get(i).deg());
      }
    }
    if (same.size() < FEWEST) {
      return null;
    }
    double median = Robust.median(same.stream().mapToDouble(Double::doubleValue).toArray());
    return Math.abs(median) > MOST_USUAL_DEG ? null : median;
  }

  private static List<Span> spans(List<Bend> bends) {
    List<Span> spans = new ArrayList<>();
    int first = -1;
    for (int i = 0; i <= bends.size(); i++) {
      boolean bent = i < bends.size() && bent(bends, i);
      if (bent && first < 0) {
        first = i;
      } else if (!bent && first >= 0) {
        if (i - first >= FEWEST_BENT) {
          spans.add(span(bends, first, i));
        }
        first = -1;
      }
    }
    return spans;
  }

  /** Returns whether the contact with its neighbours is over the limit. */
  private static boolean bent(List<Bend> bends, int i) {
    double[] near =
        bends.subList(Math.max(0, i - 1), Math.min(bends.size(), i + 2)).stream()
            .mapToDouble(bend -> Math.abs(bend.deg()))
            .toArray();
    return Robust.median(near) > LIMIT_DEG;
  }

  /** Returns the span up to half-way to the neighbours that are not bent. */
  private static Span span(List<Bend> bends, int from, int to) {
    double startS =
        from == 0
            ? bends.get(0).timeS()
            : (bends.get(from - 1).timeS() + bends.get(from).timeS()) / 2;
    double endS =
        to == bends.size()
            ? bends.get(to - 1).timeS()
            : (bends.get(to - 1).timeS() + bends.get(to).timeS()) / 2;
    double most =
        bends.subList(from, to).stream().mapToDouble(bend -> Math.abs(bend.deg())).max().orElse(0);
    return new Span(startS, endS, most);
  }
}
