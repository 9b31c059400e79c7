package palmturn.app.pair;

import org.jspecify.annotations.Nullable;
import palmturn.trial.Estimate;
import palmturn.trial.Reading;
import palmturn.trial.Slap;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

/**
 * A trial that can stand in the pair, with the marks that may be shown of it.
 *
 * @param marks null where there are none, or they may not be shown
 * @param marksSource whose the marks are, or why there are none
 * @param hands where the moving hand is in the picture; null where that is not known
 */
public record PairTrial(
    Trial trial, @Nullable Reading marks, From marksSource, Estimate.@Nullable Region hands) {

  /** Returns which trial it is. */
  public TrialId id() {
    return trial.id();
  }

  /** Returns whether it has slaps to go by. */
  boolean hasSlaps() {
    return marks != null && marks.slaps().stream().anyMatch(Slap::counts);
  }

  /** Whose the marks are, or why there are none. */
  public enum From {
    /** A reader's. */
    READER,
    /** What the program found, which nobody has looked at. */
    ESTIMATE,
    /** They stay hidden, since the person in front reads this trial blind. */
    HIDDEN,
    /** There are none. */
    NOBODY
  }
}
