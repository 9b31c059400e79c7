package palmturn.app.desk;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Placed;
import palmturn.trial.Reading;

/** Which places were kept between which marks, so that undo takes back what was done last. */
final class PlaceSteps {
  private final Deque<Step> done = new ArrayDeque<>();
  private final Deque<Step> undone = new ArrayDeque<>();

  /**
   * Places that were kept.
   *
   * @param marks what was marked then; null where nobody had begun
   */
  record Step(Placed before, Placed after, @Nullable Reading marks) {
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
    done.clear();
    undone.clear();
  }

  void kept(Step step) {
    done.push(step);
    undone.clear();
  }

  /** Returns the step that is taken back, where no mark was made after it. */
  Optional<Step> undo(@Nullable Reading marks) {
    return move(done, undone, marks);
  }

  /** Returns the step that is done again, where no mark was made since it was taken back. */
  Optional<Step> redo(@Nullable Reading marks) {
    return move(undone, done, marks);
  }

  private static Optional<Step> move(Deque<Step> from, Deque<Step> to, @Nullable Reading marks) {
    Step last = from.peek();
    if (last == null || !last.at(marks)) {
      return Optional.empty();
    }
    from.pop();
    to.push(last);
    return Optional.of(last);
  }
}
