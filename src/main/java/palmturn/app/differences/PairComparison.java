package palmturn.app.differences;

import java.util.List;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.app.tasks.Tasks;
import palmturn.settle.SettledTrial;
import palmturn.trial.Settlement;
import palmturn.trial.Trial;
import palmturn.work.settle.Settling;

/** The two readings of the open trial that are compared, and the result. */
public final class PairComparison {
  private final Tasks background;
  private final ReadOnlyObjectWrapper<@Nullable ReviewedTrial> trial =
      new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<List<ReadingPair>> pairs =
      new ReadOnlyObjectWrapper<>(List.of());
  private final ReadOnlyObjectWrapper<@Nullable ReadingPair> pair = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<@Nullable SettledTrial> settled =
      new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<List<ReviewItem>> items =
      new ReadOnlyObjectWrapper<>(List.of());
  private final ReadOnlyObjectWrapper<List<String>> notes = new ReadOnlyObjectWrapper<>(List.of());
  private int asked;

  PairComparison(Tasks background) {
    this.background = background;
  }

  ReadOnlyObjectProperty<@Nullable ReviewedTrial> trialProperty() {
    return trial.getReadOnlyProperty();
  }

  /** The pairs that can be compared. */
  ReadOnlyObjectProperty<List<ReadingPair>> pairsProperty() {
    return pairs.getReadOnlyProperty();
  }

  /** The two that are compared; null while closed. */
  public ReadOnlyObjectProperty<@Nullable ReadingPair> pairProperty() {
    return pair.getReadOnlyProperty();
  }

  ReadOnlyObjectProperty<@Nullable SettledTrial> settledProperty() {
    return settled.getReadOnlyProperty();
  }

  ReadOnlyObjectProperty<List<ReviewItem>> itemsProperty() {
    return items.getReadOnlyProperty();
  }

  /** Cautions about the comparison, one a line. */
  ReadOnlyObjectProperty<List<String>> notesProperty() {
    return notes.getReadOnlyProperty();
  }

  void open(ReviewedTrial what, List<ReadingPair> all) {
    pairs.set(List.copyOf(all));
    trial.set(what);
  }

  void close() {
    clear();
    trial.set(null);
    pair.set(null);
    pairs.set(List.of());
  }

  private void clear() {
    asked++;
    settled.set(null);
    items.set(List.of());
    notes.set(List.of());
  }

  /**
   * Compares two of the trial's readings; a comparison overtaken by another is dropped.
   *
   * @param done is told after all properties
   */
  void compare(
      ReadingPair two, Consumer<Settling.SettlementResult> done, Consumer<Exception> failed) {
    ReviewedTrial in = trial.get();
    if (in == null) {
      return;
    }
    clear();
    pair.set(two);
    int turn = asked;
    background.run(
        () ->
            Settling.compare(in.trial(), new Settling.Terms(two.first(), two.second(), null, null)),
        result -> {
          if (turn == asked) {
            showResult(result);
            done.accept(result);
          }
        },
        problem -> {
          if (turn == asked) {
            failed.accept(problem);
          }
        });
  }

  private void showResult(Settling.SettlementResult result) {
    String name = result.trial().id().name() + ": ";
    notes.set(
        Settling.notes(result).stream()
            .map(note -> note.startsWith(name) ? note.substring(name.length()) : note)
            .toList());
    items.set(ReviewItem.of(result.settled()));
    settled.set(result.settled());
  }

  /**
   * Applies changed decisions on the same two readings.
   *
   * @return the trial with them; null where nothing is compared
   */
  @Nullable Trial applyDecisions(Settlement settlement) {
    ReviewedTrial in = trial.get();
    SettledTrial before = settled.get();
    if (in == null || before == null) {
      return null;
    }
    Trial decided = in.trial().withSettlement(settlement);
    SettledTrial next = before.with(decided, settlement);
    trial.set(new ReviewedTrial(decided, in.frames(), in.pictures(), in.windowS()));
    items.set(ReviewItem.of(next));
    settled.set(next);
    return decided;
  }
}
