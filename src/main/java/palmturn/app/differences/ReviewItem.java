package palmturn.app.differences;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import palmturn.settle.Difference;
import palmturn.settle.DifferenceState;
import palmturn.settle.SettledTrial;
import palmturn.trial.Decision;
import palmturn.trial.Settlement;
import palmturn.trial.Slap;
import palmturn.trial.Span;

/** One difference between two slaps or two spans, with the decision on it. */
public sealed interface ReviewItem {
  /** A difference of two slaps. */
  record OfSlap(DifferenceState<Slap> ruling) implements ReviewItem {
    @Override
    public Settlement decide(Settlement before, Judgement said, @Nullable Object anew) {
      return before.plusSlap(ruling.decide(said.choice, said.by, said.at, said.why, (Slap) anew));
    }
  }

  /** A difference of two spans. */
  record OfSpan(DifferenceState<Span> ruling) implements ReviewItem {
    @Override
    public Settlement decide(Settlement before, Judgement said, @Nullable Object anew) {
      return before.plusSpan(ruling.decide(said.choice, said.by, said.at, said.why, (Span) anew));
    }
  }

  /** A reviewer's choice on a difference, with time and reason. */
  record Judgement(Decision.Choice choice, String by, Instant at, String why) {}

  /** Returns the difference and its decision. */
  DifferenceState<?> ruling();

  /** Returns where the two differ. */
  default Difference<?> difference() {
    return ruling().difference();
  }

  /** Returns the last decision on it, null without one. */
  default @Nullable Decision<?> decision() {
    return ruling().decision();
  }

  /** Returns whether it still waits for a decision. */
  default boolean open() {
    return ruling().isOpen();
  }

  /**
   * Returns the settlement with a decision on this difference added.
   *
   * @param anew the slap or span made instead of both; null for none
   */
  Settlement decide(Settlement before, Judgement said, @Nullable Object anew);

  /** Returns when it begins, media seconds: the earlier of the two. */
  default double fromS() {
    return times().mapToDouble(each -> each[0]).min().orElse(difference().timeS());
  }

  /** Returns when it ends, media seconds: the later of the two. */
  default double toS() {
    return times().mapToDouble(each -> each[1]).max().orElse(difference().timeS());
  }

  private Stream<double[]> times() {
    return Stream.of(difference().a(), difference().b())
        .flatMap(
            mark ->
                mark instanceof Slap slap
                    ? Stream.of(new double[] {slap.timeS(), slap.timeS()})
                    : mark instanceof Span span
                        ? Stream.of(new double[] {span.startS(), span.endS()})
                        : Stream.empty());
  }

  /**
   * Returns all differences, the worst first: what changes a count, then side, stretch, zone and
   * time; within each as the comparison has them.
   */
  static List<ReviewItem> of(SettledTrial settled) {
    return Stream.<ReviewItem>concat(
            settled.slaps().stream().map(OfSlap::new), settled.spans().stream().map(OfSpan::new))
        .sorted(Comparator.comparingInt(ReviewItem::rank))
        .toList();
  }

  private int rank() {
    if (this instanceof OfSpan) {
      return 3;
    }
    return difference().what().stream().mapToInt(ReviewItem::rank).min().orElseThrow();
  }

  private static int rank(Difference.What what) {
    return switch (what) {
      case ONLY_A, ONLY_B -> 0;
      case DOUBLE, KIND -> 1;
      case SIDE -> 2;
      case ZONE -> 4;
      case APART -> 5;
    };
  }

  /** Returns the most important of the things that differ. */
  default Difference.What mainDifference() {
    return difference().what().stream()
        .min(Comparator.comparingInt(ReviewItem::rank))
        .orElseThrow();
  }
}
