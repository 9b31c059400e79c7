package palmturn.estimate.motion;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import palmturn.numbers.Robust;

/**
 * Moments at which an approach ends: candidates for contacts.
 *
 * @param samples where the velocity crosses zero, in samples, rising
 * @param strengths how far the velocity falls about it, cells/s
 */
@SuppressWarnings("ArrayRecordComponent") // Made once and only read.
record Crossings(double[] samples, double[] strengths) {
  /** Share of a typical fall; the first slap often comes at 40 % of the usual speed. */
  private static final double WEAKEST = 0.3;

  private record One(double sample, double strength) {}

  /**
   * Finds them.
   *
   * @param approach the velocity
   * @param sign 1 if the positive velocity goes towards the target, −1 if the negative does
   * @param frameS median distance between frames, seconds
   */
  static Crossings of(Approach approach, int sign, double frameS) {
    double[] v = approach.smooth();
    double hz = approach.hz();
    double about = Math.min(0.06, Math.max(1.6 * frameS, 0.3 / approach.slapHz()));
    int reach = Math.max(1, (int) Math.round(about * hz));
    List<One> all = new ArrayList<>();
    for (int i = 0; i + 1 < v.length; i++) {
      double now = sign * v[i];
      double next = sign * v[i + 1];
      if (now > 0 && next <= 0) {
        all.add(new One(i + now / (now - next), fall(v, sign, i, reach)));
      }
    }
    List<One> apart = apart(all, Math.max(0.06, 0.4 / approach.slapHz()) * hz);
    double[] strengths = apart.stream().mapToDouble(One::strength).toArray();
    double least = strengths.length == 0 ? 0 : WEAKEST * typical(strengths);
    List<One> kept =
        apart.stream()
            .filter(one -> one.strength() > least)
            .sorted(Comparator.comparingDouble(One::sample))
            .toList();
    return new Crossings(
        kept.stream().mapToDouble(One::sample).toArray(),
        kept.stream().mapToDouble(One::strength).toArray());
  }

  private static double fall(double[] v, int sign, int at, int reach) {
    double before = 0;
    double after = 0;
    for (int k = Math.max(0, at - reach); k <= at; k++) {
      before = Math.max(before, sign * v[k]);
    }
    for (int k = at + 1; k <= Math.min(v.length - 1, at + reach); k++) {
      after = Math.min(after, sign * v[k]);
    }
    return before - after;
  }

  /** Keeps the stronger of any two that are too near to each other. */
  private static List<One> apart(List<One> all, double least) {
    List<One> kept = new ArrayList<>();
    for (One one :
        all.stream().sorted(Comparator.comparingDouble(One::strength).reversed()).toList()) {
      if (kept.stream().noneMatch(other -> Math.abs(other.sample() - one.sample()) < least)) {
        kept.add(one);
      }
    }
    return kept;
  }

  /** Returns the median of those that are no mere tremor: over a quarter of the strongest ones. */
  private static double typical(double[] strengths) {
    double high = Robust.quantile(strengths, 0.95);
    return Robust.median(Arrays.stream(strengths).filter(s -> s >= 0.25 * high).toArray());
  }
}
