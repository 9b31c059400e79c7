package palmturn.app.marking;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Objects;
import java.util.function.BiFunction;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Estimate;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Zone;

/**
 * Goes through the marks of a reading one by one: first the times of the doubtful ones, then the
 * zone of every one. Each mark needs one key, and nothing is skipped unless the reader does it.
 */
public final class Pass {
  /** What a pass is about. */
  public enum About {
    TIMES,
    ZONES
  }

  /**
   * Where a pass is.
   *
   * @param number of the slap, from 1
   * @param of how many there are
   * @param why this one is doubtful, empty in the zone pass
   */
  public record Place(About about, int number, int of, String why) {
    /** Returns it in words. */
    public String words() {
      return (about == About.TIMES ? "Doubtful slap %d of %d" : "Place on the hand: slap %d of %d")
              .formatted(number, of)
          + (why.isEmpty() ? "" : ": " + why);
    }
  }

  /** Shows the slap that a pass has come to. */
  public interface Show {
    /** Centres a slap and plays it over and over. */
    void loop(Slap slap, About about);

    /** Stops at a slap. */
    void stopAt(@Nullable Slap slap);
  }

  private final Marking marking;
  private final Show show;
  private final ReadOnlyObjectWrapper<@Nullable Place> place = new ReadOnlyObjectWrapper<>();
  private List<Doubts.Doubt> items = List.of();
  private @Nullable Estimate estimate;
  private About about = About.ZONES;
  private int at;
  private final Deque<Integer> done = new ArrayDeque<>();
  private final Deque<Integer> undone = new ArrayDeque<>();

  /** Goes through marks. */
  public Pass(Marking marking, Show show) {
    this.marking = marking;
    this.show = show;
    marking
        .readingProperty()
        .addListener(
            (reading, before, now) -> {
              if (now == null) {
                items = List.of();
                place.set(null);
              }
            });
  }

  /** Where the pass is; null while there is none. */
  public ReadOnlyObjectProperty<@Nullable Place> placeProperty() {
    return place.getReadOnlyProperty();
  }

  /**
   * Begins with the times of doubtful marks, or where there are none with the zones, at the first
   * mark that has none.
   *
   * @param found the estimate if it may be seen
   */
  public void begin(@Nullable Estimate found) {
    Reading now = marking.readingProperty().get();
    if (now == null || now.slaps().isEmpty()) {
      return;
    }
    estimate = found;
    about = About.TIMES;
    done.clear();
    undone.clear();
    items = found == null ? List.of() : new ArrayList<>(Doubts.of(now, found));
    at = 0;
    if (items.isEmpty()) {
      zones(now);
    }
    arrive();
  }

  private void zones(Reading now) {
    done.clear();
    undone.clear();
    about = About.ZONES;
    items = new ArrayList<>();
    at = -1;
    for (Slap slap : now.slaps()) {
      if (slap.kind() != Slap.Kind.MISSED) {
        boolean open = !slap.seen() || slap.zone() == Zone.UNKNOWN;
        at = at < 0 && open ? items.size() : at;
        items.add(new Doubts.Doubt(slap.timeS(), ""));
      }
    }
    at = Math.max(0, at);
  }

  /** Leaves the mark as it is, in the zone pass as one at the centre, and goes on. */
  public void keep() {
    if (about == About.ZONES) {
      zone(Zone.CENTRE);
    } else {
      next();
    }
  }

  /** Says where the hand touched, and goes on. */
  public void zone(Zone zone) {
    edit((marks, slap) -> TypedEdits.zone(marks, slap, zone));
    next();
  }

  /** Says of what kind the mark is, and goes on. */
  public void kind(Slap.Kind kind) {
    edit((marks, slap) -> TypedEdits.kind(marks, slap, kind));
    next();
  }

  /** Says that the mark is a double, or none where it was one, and goes on. */
  public void doubled() {
    edit(
        (marks, slap) ->
            about == About.ZONES
                ? TypedEdits.kind(
                    marks,
                    slap,
                    slap.kind() == Slap.Kind.DOUBLE ? Slap.Kind.SLAP : Slap.Kind.DOUBLE)
                : TypedEdits.doubled(marks, slap, slap.kind() != Slap.Kind.DOUBLE));
    next();
  }

  /** Says which side touched, and those of other marks that follow from it; goes on with times. */
  public void side(Side side) {
    Estimate found = estimate;
    edit(
        (marks, slap) -> {
          Edits.Edit edit = TypedEdits.side(marks, slap, side);
          return found == null ? edit : Edits.sidesFollow(marks, edit, found);
        });
    if (about == About.TIMES) {
      next();
    } else {
      arrive();
    }
  }

  /** Moves the mark by frames and stays on it. */
  public void move(int by) {
    Slap slap = current();
    if (slap != null) {
      Reading before = marking.readingProperty().get();
      marking.choose(slap);
      marking.nudge(by);
      remember(before);
      moved();
      arrive();
    }
  }

  /** Takes the mark away and goes on. */
  public void drop() {
    edit((marks, slap) -> Edits.delete(marks, slap));
    next();
  }

  /** Goes back to the mark before, or on without a word, as far as there are any. */
  public void go(int by) {
    int to = at + by;
    while (to >= 0 && to < items.size() && slapAt(to) == null) {
      to += by;
    }
    if (to >= 0 && to < items.size()) {
      at = to;
    }
    arrive();
  }

  /** Takes the last step back and goes to the mark it was about. */
  public void undo() {
    marking.undo();
    follow(done, undone);
  }

  /** Does the undone step again and goes to the mark it was about. */
  public void redo() {
    marking.redo();
    follow(undone, done);
  }

  /** Ends the pass at the mark it has come to. */
  public void leave() {
    if (place.get() != null) {
      Slap slap = current();
      place.set(null);
      items = List.of();
      show.stopAt(slap);
    }
  }

  /** A verdict may leave no other trace than that a mark is seen, so that its place is kept. */
  private void follow(Deque<Integer> from, Deque<Integer> to) {
    Slap changed = marking.slapProperty().get();
    int nearest = 0;
    for (int i = 1; changed != null && i < items.size(); i++) {
      if (away(i, changed) < away(nearest, changed)) {
        nearest = i;
      }
    }
    if (!from.isEmpty()) {
      at = from.pop();
      to.push(at);
    } else if (changed != null) {
      at = nearest;
    }
    if (at == nearest && at < items.size()) {
      moved();
    }
    arrive();
  }

  private double away(int item, Slap slap) {
    return Math.abs(items.get(item).timeS() - slap.timeS());
  }

  private void edit(BiFunction<Reading, Slap, Edits.Edit> edit) {
    Slap slap = current();
    if (slap != null) {
      Reading before = marking.readingProperty().get();
      marking.apply((marks, table) -> edit.apply(marks, slap));
      remember(before);
    }
  }

  private void remember(@Nullable Reading before) {
    if (!Objects.equals(marking.readingProperty().get(), before)) {
      done.push(at);
      undone.clear();
    }
  }

  /** Takes the time of the mark that has just been changed. */
  private void moved() {
    Slap slap = marking.slapProperty().get();
    if (slap != null) {
      items.set(at, new Doubts.Doubt(slap.timeS(), items.get(at).why()));
    }
  }

  private void next() {
    int to = at + 1;
    while (to < items.size() && slapAt(to) == null) {
      to++;
    }
    Reading now = marking.readingProperty().get();
    if (to < items.size()) {
      at = to;
      arrive();
    } else if (about == About.TIMES && now != null) {
      zones(now);
      arrive();
    } else {
      leave();
    }
  }

  private void arrive() {
    Slap slap = current();
    if (slap == null) {
      leave();
      return;
    }
    marking.choose(slap);
    place.set(new Place(about, at + 1, items.size(), items.get(at).why()));
    show.loop(slap, about);
  }

  /** Returns the mark that the pass has come to; null where it was taken away. */
  private @Nullable Slap current() {
    return at < items.size() ? slapAt(at) : null;
  }

  private @Nullable Slap slapAt(int item) {
    Reading now = marking.readingProperty().get();
    double timeS = items.get(item).timeS();
    return now == null
        ? null
        : now.slaps().stream().filter(slap -> slap.timeS() == timeS).findFirst().orElse(null);
  }
}
