package palmturn.settle;

import java.util.Collections;
import java.util.Comparator;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Coded;

/**
 * A difference between two readings.
 *
 * @param <M> {@link palmturn.trial.Slap} or {@link palmturn.trial.Span}
 * @param what its kinds, worst first; never empty
 * @param a the first reading's mark, null if only the second has one
 * @param b the second reading's mark, null if only the first has one
 * @param timeS of the first's mark, else of the second's, media seconds
 * @param gapS real seconds from the first's to the second's; 0 if one is missing
 */
public record Difference<M>(
    Set<What> what, @Nullable M a, @Nullable M b, double timeS, double gapS) {

  /** A kind of difference, worst first: those that change a count come before labels. */
  public enum What implements Coded {
    ONLY_A("only in the first"),
    ONLY_B("only in the second"),
    DOUBLE("a double or not"),
    KIND("another kind of mark"),
    APART("too far apart in time"),
    SIDE("another side"),
    ZONE("another zone");

    private final String words;

    What(String words) {
      this.words = words;
    }

    /** Returns it in words. */
    public String words() {
      return words;
    }

    /** A mark missing from either reading is equally bad. */
    int rank() {
      return this == ONLY_B ? ONLY_A.ordinal() : ordinal();
    }
  }

  public Difference {
    what = Collections.unmodifiableSortedSet(new TreeSet<>(what));
    if (what.isEmpty()) {
      throw new IllegalArgumentException("a difference needs at least one kind, got none");
    }
  }

  /** Returns the worst kind. */
  public What worst() {
    return what.iterator().next();
  }

  /** Orders the worst first: by what, by how many things differ, by the gap, then by time. */
  static <M> Comparator<Difference<M>> worstFirst() {
    return Comparator.<Difference<M>>comparingInt(each -> each.worst().rank())
        .thenComparingInt(each -> -each.what.size())
        .thenComparingDouble(each -> -Math.abs(each.gapS))
        .thenComparingDouble(each -> each.timeS);
  }
}
