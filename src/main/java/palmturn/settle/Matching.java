package palmturn.settle;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An optimal one-to-one matching of two lists of times within a tolerance: as many pairs as
 * possible, and of those matchings one with the least total time difference. Pairs never cross.
 *
 * @param pairs in order of time
 * @param onlyA indices into the first list that have no partner, rising
 * @param onlyB indices into the second list that have no partner, rising
 */
public record Matching(List<Pair> pairs, List<Integer> onlyA, List<Integer> onlyB) {
  /** Frame times are kept in microseconds; rounding must not part marks exactly one frame apart. */
  private static final double ROUNDING_S = 1e-6;

  /**
   * A pair of matched times.
   *
   * @param a index into the first list
   * @param b index into the second list
   * @param differenceS time of the second minus time of the first
   */
  public record Pair(int a, int b, double differenceS) {
    /** By subtraction, since a difference of nothing must stay 0, not turn to −0. */
    Pair swapped() {
      return new Pair(b, a, 0 - differenceS);
    }
  }

  public Matching {
    pairs = List.copyOf(pairs);
    onlyA = List.copyOf(onlyA);
    onlyB = List.copyOf(onlyB);
  }

  /**
   * Returns the best matching. Time and memory grow with the number of pairs in reach, not with the
   * product of the lengths.
   *
   * @param a seconds, never falling
   * @param b seconds, never falling
   * @param toleranceS largest time difference of a pair, 0 or more
   * @throws IllegalArgumentException if a list runs backwards
   */
  public static Matching of(double[] a, double[] b, double toleranceS) {
    requireSorted(a);
    requireSorted(b);
    // Ties must be broken alike whichever list is first.
    if (Arrays.compare(a, b) > 0) {
      return of(b, a, toleranceS).swapped();
    }
    Band band = new Band(a, b, toleranceS + ROUNDING_S);
    band.fill();
    return band.trace();
  }

  /** Returns how many marks the lists share. */
  public MatchCounts counts() {
    return new MatchCounts(pairs.size(), onlyA.size(), onlyB.size());
  }

  /** Returns the harmonic mean of precision and recall; null if both lists are empty. */
  public @Nullable Double f() {
    return counts().f();
  }

  /** Returns the pairs' time differences, second minus first, seconds. */
  public double[] differencesS() {
    return pairs.stream().mapToDouble(Pair::differenceS).toArray();
  }

  private Matching swapped() {
    return new Matching(pairs.stream().map(pair -> pair.swapped()).toList(), onlyB, onlyA);
  }

  private static void requireSorted(double[] times) {
    for (int i = 1; i < times.length; i++) {
      if (!(times[i] >= times[i - 1])) {
        throw new IllegalArgumentException(
            "times must not run backwards: %s s, then %s s".formatted(times[i - 1], times[i]));
      }
    }
  }

  /**
   * Dynamic programming over the first i moments of a and the first j of b, kept only for those j
   * whose last moment is in reach of a's: before them a's moment changes nothing, after them b's.
   */
  private static final class Band {
    private enum Step {
      LEAVE_A,
      LEAVE_B,
      PAIR
    }

    private final double[] a;
    private final double[] b;
    private final double reachS;

    /** For each moment of a, how many of b lie before its reach, and up to its end. */
    private final int[] from;

    private final int[] to;
    private final Step[][] steps;

    Band(double[] a, double[] b, double reachS) {
      this.a = a;
      this.b = b;
      this.reachS = reachS;
      this.from = new int[a.length];
      this.to = new int[a.length];
      this.steps = new Step[a.length][];
    }

    void fill() {
      Row before = new Row(0, new int[1], new double[1]);
      int first = 0;
      int end = 0;
      for (int i = 0; i < a.length; i++) {
        while (first < b.length && b[first] < a[i] - reachS) {
          first++;
        }
        end = Math.max(end, first);
        while (end < b.length && b[end] <= a[i] + reachS) {
          end++;
        }
        from[i] = first;
        to[i] = end;
        before = row(i, before);
      }
    }

    private Row row(int i, Row before) {
      int width = to[i] - from[i];
      int[] pairs = new int[width + 1];
      double[] costS = new double[width + 1];
      steps[i] = new Step[width + 1];
      pairs[0] = before.pairs(from[i]);
      costS[0] = before.costS(from[i]);
      steps[i][0] = Step.LEAVE_A;
      for (int k = 1; k <= width; k++) {
        int j = from[i] + k;
        int bestPairs = before.pairs(j - 1) + 1;
        double bestS = before.costS(j - 1) + Math.abs(a[i] - b[j - 1]);
        Step best = Step.PAIR;
        if (better(pairs[k - 1], costS[k - 1], bestPairs, bestS)) {
          bestPairs = pairs[k - 1];
          bestS = costS[k - 1];
          best = Step.LEAVE_B;
        }
        if (better(before.pairs(j), before.costS(j), bestPairs, bestS)) {
          bestPairs = before.pairs(j);
          bestS = before.costS(j);
          best = Step.LEAVE_A;
        }
        pairs[k] = bestPairs;
        costS[k] = bestS;
        steps[i][k] = best;
      }
      return new Row(from[i], pairs, costS);
    }

    private static boolean better(int pairs, double costS, int thanPairs, double thanS) {
      return pairs > thanPairs || pairs == thanPairs && costS < thanS;
    }

    Matching trace() {
      List<Pair> pairs = new ArrayList<>();
      List<Integer> onlyA = new ArrayList<>();
      List<Integer> onlyB = new ArrayList<>();
      int i = a.length;
      int j = b.length;
      while (i > 0) {
        while (j > to[i - 1]) {
          onlyB.add(--j);
        }
        Step step = j <= from[i - 1] ? Step.LEAVE_A : steps[i - 1][j - from[i - 1]];
        switch (step) {
          case LEAVE_A -> onlyA.add(--i);
          case LEAVE_B -> onlyB.add(--j);
          case PAIR -> {
            i--;
            j--;
            pairs.add(new Pair(i, j, b[j] - a[i]));
          }
        }
      }
      while (j > 0) {
        onlyB.add(--j);
      }
      Collections.reverse(pairs);
      Collections.reverse(onlyA);
      Collections.reverse(onlyB);
      return new Matching(pairs, onlyA, onlyB);
    }
  }

  /** The best for one i: most pairs, and their total time difference, for each j from a first. */
  private record Row(int from, int[] pairs, double[] costS) {
    int pairs(int j) {
      return pairs[Math.min(j - from, pairs.length - 1)];
    }

    double costS(int j) {
      return costS[Math.min(j - from, costS.length - 1)];
    }
  }
}
