package palmturn.app.session;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Hand;

/**
 * A stretch of a clip that may become a trial.
 *
 * @param clip the clip's file
 * @param fromS its start, media seconds; null for the clip's start
 * @param toS its end, media seconds; null for the clip's end
 * @param included whether it is to become a trial
 * @param chosenHand the moving hand as a person said for this one; null where it follows from the
 *     order
 */
public record TrialCandidate(
    Path clip,
    @Nullable Double fromS,
    @Nullable Double toS,
    boolean included,
    @Nullable Hand chosenHand) {

  static TrialCandidate whole(Path clip) {
    return new TrialCandidate(clip, null, null, true, null);
  }

  TrialCandidate withIncluded(boolean newTaken) {
    return new TrialCandidate(clip, fromS, toS, newTaken, chosenHand);
  }

  TrialCandidate withHand(Hand newSaid) {
    return new TrialCandidate(clip, fromS, toS, included, newSaid);
  }
}
