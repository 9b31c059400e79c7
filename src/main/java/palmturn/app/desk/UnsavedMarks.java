package palmturn.app.desk;

import palmturn.store.ForeignChangeException;
import palmturn.store.SessionFolder;
import palmturn.store.StoreException;
import palmturn.trial.Reading;
import palmturn.trial.TrialId;

/** The marks of a trial that could not be saved. */
record UnsavedMarks(SessionFolder folder, TrialId trial, Reading marks) {
  private static final String SENTENCE = "Saved later";

  /** Saves them after all; beside what another program has put there where it did. */
  void save() throws StoreException {
    try {
      folder.keep(trial, marks, SENTENCE);
    } catch (ForeignChangeException e) {
      saveBeside();
    }
  }

  /** Saves them beside what another program has put there, and returns them as they are there. */
  Reading saveBeside() throws StoreException {
    return folder.keepBeside(trial, marks, SENTENCE);
  }
}
