package palmturn.edit;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * An undo history: states one after another, and a position among them. Immutable and unbounded:
 * every method returns another history that shares its steps with this one.
 *
 * @param <S> an immutable state with {@code equals}
 */
public final class History<S> {
  private final S now;
  private final S saved;
  private final @Nullable Step<S> past;
  private final @Nullable Step<S> future;

  private History(S now, S saved, @Nullable Step<S> past, @Nullable Step<S> future) {
    this.now = now;
    this.saved = saved;
    this.past = past;
    this.future = future;
  }

  /** Returns a history that starts, saved, at a state. */
  public static <S> History<S> of(S start) {
    return new History<>(start, start, null, null);
  }

  /** Returns the state at this place. */
  public S now() {
    return now;
  }

  /**
   * Returns this history one step further; what was undone is given up. A step that changes nothing
   * is refused: the same history comes back.
   *
   * @param sentence what the step does, for a person
   */
  public History<S> then(S next, String sentence) {
    if (next.equals(now)) {
      return this;
    }
    return new History<>(next, saved, new Step<>(now, sentence, past), null);
  }

  /**
   * Returns this history with another state at this place, for what is no step of its own: it can
   * be undone only with the step that led here.
   */
  public History<S> amended(S other) {
    return other.equals(now) ? this : new History<>(other, saved, past, future);
  }

  /** Returns what {@link #undo} would take back, if there is a step. */
  public Optional<String> undoSentence() {
    return Optional.ofNullable(past).map(Step::sentence);
  }

  /** Returns what {@link #redo} would do again, if there is a step. */
  public Optional<String> redoSentence() {
    return Optional.ofNullable(future).map(Step::sentence);
  }

  /** Returns this history one step back; itself at the start. */
  public History<S> undo() {
    if (past == null) {
      return this;
    }
    return new History<>(
        past.state(), saved, past.next(), new Step<>(now, past.sentence(), future));
  }

  /** Returns this history one undone step further; itself at the end. */
  public History<S> redo() {
    if (future == null) {
      return this;
    }
    return new History<>(
        future.state(), saved, new Step<>(now, future.sentence(), past), future.next());
  }

  /** Returns this history with a state that is on disk by now. */
  public History<S> withSaved(S onDisk) {
    return new History<>(now, onDisk, past, future);
  }

  /** Returns whether the state at this place is another than the saved one. */
  public boolean changed() {
    return !now.equals(saved);
  }

  /** The state on the other side of a step, what the step did, and the step beyond it. */
  private record Step<S>(S state, String sentence, @Nullable Step<S> next) {}
}
