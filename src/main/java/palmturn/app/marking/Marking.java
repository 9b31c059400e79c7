package palmturn.app.marking;

import java.time.InstantSource;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Locale;
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

/** One reader's marks on a trial, the current one, and the history of edits. */
public final class Marking {
  /** Saves each edit as soon as it is made. */
  @FunctionalInterface
  public interface Saver {
    /** Saves all marks with a sentence about the edit. */
    void save(Reading reading, String sentence);
  }

  private final ReadOnlyObjectWrapper<@Nullable Reading> reading = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<@Nullable Slap> slap = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<@Nullable Span> span = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<Map<Span.SpanKind, Double>> openSpans =
      new ReadOnlyObjectWrapper<>(Map.of());
  private final ReadOnlyStringWrapper step = new ReadOnlyStringWrapper("");
  private final InstantSource clock;
  private @Nullable FrameTable frames;
  private Saver saver = (marks, sentence) -> {};
  private @Nullable Estimate estimate;
  private boolean estimateSeen;
  private @Nullable History<Reading> history;

  /**
   * Starts without marks.
   *
   * @param clock dates the reopening of a finished reading
   */
  public Marking(InstantSource clock) {
    this.clock = clock;
  }

  /** All marks; null when no trial is open or nobody has begun to mark it. */
  public ReadOnlyObjectProperty<@Nullable Reading> readingProperty() {
    return reading.getReadOnlyProperty();
  }

  /** The current slap; null for none. */
  public ReadOnlyObjectProperty<@Nullable Slap> slapProperty() {
    return slap.getReadOnlyProperty();
  }

  /** The current span; null for none. */
  public ReadOnlyObjectProperty<@Nullable Span> spanProperty() {
    return span.getReadOnlyProperty();
  }

  /** Spans with only one end so far, and its time, media seconds. */
  public ReadOnlyObjectProperty<Map<Span.SpanKind, Double>> openSpansProperty() {
    return openSpans.getReadOnlyProperty();
  }

  /** The last step as a sentence; empty if there was none. */
  public ReadOnlyStringProperty stepProperty() {
    return step.getReadOnlyProperty();
  }

  /** Returns the history of edits; null when nobody has begun to mark. */
  public @Nullable History<Reading> history() {
    return history;
  }

  /** Begins with the marks that are on disk, which may be the latest of a history. */
  public void open(History<Reading> edits, FrameTable frameTable, Saver newKeeper) {
    Reading onDisk = edits.now();
    frames = frameTable;
    saver = newKeeper;
    history = edits;
    slap.set(null);
    span.set(null);
    openSpans.set(Map.of());
    step.set("");
    reading.set(onDisk);
  }

  /** Begins without a history, with the marks that are on disk. */
  public void open(Reading onDisk, FrameTable frameTable, Saver newKeeper) {
    open(History.of(onDisk), frameTable, newKeeper);
  }

  /** Closes the trial. */
  public void close() {
    history = null;
    estimate = null;
    estimateSeen = false;
    frames = null;
    saver = (marks, sentence) -> {};
    slap.set(null);
    span.set(null);
    openSpans.set(Map.of());
    step.set("");
    reading.set(null);
  }

  /** Sets the trial's estimate, from which one known side gives the others. */
  public void setEstimate(@Nullable Estimate found) {
    estimate = found;
  }

  /** Records that others' marks or the estimate were seen, on which later marks then depend. */
  public void setEstimateSeen() {
    estimateSeen = true;
  }

  /** Replaces all marks by the estimate's, to be checked one by one. */
  public void startFrom(Estimate found) {
    apply((marks, table) -> Edits.copyEstimate(marks, found));
  }

  /** Marks a slap on the first frame that shows contact. */
  public void markSlap(int frame, Side side, boolean fault) {
    Estimate found = estimate;
    apply(
        (marks, table) -> {
          Edits.Edit edit = Edits.markSlap(marks, table, frame, side, fault);
          return found == null ? edit : Edits.inferSides(marks, edit, found);
        });
  }

  /** Marks a turn that made no contact. */
  public void markMissed(int frame) {
    apply(
        (marks, table) -> {
          Edits.Edit edit = Edits.markSlap(marks, table, frame, Side.UNKNOWN, false);
          Slap made = edit.slap();
          return made == null ? edit : Edits.toggleKind(edit.reading(), made, Slap.Kind.MISSED);
        });
  }

  /** Sets the zone of the current slap; the same again resets it to the centre. */
  public void toggleZone(Zone zone) {
    editSlap((marks, table, current) -> Edits.toggleZone(marks, current, zone));
  }

  /** Sets the kind of the current slap; the same again resets it to a slap. */
  public void toggleKind(Slap.Kind kind) {
    editSlap((marks, table, current) -> Edits.toggleKind(marks, current, kind));
  }

  /** Describes a fault of the current slap in words. */
  public void describeFault(String note) {
    editSlap((marks, table, current) -> Edits.describeFault(marks, current, note));
  }

  /** Moves a slap to a frame and makes it current. */
  public void moveSlap(Slap which, int frame) {
    apply((marks, table) -> Edits.moveSlap(marks, table, which, frame));
  }

  /** Moves the current slap by some frames. */
  public void nudgeSlap(int by) {
    editSlap(
        (marks, table, current) -> {
          int frame = table.nearest(current.timeS()) + by;
          return frame < 0 || frame >= table.size()
              ? new Edits.Edit(marks, current, null, "")
              : Edits.moveSlap(marks, table, current, frame);
        });
  }

  /** Moves one end of a span to a frame. */
  public void moveSpanEnd(Span which, boolean start, int frame) {
    apply((marks, table) -> Edits.moveSpanEnd(marks, which, start, table.timeS(frame)));
  }

  /** Starts a span at a frame; the second time, ends it there. */
  public void toggleSpan(Span.SpanKind kind, int frame) {
    FrameTable table = frames;
    if (table == null) {
      return;
    }
    double timeS = table.timeS(frame);
    Map<Span.SpanKind, Double> open = new EnumMap<>(Span.SpanKind.class);
    open.putAll(openSpans.get());
    Double firstS = open.remove(kind);
    if (firstS == null) {
      open.put(kind, timeS);
      step.set(Edits.words(kind) + " started: the same key ends it");
    } else if (firstS == timeS) {
      step.set(Edits.words(kind) + " cancelled: it would have no length");
    }
    openSpans.set(Collections.unmodifiableMap(open));
    if (firstS != null && firstS != timeS) {
      apply((marks, all) -> Edits.addSpan(marks, kind, firstS, timeS));
    }
  }

  /** Cancels spans with only one end so far. */
  public void cancelSpans() {
    if (!openSpans.get().isEmpty()) {
      openSpans.set(Map.of());
      step.set("span cancelled");
    }
  }

  /** Deletes the current mark. */
  public void delete() {
    Span currentSpan = span.get();
    if (currentSpan != null) {
      apply((marks, table) -> Edits.delete(marks, currentSpan));
    } else {
      editSlap((marks, table, current) -> Edits.delete(marks, current));
    }
  }

  /**
   * Finishes the reading, or reopens it. It can't be finished before every copied mark has been
   * checked.
   */
  public void toggleFinished() {
    Reading now = reading.get();
    int unseen = now == null ? 0 : Edits.countUnseen(now);
    if (now != null && !now.finished() && unseen > 0) {
      step.set(
          unseen == 1
              ? "not finished: one copied mark is still to be checked"
              : String.format(
                  Locale.ROOT, "not finished: %d copied marks are still to be checked", unseen));
      return;
    }
    apply(
        (marks, table) ->
            new Edits.Edit(
                marks.withFinished(!marks.finished()),
                slap.get(),
                span.get(),
                marks.finished() ? "reading reopened" : "reading finished"));
  }

  /** Shows a sentence about a step that did not change marks. */
  public void setStep(String sentence) {
    step.set(sentence);
  }

  /** Undoes the last step. */
  public void undo() {
    replay("Undone: ", History::undoSentence, History::undo);
  }

  /** Redoes the step undone last. */
  public void redo() {
    replay("Redone: ", History::redoSentence, History::redo);
  }

  /** Records that the reader has stopped on a frame and seen its marks. */
  public void markSeen(int frame) {
    Reading before = reading.get();
    FrameTable table = frames;
    if (history == null || before == null || table == null || frame >= table.size()) {
      return;
    }
    Reading after = Edits.markSeen(before, table, frame);
    if (!after.equals(before)) {
      history = history.amended(after);
      reading.set(after);
      chooseSlapOn(frame);
      saver.save(after, "checked the copied mark");
    }
  }

  /** Returns the frame of the first unseen mark. */
  public Optional<Integer> firstUnseenFrame() {
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
  public void chooseSlap(@Nullable Slap which) {
    span.set(null);
    slap.set(which);
  }

  /** Makes a span current. */
  public void chooseSpan(Span which) {
    slap.set(null);
    span.set(which);
  }

  /** Makes the slap that lies on a frame current; elsewhere the current one stays. */
  public void chooseSlapOn(int frame) {
    Reading marks = reading.get();
    FrameTable table = frames;
    if (marks != null && table != null && frame < table.size()) {
      Slap there = Edits.slapOn(marks, table, frame);
      if (there != null) {
        chooseSlap(there);
      }
    }
  }

  /** Returns the frame of the next slap after a frame, or of the one before it. */
  public Optional<Integer> neighbourFrame(int frame, boolean forward) {
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

  private interface SlapEdit {
    Edits.Edit apply(Reading marks, FrameTable table, Slap current);
  }

  private void editSlap(SlapEdit edit) {
    Slap current = slap.get();
    if (current == null) {
      step.set("no mark is selected: step to one or click it");
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
    if (estimateSeen && !after.equals(before)) {
      after = after.withEstimateSeen(true);
    }
    after = Edits.noteReopening(after, before, clock);
    history = history.then(after, made.sentence());
    if (!after.equals(before)) {
      step.set(made.sentence());
      reading.set(after);
      saver.save(after, made.sentence());
    }
    slap.set(made.slap());
    span.set(made.span());
  }

  private void replay(
      String prefix,
      Function<History<Reading>, Optional<String>> sentence,
      Function<History<Reading>, History<Reading>> way) {
    if (history == null) {
      return;
    }
    Optional<String> what = sentence.apply(history);
    if (what.isEmpty()) {
      step.set("nothing to " + (prefix.startsWith("U") ? "undo" : "redo"));
      return;
    }
    Reading before = history.now();
    history = way.apply(history);
    Reading after = Edits.noteReopening(Edits.keepSeen(history.now(), before), before, clock);
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
    saver.save(after, said);
  }
}
