package palmturn.work.score;

import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.settle.SettleException;
import palmturn.settle.SettledTrial;
import palmturn.trial.Reading;
import palmturn.trial.Settlement;
import palmturn.trial.Trial;

/**
 * The settlement of a trial that was worked on last. One that came with a pack counts only where no
 * reading was made here.
 */
public final class LastSettled {
  private LastSettled() {}

  /** Returns what it comes to; null without one, or where a reading that it rests on is gone. */
  public static @Nullable SettledTrial of(Trial trial) {
    boolean ownCount = trial.readings().stream().anyMatch(Reading::own);
    return last(
        trial,
        trial.settlements().stream().filter(each -> !ownCount || each.pack() == null).toList());
  }

  /** Returns the same with those that came with packs, whatever was made here. */
  public static @Nullable SettledTrial withPacks(Trial trial) {
    SettledTrial own = of(trial);
    return own != null ? own : last(trial, trial.settlements());
  }

  private static @Nullable SettledTrial last(Trial trial, List<Settlement> all) {
    if (all.isEmpty()) {
      return null;
    }
    try {
      return SettledTrial.of(trial, all.get(all.size() - 1));
    } catch (SettleException e) {
      return null;
    }
  }

  /** Returns the same, else the first two finished readings unsettled; null without two. */
  public static @Nullable SettledTrial orUnsettled(Trial trial) {
    SettledTrial last = of(trial);
    List<Reading> finished = trial.readings().stream().filter(Reading::finished).toList();
    if (last != null || finished.size() < 2) {
      return last;
    }
    return of(
        trial.withSettlement(Settlement.begin(finished.get(0).reader(), finished.get(1).reader())));
  }
}
