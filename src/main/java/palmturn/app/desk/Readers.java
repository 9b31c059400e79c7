package palmturn.app.desk;

import java.util.Collection;
import java.util.HashSet;
import java.util.Set;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.app.estimate.ShownEstimate;
import palmturn.trial.Reading;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

/** The reader of a session, the marks such a person is shown, and trials that were in sight. */
final class Readers {
  private final Set<TrialId> inSight = new HashSet<>();
  private final ReadOnlyObjectWrapper<@Nullable String> initials = new ReadOnlyObjectWrapper<>();

  /** Returns who reads; null while nobody said so. */
  @Nullable String initials() {
    return initials.get();
  }

  /** The initials of the person who reads; null while nobody gave any. */
  ReadOnlyObjectProperty<@Nullable String> initialsProperty() {
    return initials.getReadOnlyProperty();
  }

  void setInitials(String who) {
    initials.set(who);
  }

  /** Forgets what was in sight, for another session. */
  void clear() {
    inSight.clear();
  }

  /** Returns whether a session has to wait for who reads it before any of it is shown. */
  boolean mustAsk(Collection<Trial> trials) {
    return initials() == null
        && trials.stream().anyMatch(each -> !each.readings().isEmpty() || each.estimate() != null);
  }

  /** Returns the reader's own marks; before anybody said who reads, those that are there. */
  @Nullable Reading shown(Trial of) {
    String who = initials();
    return (who == null ? of.readings().stream().findFirst() : of.reading(who)).orElse(null);
  }

  /** Returns whether the estimate and others' marks of a trial are kept out of sight. */
  boolean readsBlind(Trial trial) {
    return ShownEstimate.readsBlind(trial, initials());
  }

  /** Takes note of a trial that is put before whoever is there. */
  void recordOpened(Trial trial) {
    if (initials() == null && !trial.readings().isEmpty()) {
      inSight.add(trial.id());
    }
  }

  /** Takes note that all marks of a trial were shown. */
  void recordSeen(TrialId id) {
    inSight.add(id);
  }

  /** Returns whether the one who reads has seen another's marks of a trial before saying so. */
  boolean hasSeenOthers(Trial trial) {
    return inSight.contains(trial.id())
        && trial.readings().stream().anyMatch(each -> !each.reader().equals(initials()));
  }
}
