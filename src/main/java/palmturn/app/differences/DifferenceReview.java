package palmturn.app.differences;

import java.util.List;
import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.app.stage.Stage;
import palmturn.app.tasks.Tasks;
import palmturn.edit.History;
import palmturn.settle.SettledTrial;
import palmturn.trial.Decision;
import palmturn.trial.Settlement;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Trial;

/**
 * The review of a trial's two readings: the pair, the current difference and the decisions. Each
 * decision is saved at once and can be undone.
 */
public final class DifferenceReview {
  private final PairComparison comparison;
  private final ReviewContext context;
  private final DifferencePlayer player;
  private final NewMark newMark;
  private final ReadOnlyStringWrapper reviewer = new ReadOnlyStringWrapper("");
  private final ReadOnlyIntegerWrapper position = new ReadOnlyIntegerWrapper(0);
  private final ReadOnlyBooleanWrapper saved = new ReadOnlyBooleanWrapper(false);
  private History<Settlement> history = History.of(Settlement.begin("", ""));
  private String reason = "";

  /**
   * Starts closed.
   *
   * @param background runs what is slow
   * @param screen hands work to the screen's thread
   */
  public DifferenceReview(Tasks background, Executor screen, ReviewContext book) {
    comparison = new PairComparison(background);
    this.context = book;
    player = new DifferencePlayer(screen);
    newMark = new NewMark(stage(), book::report);
  }

  /** The trial under review; null while closed. */
  public ReadOnlyObjectProperty<@Nullable ReviewedTrial> trialProperty() {
    return comparison.trialProperty();
  }

  /** The two readings and their comparison. */
  public PairComparison comparison() {
    return comparison;
  }

  /** The settled reading so far; null until the two are compared. */
  public ReadOnlyObjectProperty<@Nullable SettledTrial> settledProperty() {
    return comparison.settledProperty();
  }

  /** All differences, the worst first. */
  public ReadOnlyObjectProperty<List<ReviewItem>> itemsProperty() {
    return comparison.itemsProperty();
  }

  /** The reviewer's initials; empty while unknown. */
  public ReadOnlyStringProperty reviewerProperty() {
    return reviewer.getReadOnlyProperty();
  }

  /** Asks for the reviewer's initials. */
  public void askReviewer() {
    if (mayDecide()) {
      context.askReviewer(reviewer::set);
    }
  }

  /** The index in the list; past the last one at the end. */
  public ReadOnlyIntegerProperty positionProperty() {
    return position.getReadOnlyProperty();
  }

  /** True once a settlement of the two is saved, even one without decisions. */
  ReadOnlyBooleanProperty savedProperty() {
    return saved.getReadOnlyProperty();
  }

  /** The pictures of the difference, and how it plays. */
  public DifferencePlayer player() {
    return player;
  }

  /** The stage that the difference plays on. */
  public Stage stage() {
    return player.stage();
  }

  /** The mark that is made where neither is right. */
  public NewMark newMark() {
    return newMark;
  }

  /** Returns whether it is open. */
  public boolean isOpen() {
    return trialProperty().get() != null;
  }

  /** Returns the current difference; null at the end. */
  public @Nullable ReviewItem current() {
    List<ReviewItem> all = itemsProperty().get();
    return position.get() < all.size() ? all.get(position.get()) : null;
  }

  /**
   * Compares the first pair of a trial.
   *
   * @param decider initials of the reviewer, empty for the last one
   */
  public void open(ReviewedTrial what, String decider) {
    close();
    List<ReadingPair> pairs = ReadingPair.of(what.trial());
    if (pairs.isEmpty()) {
      return;
    }
    if (!decider.isEmpty()) {
      reviewer.set(decider);
    }
    stage().open(what.frames(), what.pictures(), what.trial().fromS(), what.trial().toS());
    comparison.open(what, pairs);
    compare(pairs.get(0));
  }

  /** Compares the next pair. */
  public void compareNextPair() {
    List<ReadingPair> pairs = comparison.pairsProperty().get();
    if (pairs.size() > 1) {
      int now = pairs.indexOf(comparison.pairProperty().get());
      compare(pairs.get((now + 1) % pairs.size()));
    }
  }

  private void compare(ReadingPair two) {
    reset();
    comparison.compare(
        two,
        result -> {
          history = History.of(result.settlement());
          saved.set(result.trial().settlements().contains(result.settlement()));
          goTo(nextOpen(0));
        },
        problem -> {
          context.reportError(problem);
          close();
        });
  }

  /** Goes back to the trial. */
  public void close() {
    reset();
    comparison.close();
    stage().close();
  }

  private void reset() {
    newMark.close();
    player.clear();
    position.set(0);
    reason = "";
  }

  /** Returns how many are decided. */
  public int decidedCount() {
    return (int) itemsProperty().get().stream().filter(item -> !item.open()).count();
  }

  /** Decides the difference for the first reading or the second, and goes on to the next. */
  public void choose(Decision.Choice choice) {
    ReviewItem item = current();
    if (item != null && !newMark.activeProperty().get()) {
      decide(item, choice, false, null);
    }
  }

  /** Leaves the difference as it is and goes on. */
  public void goForward() {
    ReviewItem item = current();
    if (item == null) {
      goTo(nextOpen(0));
    } else if (!item.open() || readOnly()) {
      goTo(Math.min(position.get() + 1, itemsProperty().get().size()));
    } else if (item.decision() == null || !reason.isEmpty()) {
      choose(Decision.Choice.OPEN);
    } else {
      goTo(nextOpen(position.get() + 1));
    }
  }

  /** Opens a decided difference again. */
  public void reopen() {
    ReviewItem item = current();
    if (item != null && !item.open()) {
      decide(item, Decision.Choice.OPEN, true, null);
    }
  }

  /** Goes to the previous difference. */
  public void goBack() {
    if (position.get() > 0) {
      goTo(position.get() - 1);
    }
  }

  /** Goes to a difference of the list. */
  void goTo(ReviewItem item) {
    int found = itemsProperty().get().indexOf(item);
    if (found >= 0) {
      goTo(found);
    }
  }

  /** Begins a new mark on the frame in the middle. */
  public void beginNewMark() {
    ReviewItem item = current();
    ReviewedTrial now = trialProperty().get();
    if (item != null && now != null && mayDecide()) {
      int frame = DifferencePlayer.framesOf(item, now).middle();
      player.stopAt(frame);
      newMark.begin(item, now.frames(), frame);
    }
  }

  /** Decides for the new mark in place of both readings' marks. */
  public void saveNewMark() {
    decideNeither(false);
  }

  /** Decides that there was nothing at all. */
  public void decideNothing() {
    decideNeither(true);
  }

  private void decideNeither(boolean nothing) {
    ReviewItem item = current();
    if (item == null || !newMark.activeProperty().get()) {
      return;
    }
    Slap slap = nothing ? null : newMark.slapProperty().get();
    if (slap != null && slap.side() == Side.UNKNOWN) {
      context.report("set the side of your mark first: palm or back");
      return;
    }
    Object anew = nothing ? null : slap != null ? slap : newMark.spanProperty().get();
    decide(item, Decision.Choice.NEITHER, false, anew);
  }

  /** Discards the new mark. */
  public void cancelNewMark() {
    if (newMark.activeProperty().get()) {
      newMark.close();
      show();
    }
  }

  /** Returns the reason given for the current difference. */
  public String reason() {
    ReviewItem item = current();
    Decision<?> decision = item == null ? null : item.decision();
    return reason.isEmpty() && decision != null ? decision.why() : reason;
  }

  /** Sets the reason for the decision made already, or for the next one. */
  public void setReason(String words) {
    ReviewItem item = current();
    if (item == null || !mayDecide()) {
      return;
    }
    reason = words.strip();
    Decision<?> decision = item.decision();
    if (decision != null && !item.open()) {
      decide(item, decision.choice(), true, decision.anew());
    }
  }

  /** Returns whether nothing can be decided, because another window writes. */
  public boolean readOnly() {
    return context.readOnly();
  }

  private boolean mayDecide() {
    if (readOnly()) {
      context.reportReadOnly();
    }
    return !readOnly();
  }

  /**
   * Saves a decision and goes on.
   *
   * @param stay whether to stay at the difference
   * @param anew the mark or the stretch made instead of both
   */
  private void decide(
      ReviewItem item, Decision.Choice choice, boolean stay, @Nullable Object anew) {
    if (!mayDecide()) {
      return;
    }
    if (reviewer.get().isEmpty()) {
      context.askReviewer(
          initials -> {
            reviewer.set(initials);
            if (item.equals(current())) {
              decide(item, choice, stay, anew);
            }
          });
      return;
    }
    int here = position.get();
    String because = reason.isEmpty() && item.open() ? reason() : reason;
    ReviewItem.Judgement said =
        new ReviewItem.Judgement(choice, reviewer.get(), context.now(), because);
    history = history.then(item.decide(history.now(), said, anew), "Decide a difference");
    save();
    goTo(stay ? here : nextOpen(here + 1));
  }

  /** Undoes the last decision and goes to its difference. */
  public void undo() {
    replay(history.undo());
  }

  /** Redoes the decision undone last. */
  public void redo() {
    replay(history.redo());
  }

  private void replay(History<Settlement> to) {
    if (to != history && mayDecide()) {
      List<ReviewItem> before = itemsProperty().get();
      newMark.close();
      history = to;
      save();
      for (int i = 0; i < before.size(); i++) {
        if (!before.get(i).equals(itemsProperty().get().get(i))) {
          goTo(i);
          return;
        }
      }
      show();
    }
  }

  /** Saves that nothing differs or all is decided; returns whether there was anything to save. */
  public boolean finish() {
    SettledTrial now = settledProperty().get();
    if (now == null || current() != null || now.open() > 0 || saved.get()) {
      return false;
    }
    if (mayDecide()) {
      save();
    }
    return true;
  }

  private void save() {
    Trial trial = comparison.applyDecisions(history.now());
    if (trial != null) {
      saved.set(true);
      context.save(trial, history.now());
    }
  }

  private int nextOpen(int from) {
    List<ReviewItem> all = itemsProperty().get();
    for (int i = from; i < all.size(); i++) {
      if (all.get(i).open()) {
        return i;
      }
    }
    return all.size();
  }

  private void goTo(int place) {
    newMark.close();
    reason = "";
    position.set(place);
    show();
  }

  /** Plays the current difference. */
  private void show() {
    player.show(trialProperty().get(), current());
  }
}
