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
 * A check of a reading's marks one by one: first the times of the doubtful ones, then the zone of
 * every one. Each mark needs one key; none is skipped unless the reader does so.
 */
public final class MarkPass {
  /** The topic of a pass. */
  public enum Topic {
    TIMES,
    ZONES
  }

  /**
   * The position of a pass.
   *
   * @param number of the slap, from 1
   * @param of how many there are
   * @param why this one is doubtful, empty in the zone pass
   */
  public record Position(Topic topic, int number, int of, String why) {
    /** Returns it in words. */
    public String words() {
      return (topic == Topic.TIMES ? "Doubtful slap %d of %d" : "Zone of slap %d of %d")
              .formatted(number, of)
          + (why.isEmpty() ? "" : ": " + why);
    }
  }

  /** Shows the current slap of a pass. */
  public interface Display {
    /** Centres a slap and plays it over and over. */
    void loop(Slap slap, Topic about);

    /** Stops at a slap. */
    void stopAt(@Nullable Slap slap);
  }

  private final Marking marking;
  private final Display display;
  private final ReadOnlyObjectWrapper<@Nullable Position> position = new ReadOnlyObjectWrapper<>();
  private List<DoubtfulMarks.DoubtfulMark> items = List.of();
  private @Nullable Estimate estimate;
  private Topic topic = Topic.ZONES;
  private int index;
  private final Deque<Integer> undoPositions = new ArrayDeque<>();
  private final Deque<Integer> redoPositions = new ArrayDeque<>();

  /** Checks a reader's marks. */
  public MarkPass(Marking marking, Display show) {
    this.marking = marking;
    this.display = show;
    marking
        .readingProperty()
        .addListener(
            (reading, before, now) -> {
              if (now == null) {
                items = List.of();
                position.set(null);
              }
            });
  }

  /** The position; null while no pass is running. */
  public ReadOnlyObjectProperty<@Nullable Position> positionProperty() {
    return position.getReadOnlyProperty();
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
    topic = Topic.TIMES;
    undoPositions.clear();
    redoPositions.clear();
    items = found == null ? List.of() : new ArrayList<>(DoubtfulMarks.of(now, found));
    index = 0;
    if (items.isEmpty()) {
      beginZones(now);
    }
    showCurrent();
  }

  private void beginZones(Reading now) {
    undoPositions.clear();
    redoPositions.clear();
    topic = Topic.ZONES;
    items = new ArrayList<>();
    index = -1;
    for (Slap slap : now.slaps()) {
      if (slap.kind() != Slap.Kind.MISSED) {
        boolean open = !slap.seen() || slap.zone() == Zone.UNKNOWN;
        index = index < 0 && open ? items.size() : index;
        items.add(new DoubtfulMarks.DoubtfulMark(slap.timeS(), ""));
      }
    }
    index = Math.max(0, index);
  }

  /** Confirms the mark, in the zone pass as one at the centre, and goes on. */
  public void confirm() {
    if (topic == Topic.ZONES) {
      setZone(Zone.CENTRE);
    } else {
      next();
    }
  }

  /** Sets the zone and goes on. */
  public void setZone(Zone zone) {
    edit((marks, slap) -> FastEdits.setZone(marks, slap, zone));
    next();
  }

  /** Sets the kind and goes on. */
  public void setKind(Slap.Kind kind) {
    edit((marks, slap) -> FastEdits.setKind(marks, slap, kind));
    next();
  }

  /** Makes the mark a double, or a slap if it was one, and goes on. */
  public void toggleDouble() {
    edit(
        (marks, slap) ->
            topic == Topic.ZONES
                ? FastEdits.setKind(
                    marks,
                    slap,
                    slap.kind() == Slap.Kind.DOUBLE ? Slap.Kind.SLAP : Slap.Kind.DOUBLE)
                : FastEdits.setDouble(marks, slap, slap.kind() != Slap.Kind.DOUBLE));
    next();
  }

  /** Sets the side and infers those of other marks; in the time pass, goes on. */
  public void setSide(Side side) {
    Estimate found = estimate;
    edit(
        (marks, slap) -> {
          Edits.Edit edit = FastEdits.setSide(marks, slap, side);
          return found == null ? edit : Edits.inferSides(marks, edit, found);
        });
    if (topic == Topic.TIMES) {
      next();
    } else {
      showCurrent();
    }
  }

  /** Moves the mark by frames and stays on it. */
  public void moveMark(int by) {
    Slap slap = current();
    if (slap != null) {
      Reading before = marking.readingProperty().get();
      marking.chooseSlap(slap);
      marking.nudgeSlap(by);
      recordStep(before);
      updateTime();
      showCurrent();
    }
  }

  /** Deletes the mark and goes on. */
  public void deleteMark() {
    edit((marks, slap) -> Edits.delete(marks, slap));
    next();
  }

  /** Goes some marks forward, or back if negative, without deciding. */
  public void goBy(int by) {
    int to = index + by;
    while (to >= 0 && to < items.size() && slapAt(to) == null) {
      to += by;
    }
    if (to >= 0 && to < items.size()) {
      index = to;
    }
    showCurrent();
  }

  /** Undoes the last step and goes to its mark. */
  public void undo() {
    marking.undo();
    returnTo(undoPositions, redoPositions);
  }

  /** Redoes the undone step and goes to its mark. */
  public void redo() {
    marking.redo();
    returnTo(redoPositions, undoPositions);
  }

  /** Ends the pass at the current mark. */
  public void leave() {
    if (position.get() != null) {
      Slap slap = current();
      position.set(null);
      items = List.of();
      display.stopAt(slap);
    }
  }

  /** Goes to the mark of an undone step: one that only marked it as seen changed nothing else. */
  private void returnTo(Deque<Integer> from, Deque<Integer> to) {
    Slap changed = marking.slapProperty().get();
    int nearest = 0;
    for (int i = 1; changed != null && i < items.size(); i++) {
      if (distanceS(i, changed) < distanceS(nearest, changed)) {
        nearest = i;
      }
    }
    if (!from.isEmpty()) {
      index = from.pop();
      to.push(index);
    } else if (changed != null) {
      index = nearest;
    }
    if (index == nearest && index < items.size()) {
      updateTime();
    }
    showCurrent();
  }

  private double distanceS(int item, Slap slap) {
    return Math.abs(items.get(item).timeS() - slap.timeS());
  }

  private void edit(BiFunction<Reading, Slap, Edits.Edit> edit) {
    Slap slap = current();
    if (slap != null) {
      Reading before = marking.readingProperty().get();
      marking.apply((marks, table) -> edit.apply(marks, slap));
      recordStep(before);
    }
  }

  private void recordStep(@Nullable Reading before) {
    if (!Objects.equals(marking.readingProperty().get(), before)) {
      undoPositions.push(index);
      redoPositions.clear();
    }
  }

  /** Takes the time of the mark that has just been changed. */
  private void updateTime() {
    Slap slap = marking.slapProperty().get();
    if (slap != null) {
      items.set(index, new DoubtfulMarks.DoubtfulMark(slap.timeS(), items.get(index).why()));
    }
  }

  private void next() {
    int to = index + 1;
    while (to < items.size() && slapAt(to) == null) {
      to++;
    }
    Reading now = marking.readingProperty().get();
    if (to < items.size()) {
      index = to;
      showCurrent();
    } else if (topic == Topic.TIMES && now != null) {
      beginZones(now);
      showCurrent();
    } else {
      leave();
    }
  }

  private void showCurrent() {
    Slap slap = current();
    if (slap == null) {
      leave();
      return;
    }
    marking.chooseSlap(slap);
    position.set(new Position(topic, index + 1, items.size(), items.get(index).why()));
    display.loop(slap, topic);
  }

  /** Returns the current mark; null if it was deleted. */
  private @Nullable Slap current() {
    return index < items.size() ? slapAt(index) : null;
  }

  private @Nullable Slap slapAt(int item) {
    Reading now = marking.readingProperty().get();
    double timeS = items.get(item).timeS();
    return now == null
        ? null
        : now.slaps().stream().filter(slap -> slap.timeS() == timeS).findFirst().orElse(null);
  }
}
