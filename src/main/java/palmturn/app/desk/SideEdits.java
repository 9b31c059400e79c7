package palmturn.app.desk;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Reading;

/**
 * What was done beside the marks, such as places set and messages written, each between which
 * marks, so that undo takes back what was done last.
 */
public final class SideEdits {
  private final Supplier<@Nullable Reading> marks;
  private final Deque<Step> record = new ArrayDeque<>();
  private final Deque<Step> undone = new ArrayDeque<>();

  SideEdits(Supplier<@Nullable Reading> marks) {
    this.marks = marks;
  }

  /**
   * Something that was done.
   *
   * @param marks what was marked then; null where nobody had begun
   */
  private record Step(Runnable back, Runnable again, @Nullable Reading marks) {
    /** Whether a mark was looked at in between makes no step. */
    boolean at(@Nullable Reading now) {
      return Objects.equals(allSeen(marks), allSeen(now));
    }

    private static @Nullable Reading allSeen(@Nullable Reading reading) {
      return reading == null
          ? null
          : reading.withSlaps(reading.slaps().stream().map(each -> each.withSeen(true)).toList());
    }
  }

  /** Forgets everything, for another trial. */
  void clear() {
    record.clear();
    undone.clear();
  }

  /** Takes note of something that was done. */
  void record(Runnable back, Runnable again) {
    record.push(new Step(back, again, marks.get()));
    undone.clear();
  }

  /** Takes back what was done last; returns false where a mark was made after it. */
  public boolean undo() {
    Optional<Step> step = move(record, undone);
    step.ifPresent(last -> last.back().run());
    return step.isPresent();
  }

  /** Does again what was taken back last; returns false where a mark was made since. */
  public boolean redo() {
    Optional<Step> step = move(undone, record);
    step.ifPresent(last -> last.again().run());
    return step.isPresent();
  }

  private Optional<Step> move(Deque<Step> from, Deque<Step> to) {
    Step last = from.peek();
    if (last == null || !last.at(marks.get())) {
      return Optional.empty();
    }
    from.pop();
    to.push(last);
    return Optional.of(last);
  }
}
