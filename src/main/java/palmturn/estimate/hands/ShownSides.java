package palmturn.estimate.hands;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Robust;

/**
 * The side of the moving hand that touched at each contact, by the side it showed the camera and
 * the turns that motion found. While the target shows its palm, a hand that lands palm down shows
 * more of its back than one that lands on its back.
 *
 * @param palmPose the pose of the palm's contacts, +1 or −1
 * @param poses for each contact +1 or −1, 0 where unknown
 * @param confidences for each contact 0 to 1, that its side is right
 * @param shown for each contact how much of its palm the hand showed, null where it was not seen
 * @param cutShort for each contact whether the turn before it looks cut short: the hand shows
 *     clearly less of its side than at its other contacts
 * @param alternation share of neighbouring contacts whose sides differ by shape alone
 */
record ShownSides(
    int palmPose,
    List<Integer> poses,
    List<Double> confidences,
    List<@Nullable Double> shown,
    List<Boolean> cutShort,
    double alternation) {
  /** Time around a contact in which the hand shows the side it touches with. */
  private static final double AROUND_S = 0.035;

  /** A target that shows its palm less is edge on: then palm and back look alike. */
  private static final double LEAST_TARGET = 0.2;

  /** Least difference of the two sides' means. */
  private static final double LEAST_APART = 0.2;

  /** The same in standard errors of the difference. */
  private static final double LEAST_ERRORS = 3;

  /** The least scatter assumed of a side: the landmarks are known no better. */
  private static final double LEAST_SPREAD = 0.15;

  /** Share of contacts with gross landmark errors: Palmturn's choice. */
  private static final double ODD_SHARE = 0.1;

  /** Largest log-odds that motion contributes to one contact. */
  private static final double MOST_BY_MOTION = 3;

  /** A full turn shows at least this share of what its side usually shows over the other side. */
  private static final double FULL_TURN = 0.7;

  /** Scatters from its side's median at which a turn looks cut short; set on drawn clips. */
  private static final double CLEARLY = 5;

  /** The least scatter assumed in that comparison. */
  private static final double LEAST_SCATTER = 0.04;

  /** Fewer contacts give no steady median. */
  private static final int FEWEST = 3;

  /** Rounds of splitting the contacts and weighing them anew: Palmturn's choice. */
  private static final int ROUNDS = 3;

  /**
   * Returns the sides, null where the hands' shape does not determine them.
   *
   * @param trusted whether the poses by motion may be relied on
   */
  static @Nullable ShownSides of(HandPaths paths, List<PosedContact> touches, boolean trusted) {
    if (paths.targetPalmShown() < LEAST_TARGET) {
      return null;
    }
    List<@Nullable Double> shown = new ArrayList<>();
    for (PosedContact touch : touches) {
      shown.add(paths.mean(touch.timeS(), AROUND_S, paths::palmShown));
    }
    int[] byShape = split(shown);
    int[] poses = new int[touches.size()];
    for (int i = 0; i < poses.length; i++) {
      poses[i] = trusted ? touches.get(i).pose() : byShape[i];
    }
    double[] odds = new double[poses.length];
    for (int round = 0; round < ROUNDS; round++) {
      Split split = Split.of(shown, poses);
      if (split == null) {
        return null;
      }
      for (int i = 0; i < poses.length; i++) {
        Double seen = shown.get(i);
        PosedContact touch = touches.get(i);
        odds[i] =
            (trusted ? MOST_BY_MOTION * touch.pose() * touch.confidence() : 0)
                + (seen == null ? 0 : split.odds(seen));
        poses[i] = odds[i] > 0 ? 1 : odds[i] < 0 ? -1 : 0;
      }
    }
    Split split = Split.of(shown, poses);
    if (split == null || !split.clear()) {
      return null;
    }
    return new ShownSides(
        split.plus < split.minus ? 1 : -1,
        IntStream.of(poses).boxed().toList(),
        IntStream.range(0, poses.length)
            .mapToObj(i -> poses[i] == 0 ? 0.0 : PalmBoxes.logistic(Math.abs(odds[i])))
            .toList(),
        shown,
        IntStream.range(0, poses.length).mapToObj(i -> cutShort(shown, poses, i, split)).toList(),
        alternation(byShape));
  }

  /** Returns whether a turn looks cut short; false on a side whose contacts scatter too much. */
  private static boolean cutShort(List<@Nullable Double> shown, int[] poses, int i, Split split) {
    Double seen = shown.get(i);
    if (seen == null || poses[i] == 0) {
      return false;
    }
    double own = poses[i] > 0 ? split.plus : split.minus;
    double other = poses[i] > 0 ? split.minus : split.plus;
    double scatter = Math.max(LEAST_SCATTER, Robust.mad(Split.of(shown, poses, poses[i])));
    return (seen - other) / (own - other) < FULL_TURN && Math.abs(seen - own) > CLEARLY * scatter;
  }

  /** Returns the contacts with the sides that all sources together give. */
  List<PosedContact> applyTo(List<PosedContact> touches) {
    return IntStream.range(0, touches.size())
        .mapToObj(i -> new PosedContact(touches.get(i).timeS(), poses.get(i), confidences.get(i)))
        .toList();
  }

  /** Returns +1 for contacts over the gap that parts them best, −1 under it, 0 where not seen. */
  private static int[] split(List<@Nullable Double> shown) {
    int[] sides = new int[shown.size()];
    double[] sorted =
        shown.stream().mapToDouble(each -> each == null ? Double.NaN : each).sorted().toArray();
    int seen = (int) shown.stream().filter(each -> each != null).count();
    double best = Double.POSITIVE_INFINITY;
    double at = 0;
    for (int k = 1; k < seen; k++) {
      double within = squares(sorted, 0, k) + squares(sorted, k, seen);
      if (within < best) {
        best = within;
        at = (sorted[k - 1] + sorted[k]) / 2;
      }
    }
    for (int i = 0; i < sides.length; i++) {
      Double each = shown.get(i);
      sides[i] = each == null ? 0 : each > at ? 1 : -1;
    }
    return sides;
  }

  private static double squares(double[] sorted, int from, int to) {
    double mean = IntStream.range(from, to).mapToDouble(i -> sorted[i]).average().orElse(0);
    return IntStream.range(from, to).mapToDouble(i -> Math.pow(sorted[i] - mean, 2)).sum();
  }

  private static double alternation(int[] sides) {
    int pairs = 0;
    int differ = 0;
    for (int i = 1; i < sides.length; i++) {
      if (sides[i] != 0 && sides[i - 1] != 0) {
        pairs++;
        differ += sides[i] == sides[i - 1] ? 0 : 1;
      }
    }
    return pairs == 0 ? 0 : differ / (double) pairs;
  }

  /**
   * The distributions of what the two sides show.
   *
   * @param plus median of the contacts with pose +1
   * @param minus median of those with −1
   * @param plusSpread robust standard deviation of the contacts with +1
   * @param minusSpread of those with −1
   * @param error standard error of the difference
   */
  private record Split(
      double plus, double minus, double plusSpread, double minusSpread, double error) {
    static @Nullable Split of(List<@Nullable Double> shown, int[] poses) {
      double[] plus = of(shown, poses, 1);
      double[] minus = of(shown, poses, -1);
      if (plus.length < FEWEST || minus.length < FEWEST) {
        return null;
      }
      double p = Robust.sdFromMad(plus);
      double m = Robust.sdFromMad(minus);
      return new Split(
          Robust.median(plus),
          Robust.median(minus),
          Math.max(LEAST_SPREAD, p),
          Math.max(LEAST_SPREAD, m),
          Math.sqrt(p * p / plus.length + m * m / minus.length));
    }

    private static double[] of(List<@Nullable Double> shown, int[] poses, int pose) {
      return IntStream.range(0, poses.length)
          .filter(i -> poses[i] == pose)
          .mapToObj(shown::get)
          .filter(each -> each != null)
          .mapToDouble(each -> each == null ? 0 : each)
          .toArray();
    }

    boolean clear() {
      double apart = Math.abs(plus - minus);
      return apart > LEAST_APART && apart > LEAST_ERRORS * error;
    }

    /** Returns the log-odds for +1, near 0 for outliers of both sides. */
    double odds(double seen) {
      return Math.log(density(seen, plus, plusSpread) / density(seen, minus, minusSpread));
    }

    /** Returns a normal density mixed with a uniform share of outliers. */
    private static double density(double seen, double middle, double spread) {
      double z = (seen - middle) / spread;
      return (1 - ODD_SHARE) * Math.exp(-z * z / 2) / (spread * Math.sqrt(2 * Math.PI))
          + ODD_SHARE / 2;
    }
  }
}
