package palmturn.app.pair;

import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Block;
import palmturn.trial.TrialId;

/** The filmed trials that can stand beside another, the most similar first. */
public final class PairPartners {
  private PairPartners() {}

  /**
   * Returns the trials that may stand beside one, the usual one first: the other hand's of the same
   * block and repeat, then the other hand's with marks, then its others, then the same hand's.
   */
  public static List<PairTrial> rank(TrialId open, List<PairTrial> filmed) {
    TrialId twin = new TrialId(open.hand().other(), open.block(), open.repeat());
    int block = Block.order(open.block());
    return filmed.stream()
        .filter(each -> !each.id().equals(open))
        .sorted(
            Comparator.comparing((PairTrial each) -> !each.id().equals(twin))
                .thenComparing(each -> each.id().hand() == open.hand())
                .thenComparing(each -> !each.hasSlaps())
                .thenComparing(each -> Math.abs(Block.order(each.id().block()) - block))
                .thenComparing(each -> Math.abs(each.id().repeat() - open.repeat())))
        .toList();
  }

  /** Returns the first of them, where it is of the other hand; null otherwise. */
  public static @Nullable PairTrial preferred(TrialId open, List<PairTrial> beside) {
    return beside.isEmpty() || beside.get(0).id().hand() == open.hand() ? null : beside.get(0);
  }
}
