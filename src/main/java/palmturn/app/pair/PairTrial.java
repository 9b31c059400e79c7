package palmturn.app.pair;

import org.jspecify.annotations.Nullable;
import palmturn.trial.Estimate;
import palmturn.trial.Reading;
import palmturn.trial.Slap;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

/**
 * A trial of the pair, with the marks that may be shown.
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

  /** The source of the marks, or the reason for having none. */
  public enum From {
    /** A reader's. */
    READER,
    /** The estimate's, not checked by anyone. */
    ESTIMATE,
    /** Hidden, since the reader reads this trial blind. */
    HIDDEN,
    /** No marks. */
    NOBODY
  }
}
