package palmturn.app.desk;

import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.store.SessionFolder;
import palmturn.trial.TimeScale;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

/**
 * The session that is open: its folder, its trials as they are by now, its reader, its way to the
 * disk, and whether it may be written. It knows no pane and no clip.
 */
public final class OpenSession {
  /** The notice where an action needs a session. */
  public static final String NONE = "no session is open: open one, or add clips";

  private final ScoredTrials trials = new ScoredTrials();
  private final Readers readers = new Readers();
  private final Saving saving;
  private final Notices notices;
  private final ReadOnlyObjectWrapper<@Nullable SessionFolder> folder =
      new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<@Nullable TrialId> trialId = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyBooleanWrapper readOnly = new ReadOnlyBooleanWrapper(false);
  private final ReadOnlyStringWrapper heading = new ReadOnlyStringWrapper("");

  OpenSession(Saving saving, Notices notices) {
    this.saving = saving;
    this.notices = notices;
  }

  /** The session's folder; null while no session is open. */
  public ReadOnlyObjectProperty<@Nullable SessionFolder> folderProperty() {
    return folder.getReadOnlyProperty();
  }

  /** Returns the session's folder; null while no session is open. */
  public @Nullable SessionFolder folder() {
    return folder.get();
  }

  /** The trial on the stage; null when none is. */
  public ReadOnlyObjectProperty<@Nullable TrialId> trialIdProperty() {
    return trialId.getReadOnlyProperty();
  }

  /** Returns the trial on the stage; null when none is. */
  public @Nullable TrialId trialId() {
    return trialId.get();
  }

  /** Whether nothing may be written, because another window writes this session. */
  public ReadOnlyBooleanProperty readOnlyProperty() {
    return readOnly.getReadOnlyProperty();
  }

  /** Returns whether nothing may be written. */
  public boolean readOnly() {
    return readOnly.get();
  }

  /** The athlete and the day. */
  public ReadOnlyStringProperty headingProperty() {
    return heading.getReadOnlyProperty();
  }

  /** The writer of everything that is edited. */
  public Saving saving() {
    return saving;
  }

  /** Returns the initials of the person who reads; null while nobody gave any. */
  public @Nullable String reader() {
    return readers.initials();
  }

  /** Takes the initials of the person who reads from now on. */
  public void setReader(String initials) {
    readers.setInitials(initials.strip());
  }

  /** Returns the time scale of the trial on the stage; real time where none is. */
  TimeScale timeScale() {
    Trial now = trial();
    return now == null ? TimeScale.REAL : now.timeScale();
  }

  /** Returns the elbow's limit, cm. */
  public double elbowLimitCm() {
    return trials.limits().elbowCm().value();
  }

  /** Returns whether nothing may be written, and gives notice of it. */
  public boolean refusesEdits() {
    if (readOnly.get()) {
      notices.warn("this session is read-only: close the other window that marks it");
    }
    return readOnly.get();
  }

  /** Returns whether the trial on the stage is to be read without others' results in sight. */
  public boolean readsBlind() {
    Trial now = trial();
    return now != null && readers.readsBlind(now);
  }

  /** Returns whether a trial of the session is still to be read blind by the reader. */
  public boolean hasToReadBlind() {
    return trials.all().stream()
        .filter(readers::readsBlind)
        .map(readers::shown)
        .anyMatch(own -> own == null || !own.finished());
  }

  /** The trials, with their figures. */
  ScoredTrials trials() {
    return trials;
  }

  /** The reader, and the marks such a person is shown. */
  Readers readers() {
    return readers;
  }

  /** Returns the trial on the stage with its marks; null when none is. */
  @Nullable Trial trial() {
    return trials.get(trialId.get());
  }

  void setTrialId(@Nullable TrialId id) {
    trialId.set(id);
  }

  /** Replaces trials, limits and heading; listeners to the folder are told by {@link #announce}. */
  void load(LoadedSession loaded) {
    SessionFolder now = loaded.folder();
    readOnly.set(!loaded.whyReadOnly().isEmpty());
    trials.open(now.session(), now.trials(), loaded.limits());
    heading.set(ScoredTrials.heading(now.session()));
  }

  /** Makes a loaded session's folder the open one. */
  void announce(SessionFolder now) {
    folder.set(now);
  }

  /** Lets go of the folder, and returns it; null where none was open. */
  @Nullable SessionFolder release() {
    readers.clear();
    SessionFolder old = folder.get();
    folder.set(null);
    return old;
  }
}
