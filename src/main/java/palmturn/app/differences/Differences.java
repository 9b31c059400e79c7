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
import palmturn.settle.Settled;
import palmturn.trial.Decision;
import palmturn.trial.Settlement;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Trial;

/**
 * Going through where two readings of a trial differ: which two, the difference that is looked at,
 * and what is decided. A decision is handed over to be kept at once, and can be undone.
 */
public final class Differences {
  private final Compared compared;
  private final Book book;
  private final Playing playing;
  private final Afresh afresh;
  private final ReadOnlyStringWrapper who = new ReadOnlyStringWrapper("");
  private final ReadOnlyIntegerWrapper at = new ReadOnlyIntegerWrapper(0);
  private final ReadOnlyBooleanWrapper kept = new ReadOnlyBooleanWrapper(false);
  private History<Settlement> history = History.of(Settlement.begin("", ""));
  private String why = "";

  /**
   * Starts closed.
   *
   * @param background runs what is slow
   * @param screen hands work to the screen's thread
   */
  public Differences(Tasks background, Executor screen, Book book) {
    compared = new Compared(background);
    this.book = book;
    playing = new Playing(screen);
    afresh = new Afresh(stage(), book::fail);
  }

  /** What is gone through; null while closed. */
  public ReadOnlyObjectProperty<@Nullable Opened> openedProperty() {
    return compared.openedProperty();
  }

  /** Which two are compared, and what came of it. */
  public Compared compared() {
    return compared;
  }

  /** What the two and the decisions come to; null until they are compared. */
  public ReadOnlyObjectProperty<@Nullable Settled> settledProperty() {
    return compared.settledProperty();
  }

  /** All differences, the worst first. */
  public ReadOnlyObjectProperty<List<Item>> itemsProperty() {
    return compared.itemsProperty();
  }

  /** Who decides; empty while not known. */
  public ReadOnlyStringProperty whoProperty() {
    return who.getReadOnlyProperty();
  }

  /** Asks who decides from now on. */
  public void askWho() {
    if (mayDecide()) {
      book.askWho(who::set);
    }
  }

  /** The place in the list; after the last one at the end. */
  public ReadOnlyIntegerProperty atProperty() {
    return at.getReadOnlyProperty();
  }

  /** Whether a settlement of the two has been kept, if only one without decisions. */
  ReadOnlyBooleanProperty keptProperty() {
    return kept.getReadOnlyProperty();
  }

  /** The pictures of the difference, and how it plays. */
  public Playing playing() {
    return playing;
  }

  /** What it plays on. */
  public Stage stage() {
    return playing.stage();
  }

  /** The mark that is made where neither is right. */
  public Afresh afresh() {
    return afresh;
  }

  /** Returns whether it is open. */
  public boolean isOpen() {
    return openedProperty().get() != null;
  }

  /** Returns the difference that is looked at; null at the end. */
  public @Nullable Item current() {
    List<Item> all = itemsProperty().get();
    return at.get() < all.size() ? all.get(at.get()) : null;
  }

  /**
   * Compares the first pair of a trial.
   *
   * @param decider who decides, empty for who decided last
   */
  public void open(Opened what, String decider) {
    close();
    List<Pair> pairs = Pair.of(what.trial());
    if (pairs.isEmpty()) {
      return;
    }
    if (!decider.isEmpty()) {
      who.set(decider);
    }
    stage().open(what.frames(), what.pictures(), what.trial().fromS(), what.trial().toS());
    compared.open(what, pairs);
    compare(pairs.get(0));
  }

  /** Compares the next pair. */
  public void otherPair() {
    List<Pair> pairs = compared.pairsProperty().get();
    if (pairs.size() > 1) {
      int now = pairs.indexOf(compared.pairProperty().get());
      compare(pairs.get((now + 1) % pairs.size()));
    }
  }

  private void compare(Pair two) {
    forget();
    compared.compare(
        two,
        result -> {
          history = History.of(result.settlement());
          kept.set(result.trial().settlements().contains(result.settlement()));
          arrive(nextOpen(0));
        },
        problem -> {
          book.failed(problem);
          close();
        });
  }

  /** Goes back to the trial. */
  public void close() {
    forget();
    compared.close();
    stage().close();
  }

  private void forget() {
    afresh.close();
    playing.clear();
    at.set(0);
    why = "";
  }

  /** Returns how many are decided. */
  public int decided() {
    return (int) itemsProperty().get().stream().filter(item -> !item.open()).count();
  }

  /** Decides the difference for the first reading or the second, and goes on to the next. */
  public void take(Decision.Choice choice) {
    Item item = current();
    if (item != null && !afresh.activeProperty().get()) {
      decide(item, choice, false, null);
    }
  }

  /** Leaves the difference open, or as it was decided, and goes on. */
  public void goOn() {
    Item item = current();
    if (item == null) {
      arrive(nextOpen(0));
    } else if (!item.open() || readOnly()) {
      arrive(Math.min(at.get() + 1, itemsProperty().get().size()));
    } else if (item.decision() == null || !why.isEmpty()) {
      take(Decision.Choice.OPEN);
    } else {
      arrive(nextOpen(at.get() + 1));
    }
  }

  /** Opens a decided difference again. */
  public void reopen() {
    Item item = current();
    if (item != null && !item.open()) {
      decide(item, Decision.Choice.OPEN, true, null);
    }
  }

  /** Goes back by one. */
  public void goBack() {
    if (at.get() > 0) {
      arrive(at.get() - 1);
    }
  }

  /** Goes to a difference of the list. */
  void goTo(Item item) {
    int found = itemsProperty().get().indexOf(item);
    if (found >= 0) {
      arrive(found);
    }
  }

  /** Begins a mark of the reviewer's own, on the frame in the middle. */
  public void markAfresh() {
    Item item = current();
    Opened now = openedProperty().get();
    if (item != null && now != null && mayDecide()) {
      int frame = Playing.frames(item, now).middle();
      playing.stopAt(frame);
      afresh.begin(item, now.frames(), frame);
    }
  }

  /** Keeps the mark that was made, in place of what both readings say. */
  public void keepAfresh() {
    neither(false);
  }

  /** Decides that there was nothing at all. */
  public void nothingThere() {
    neither(true);
  }

  private void neither(boolean nothing) {
    Item item = current();
    if (item == null || !afresh.activeProperty().get()) {
      return;
    }
    Slap slap = nothing ? null : afresh.slapProperty().get();
    if (slap != null && slap.side() == Side.UNKNOWN) {
      book.fail("palm or back? name the side of your mark first");
      return;
    }
    Object anew = nothing ? null : slap != null ? slap : afresh.spanProperty().get();
    decide(item, Decision.Choice.NEITHER, false, anew);
  }

  /** Gives up the mark that is being made. */
  public void giveUp() {
    if (afresh.activeProperty().get()) {
      afresh.close();
      show();
    }
  }

  /** Returns the words of why on the difference that is looked at. */
  public String why() {
    Item item = current();
    Decision<?> decision = item == null ? null : item.decision();
    return why.isEmpty() && decision != null ? decision.why() : why;
  }

  /** Says why: with the decision that comes next, or that there is already. */
  public void sayWhy(String words) {
    Item item = current();
    if (item == null || !mayDecide()) {
      return;
    }
    why = words.strip();
    Decision<?> decision = item.decision();
    if (decision != null && !item.open()) {
      decide(item, decision.choice(), true, decision.anew());
    }
  }

  /** Returns whether nothing can be decided, because another window writes. */
  public boolean readOnly() {
    return book.readOnly();
  }

  private boolean mayDecide() {
    if (readOnly()) {
      book.refuse();
    }
    return !readOnly();
  }

  /**
   * Keeps a decision and goes on.
   *
   * @param stay whether to stay at the difference
   * @param anew the mark or the stretch made instead of both
   */
  private void decide(Item item, Decision.Choice choice, boolean stay, @Nullable Object anew) {
    if (!mayDecide()) {
      return;
    }
    if (who.get().isEmpty()) {
      book.askWho(
          initials -> {
            who.set(initials);
            if (item.equals(current())) {
              decide(item, choice, stay, anew);
            }
          });
      return;
    }
    int here = at.get();
    String because = why.isEmpty() && item.open() ? why() : why;
    Item.Said said = new Item.Said(choice, who.get(), book.now(), because);
    history = history.then(item.decided(history.now(), said, anew), "Decide a difference");
    changed();
    arrive(stay ? here : nextOpen(here + 1));
  }

  /** Takes the last decision back, and goes to where it was. */
  public void undo() {
    step(history.undo());
  }

  /** Makes the decision again that was taken back. */
  public void redo() {
    step(history.redo());
  }

  private void step(History<Settlement> to) {
    if (to != history && mayDecide()) {
      List<Item> before = itemsProperty().get();
      afresh.close();
      history = to;
      changed();
      for (int i = 0; i < before.size(); i++) {
        if (!before.get(i).equals(itemsProperty().get().get(i))) {
          arrive(i);
          return;
        }
      }
      show();
    }
  }

  /** Keeps that nothing differs, or that all is decided; returns whether anything was to keep. */
  public boolean finish() {
    Settled now = settledProperty().get();
    if (now == null || current() != null || now.open() > 0 || kept.get()) {
      return false;
    }
    if (mayDecide()) {
      changed();
    }
    return true;
  }

  private void changed() {
    Trial trial = compared.decided(history.now());
    if (trial != null) {
      kept.set(true);
      book.keep(trial, history.now());
    }
  }

  private int nextOpen(int from) {
    List<Item> all = itemsProperty().get();
    for (int i = from; i < all.size(); i++) {
      if (all.get(i).open()) {
        return i;
      }
    }
    return all.size();
  }

  private void arrive(int place) {
    afresh.close();
    why = "";
    at.set(place);
    show();
  }

  /** Shows the difference and plays it. */
  private void show() {
    playing.show(openedProperty().get(), current());
  }
}
