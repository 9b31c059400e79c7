package palmturn.app.desk;

import palmturn.store.SessionFolder;
import palmturn.trial.Reading;
import palmturn.trial.TrialId;

/** The marks of a trial that could not be saved, as another program changed its files meanwhile. */
record UnsavedMarks(SessionFolder folder, TrialId trial, Reading marks) {}
