package palmturn.app.estimate;

import palmturn.clip.Progress;
import palmturn.store.SessionFolder;
import palmturn.trial.Estimate;
import palmturn.trial.TrialId;
import palmturn.trial.UserError;

/** Makes the estimate of a trial and stores it. */
@FunctionalInterface
public interface EstimateMaker {
  /**
   * Returns the estimate, once it is on the disk.
   *
   * @throws UserError if it can't be made, or was stopped; nothing is stored then
   */
  Estimate make(SessionFolder folder, TrialId trial, Progress progress) throws UserError;
}
