package palmturn.work.reel;

import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.measure.Moments;
import palmturn.measure.ReadingChoice;
import palmturn.measure.TrialAlignment;
import palmturn.measure.TrialClock;
import palmturn.trial.Reading;
import palmturn.trial.Slap;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

/** The trial of the other hand that is shown beside a trial, slap by slap. */
final class OtherHand {
  private OtherHand() {}

  /** Returns the other hand's marked trial of the same block, the same repeat first; or none. */
  static @Nullable Trial of(Trial trial, List<Trial> all, ReadingChoice choice) {
    TrialId id = trial.id();
    return all.stream()
        .filter(each -> each.id().hand() == id.hand().other())
        .filter(each -> each.id().block().equals(id.block()))
        .filter(each -> each.paceSlapsPerS() == null)
        .filter(each -> marked(choice.of(each)))
        .min(Comparator.comparingInt(each -> Math.abs(each.id().repeat() - id.repeat())))
        .orElse(null);
  }

  private static boolean marked(@Nullable Reading reading) {
    return reading != null && reading.slaps().stream().filter(Slap::counts).count() >= 2;
  }

  /**
   * Returns which moments are the same, slap meeting slap. The numbers are shifted by as little as
   * it takes for palm to meet palm, and for the other hand to have that many slaps.
   */
  static TrialAlignment meeting(TrialClock one, TrialClock other, Moments.Moment moment) {
    int first = Math.max(1, one.lastAt(moment.fromS()));
    int last = Math.max(first, one.lastAt(moment.toS()));
    int best = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int shift = 1 - first; shift <= other.slaps().size() - first; shift++) {
      int beyond = Math.max(0, last + shift - other.slaps().size());
      boolean sameSide =
          one.slaps().get(first - 1).side() == other.slaps().get(first + shift - 1).side();
      double cost = 100.0 * beyond + (sameSide ? 0 : 10) + Math.abs(shift);
      if (cost < least) {
        least = cost;
        best = shift;
      }
    }
    return new TrialAlignment(one, other, first, best, true);
  }
}
