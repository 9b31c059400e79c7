package palmturn.settle;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Kappa;

/**
 * The agreement of two readings on the labels of matched slaps.
 *
 * @param names the labels
 * @param counts slaps by the first's label (outer) and the second's (inner)
 * @param unlabelled slaps that either left without a label
 */
public record LabelAgreement(List<String> names, List<List<Integer>> counts, int unlabelled) {
  public LabelAgreement {
    names = List.copyOf(names);
    counts = counts.stream().map(List::copyOf).toList();
  }

  /**
   * Counts labels.
   *
   * @param values those that are labels; others count as unlabelled
   * @param names one for each of {@code values}
   * @param a the first's, one for each slap
   * @param b the second's, in the same order
   */
  static <T> LabelAgreement of(List<T> values, List<String> names, List<T> a, List<T> b) {
    int[][] table = new int[values.size()][values.size()];
    int untold = 0;
    for (int k = 0; k < a.size(); k++) {
      int i = values.indexOf(a.get(k));
      int j = values.indexOf(b.get(k));
      if (i < 0 || j < 0) {
        untold++;
      } else {
        table[i][j]++;
      }
    }
    List<List<Integer>> counts = new ArrayList<>();
    for (int[] row : table) {
      counts.add(IntStream.of(row).boxed().toList());
    }
    return new LabelAgreement(names, counts, untold);
  }

  /** Returns the sum of both tables; the labels must be the same. */
  LabelAgreement plus(LabelAgreement other) {
    List<List<Integer>> sums = new ArrayList<>();
    for (int i = 0; i < counts.size(); i++) {
      List<Integer> here = counts.get(i);
      List<Integer> there = other.counts.get(i);
      sums.add(IntStream.range(0, here.size()).mapToObj(j -> here.get(j) + there.get(j)).toList());
    }
    return new LabelAgreement(names, sums, unlabelled + other.unlabelled);
  }

  /** Returns how many slaps both labelled. */
  public int n() {
    return counts.stream().flatMap(List::stream).mapToInt(each -> each).sum();
  }

  /** Returns the share labelled alike, %; null without a slap that both labelled. */
  public @Nullable Double agreementPct() {
    int alike = IntStream.range(0, counts.size()).map(i -> counts.get(i).get(i)).sum();
    return n() == 0 ? null : 100.0 * alike / n();
  }

  /** Returns agreement beyond chance; null where either used one label only. */
  public @Nullable Kappa kappa() {
    return Kappa.of(
        counts.stream()
            .map(row -> row.stream().mapToInt(each -> each).toArray())
            .toArray(int[][]::new));
  }
}
