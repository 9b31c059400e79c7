package palmturn.app.board;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Hand;
import palmturn.trial.TrialId;

/**
 * The order of filming: right, left, right, left, right, left, so that neither hand has all the
 * warm-up.
 */
public final class FilmingOrder {
  /** Trials with each hand. */
  public static final int REPEATS = 3;

  private FilmingOrder() {}

  /** Returns the six trials of a block in the order of filming. */
  public static List<TrialId> trialsOf(String block) {
    List<TrialId> order = new ArrayList<>();
    for (int repeat = 1; repeat <= REPEATS; repeat++) {
      order.add(new TrialId(Hand.RIGHT, block, repeat));
      order.add(new TrialId(Hand.LEFT, block, repeat));
    }
    return List.copyOf(order);
  }

  /**
   * Returns what to film next: the first gap in the block that was filmed last or, where that one
   * is complete, in the block after it; null when there is none.
   *
   * @param cells the whole board, block after block
   */
  static @Nullable TrialId firstMissing(List<Cell> cells) {
    List<String> blocks = cells.stream().map(cell -> cell.id().block()).distinct().toList();
    Set<TrialId> missing =
        cells.stream()
            .filter(cell -> cell.state() == Cell.State.NOT_FILMED)
            .map(Cell::id)
            .collect(Collectors.toSet());
    int last = 0;
    for (Cell cell : cells) {
      if (!missing.contains(cell.id())) {
        last = Math.max(last, blocks.indexOf(cell.id().block()));
      }
    }
    return blocks.stream()
        .skip(last)
        .flatMap(block -> trialsOf(block).stream())
        .filter(missing::contains)
        .findFirst()
        .orElse(null);
  }
}
