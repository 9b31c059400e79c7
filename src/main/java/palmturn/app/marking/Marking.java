package palmturn.app.marking;

import java.time.InstantSource;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.clip.FrameTable;
import palmturn.edit.History;
import palmturn.trial.Estimate;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.Zone;

/** The marks of one reader on one trial, which of them is current, and what was done so far. */
public final class Marking {
  /** Where an edit goes as soon as it is made. */
  @FunctionalInterface
  public interface Keeper {
    /** Keeps all marks, and says which step led to them. */
    void keep(Reading reading, String sentence);
  }

  private final ReadOnlyObjectWrapper<@Nullable Reading> reading = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<@Nullable Slap> slap = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<@Nullable Span> span = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<Map<Span.Kind, Double>> begun =
      new ReadOnlyObjectWrapper<>(Map.of());
  private final ReadOnlyStringWrapper step = new ReadOnlyStringWrapper("");
  private final InstantSource clock;
  private @Nullable FrameTable frames;
  private Keeper keeper = (marks, sentence) -> {};
  private @Nullable Estimate estimate;
  private boolean estimateInSight;
  private @Nullable History<Reading> history;

  /**
   * Starts without marks.
   *
   * @param clock tells when a finished reading is opened again
   */
  public Marking(InstantSource clock) {
    this.clock = clock;
  }

  /** All marks; null when no trial is open or nobody has begun to mark it. */
  public ReadOnlyObjectProperty<@Nullable Reading> readingProperty() {
    return reading.getReadOnlyProperty();
  }

  /** The slap that keys are about, if one is. */
  public ReadOnlyObjectProperty<@Nullable Slap> slapProperty() {
    return slap.getReadOnlyProperty();
  }

  /** The span that keys are about, if one is. */
  public ReadOnlyObjectProperty<@Nullable Span> spanProperty() {
    return span.getReadOnlyProperty();
  }

  /** Spans whose first end was given, with its time; their other end is still to come. */
  public ReadOnlyObjectProperty<Map<Span.Kind, Double>> begunProperty() {
    return begun.getReadOnlyProperty();
  }

  /** What was done last, as a sentence; empty when nothing was. */
  public ReadOnlyStringProperty stepProperty() {
    return step.getReadOnlyProperty();
  }

  /** Begins with the marks that are on disk. */
  public void open(Reading onDisk, FrameTable frameTable, Keeper newKeeper) {
    frames = frameTable;
    keeper = newKeeper;
    history = History.of(onDisk);
    slap.set(null);
    span.set(null);
    begun.set(Map.of());
    step.set("");
    reading.set(onDisk);
  }

  /** Lets go of the trial. */
  public void close() {
    history = null;
    estimate = null;
    estimateInSight = false;
    frames = null;
    keeper = (marks, sentence) -> {};
    slap.set(null);
    span.set(null);
    begun.set(Map.of());
    step.set("");
    reading.set(null);
  }

  /** Says what the program found in the trial, so that one named side can name the others. */
  public void setEstimate(@Nullable Estimate found) {
    estimate = found;
  }

  /**
   * Says that the estimate of this trial is in sight, or another's marks were: what is marked from
   * now on owes to them.
   */
  public void setEstimateInSight() {
    estimateInSight = true;
  }

  /** Copies the marks of an estimate in place of those there are; each is to be looked at. */
  public void startFrom(Estimate found) {
    apply((marks, table) -> Edits.startFrom(marks, found));
  }

  /** Marks a slap on the first frame that shows contact. */
  public void mark(int frame, Side side, boolean fault) {
    Estimate found = estimate;
    apply(
        (marks, table) -> {
          Edits.Edit edit = Edits.mark(marks, table, frame, side, fault);
          return found == null ? edit : Edits.sidesFollow(marks, edit, found);
        });
  }

  /** Marks a turn that made no contact. */
  public void missed(int frame) {
    apply(
        (marks, table) -> {
          Edits.Edit edit = Edits.mark(marks, table, frame, Side.UNKNOWN, false);
          Slap made = edit.slap();
          return made == null ? edit : Edits.kind(edit.reading(), made, Slap.Kind.MISSED);
        });
  }

  /** Names the zone of the current slap. */
  public void zone(Zone zone) {
    onSlap((marks, table, current) -> Edits.zone(marks, current, zone));
  }

  /** Names the kind of the current slap. */
  public void kind(Slap.Kind kind) {
    onSlap((marks, table, current) -> Edits.kind(marks, current, kind));
  }

  /** Says in words what is wrong with the current slap. */
  public void other(String note) {
    onSlap((marks, table, current) -> Edits.other(marks, current, note));
  }

  /** Moves a slap to a frame and makes it current. */
  public void move(Slap which, int frame) {
    apply((marks, table) -> Edits.move(marks, table, which, frame));
  }

  /** Moves the current slap by some frames. */
  public void nudge(int by) {
    onSlap(
        (marks, table, current) -> {
          int frame = table.nearest(current.timeS()) + by;
          return frame < 0 || frame >= table.size()
              ? new Edits.Edit(marks, current, null, "")
              : Edits.move(marks, table, current, frame);
        });
  }

  /** Moves one end of a span to a frame. */
  public void moveEnd(Span which, boolean start, int frame) {
    apply((marks, table) -> Edits.moveEnd(marks, which, start, table.timeS(frame)));
  }

  /** Gives the first end of a span at a frame; the second time its other end. */
  public void span(Span.Kind kind, int frame) {
    FrameTable table = frames;
    if (table == null) {
      return;
    }
    double timeS = table.timeS(frame);
    Map<Span.Kind, Double> open = new EnumMap<>(Span.Kind.class);
    open.putAll(begun.get());
    Double firstS = open.remove(kind);
    if (firstS == null) {
      open.put(kind, timeS);
      step.set(Edits.words(kind) + " begun: the same key ends it");
    } else if (firstS == timeS) {
      step.set(Edits.words(kind) + " given up: it would have no length");
    }
    begun.set(Collections.unmodifiableMap(open));
    if (firstS != null && firstS != timeS) {
      apply((marks, all) -> Edits.span(marks, kind, firstS, timeS));
    }
  }

  /** Gives up spans whose other end is still to come. */
  public void giveUpSpans() {
    if (!begun.get().isEmpty()) {
      begun.set(Map.of());
      step.set("span given up");
    }
  }

  /** Takes the current mark away. */
  public void delete() {
    Span currentSpan = span.get();
    if (currentSpan != null) {
      apply((marks, table) -> Edits.delete(marks, currentSpan));
    } else {
      onSlap((marks, table, current) -> Edits.delete(marks, current));
    }
  }

  /**
   * Says that the reading is complete, or opens it again. It can't be complete while the reader has
   * not looked at every mark that was copied.
   */
  public void finish() {
    Reading now = reading.get();
    int unseen = now == null ? 0 : Edits.unseen(now);
    if (now != null && !now.finished() && unseen > 0) {
      step.set(
          unseen == 1
              ? "not finished: one copied mark is still to be looked at"
              : "not finished: %d copied marks are still to be looked at".formatted(unseen));
      return;
    }
    apply(
        (marks, table) ->
            new Edits.Edit(
                marks.withFinished(!marks.finished()),
                slap.get(),
                span.get(),
                marks.finished() ? "reading open again" : "reading finished"));
  }

  /** Says what came of a step that changed nothing, or something else than marks. */
  public void say(String sentence) {
    step.set(sentence);
  }

  /** Takes the last step back. */
  public void undo() {
    travel("Undone: ", History::undoSentence, History::undo);
  }

  /** Does the step that was taken back once more. */
  public void redo() {
    travel("Done again: ", History::redoSentence, History::redo);
  }

  /** Says that the reader has stopped on a frame and sees its picture: its marks are seen now. */
  public void see(int frame) {
    Reading before = reading.get();
    FrameTable table = frames;
    if (history == null || before == null || table == null || frame >= table.size()) {
      return;
    }
    Reading after = Edits.see(before, table, frame);
    if (!after.equals(before)) {
      history = history.amended(after);
      reading.set(after);
      arriveAt(frame);
      keeper.keep(after, "looked at the copied mark");
    }
  }

  /** Returns the frame of the first mark that is still to be looked at. */
  public Optional<Integer> frameOfUnseen() {
    Reading marks = reading.get();
    FrameTable table = frames;
    if (marks == null || table == null) {
      return Optional.empty();
    }
    return marks.slaps().stream()
        .filter(each -> !each.seen())
        .findFirst()
        .map(each -> table.nearest(each.timeS()));
  }

  /** Makes a slap current, or none. */
  public void choose(@Nullable Slap which) {
    span.set(null);
    slap.set(which);
  }

  /** Makes a span current. */
  public void chooseSpan(Span which) {
    slap.set(null);
    span.set(which);
  }

  /** Makes the slap that lies on a frame current; elsewhere the current one stays. */
  public void arriveAt(int frame) {
    Reading marks = reading.get();
    FrameTable table = frames;
    if (marks != null && table != null && frame < table.size()) {
      Slap there = Edits.on(marks, table, frame);
      if (there != null) {
        choose(there);
      }
    }
  }

  /** Returns the frame of the next slap after a frame, or of the one before it. */
  public Optional<Integer> frameOfNeighbour(int frame, boolean forward) {
    Reading marks = reading.get();
    FrameTable table = frames;
    if (marks == null || table == null) {
      return Optional.empty();
    }
    var there = marks.slaps().stream().map(each -> table.nearest(each.timeS()));
    return forward
        ? there.filter(at -> at > frame).findFirst()
        : there.filter(at -> at < frame).reduce((before, at) -> at);
  }

  private interface OnSlap {
    Edits.Edit apply(Reading marks, FrameTable table, Slap current);
  }

  private void onSlap(OnSlap edit) {
    Slap current = slap.get();
    if (current == null) {
      step.set("no mark is chosen: step onto one, or click it");
    } else {
      apply((marks, table) -> edit.apply(marks, table, current));
    }
  }

  void apply(BiFunction<Reading, FrameTable, Edits.Edit> edit) {
    FrameTable table = frames;
    if (history == null || table == null) {
      return;
    }
    Reading before = history.now();
    Edits.Edit made = edit.apply(before, table);
    Reading after = made.reading();
    if (before.finished() && after.finished() && !after.equals(before)) {
      after = after.withFinished(false);
    }
    if (estimateInSight && !after.equals(before)) {
      after = after.withEstimateSeen(true);
    }
    after = Edits.noted(after, before, clock);
    history = history.then(after, made.sentence());
    if (!after.equals(before)) {
      step.set(made.sentence());
      reading.set(after);
      keeper.keep(after, made.sentence());
    }
    slap.set(made.slap());
    span.set(made.span());
  }

  private void travel(
      String prefix,
      Function<History<Reading>, Optional<String>> sentence,
      Function<History<Reading>, History<Reading>> way) {
    if (history == null) {
      return;
    }
    Optional<String> what = sentence.apply(history);
    if (what.isEmpty()) {
      step.set("nothing to " + (prefix.startsWith("U") ? "undo" : "do again"));
      return;
    }
    Reading before = history.now();
    history = way.apply(history);
    Reading after = Edits.noted(Edits.stillSeen(history.now(), before), before, clock);
    history = history.amended(after);
    String said = prefix + what.get();
    step.set(said);
    reading.set(after);
    span.set(null);
    slap.set(
        after.slaps().stream()
            .filter(each -> !before.slaps().contains(each))
            .findFirst()
            .orElse(after.slaps().contains(slap.get()) ? slap.get() : null));
    keeper.keep(after, said);
  }
}
