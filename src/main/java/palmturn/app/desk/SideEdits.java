package palmturn.app.desk;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import palmturn.app.marking.Marking;
import palmturn.trial.Reading;
import palmturn.trial.TrialId;

/**
 * Edits beside the marks, such as places set and messages written. Each is kept with the marks that
 * stood then, so that undo takes back the last edit of all.
 */
public final class SideEdits {
  private final Marking marking;
  private final Map<TrialId, Steps> ofTrials = new HashMap<>();
  private Steps steps = new Steps();

  SideEdits(Marking marking) {
    this.marking = marking;
  }

  /** The steps beside the marks of one trial, the latest first. */
  private record Steps(Deque<Step> done, Deque<Step> undone) {
    Steps() {
      this(new ArrayDeque<>(), new ArrayDeque<>());
    }
  }

  /**
   * One edit.
   *
   * @param marks the marks that stood then; null where nobody had begun
   */
  private record Step(Runnable back, Runnable again, @Nullable Reading marks) {
    /** Returns whether no mark was made since; one that was only looked at makes no step. */
    boolean at(@Nullable Reading now) {
      return Objects.equals(allSeen(marks), allSeen(now));
    }

    private static @Nullable Reading allSeen(@Nullable Reading reading) {
      return reading == null
          ? null
          : reading.withSlaps(reading.slaps().stream().map(each -> each.withSeen(true)).toList());
    }
  }

  /** Goes to the steps of a trial; null for none. */
  void open(@Nullable TrialId id) {
    steps = id == null ? new Steps() : ofTrials.computeIfAbsent(id, none -> new Steps());
  }

  /** Forgets everything, for another session. */
  void forget() {
    ofTrials.clear();
    open(null);
  }

  /** Shows an edit's sentence in the header. */
  void announce(String sentence) {
    marking.setStep(sentence);
  }

  /** Records an edit, and the ways to take it back and to do it again. */
  void record(Runnable back, Runnable again) {
    steps.done().push(new Step(back, again, marks()));
    steps.undone().clear();
  }

  /** Takes back what was done last; returns false where a mark was made after it. */
  public boolean undo() {
    Optional<Step> step = move(steps.done(), steps.undone());
    step.ifPresent(last -> last.back().run());
    return step.isPresent();
  }

  /** Does again what was taken back last; returns false where a mark was made since. */
  public boolean redo() {
    Optional<Step> step = move(steps.undone(), steps.done());
    step.ifPresent(last -> last.again().run());
    return step.isPresent();
  }

  private @Nullable Reading marks() {
    return marking.readingProperty().get();
  }

  private Optional<Step> move(Deque<Step> from, Deque<Step> to) {
    Step last = from.peek();
    if (last == null || !last.at(marks())) {
      return Optional.empty();
    }
    from.pop();
    to.push(last);
    return Optional.of(last);
  }
}
