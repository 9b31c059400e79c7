package palmturn.settle;

import org.jspecify.annotations.Nullable;

/**
 * The counts of a matching: pairs and unmatched marks.
 *
 * @param pairs marks that both have
 * @param onlyA marks of the first without a partner
 * @param onlyB marks of the second without one
 */
public record MatchCounts(int pairs, int onlyA, int onlyB) {

  /** Returns the share of the second's marks that the first has too; null if it has none. */
  public @Nullable Double precision() {
    return share(pairs, pairs + onlyB);
  }

  /** Returns the share of the first's marks that the second has too; null if it has none. */
  public @Nullable Double recall() {
    return share(pairs, pairs + onlyA);
  }

  /**
   * Returns F, the harmonic mean of precision and recall, the same as positive specific agreement;
   * null without any mark.
   */
  public @Nullable Double f() {
    return share(2 * pairs, 2 * pairs + onlyA + onlyB);
  }

  /** Returns both together. */
  public MatchCounts plus(MatchCounts other) {
    return new MatchCounts(pairs + other.pairs, onlyA + other.onlyA, onlyB + other.onlyB);
  }

  private static @Nullable Double share(int part, int whole) {
    return whole == 0 ? null : (double) part / whole;
  }
}
