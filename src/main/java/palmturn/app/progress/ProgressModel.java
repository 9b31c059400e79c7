package palmturn.app.progress;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.app.tasks.Tasks;
import palmturn.measure.Limits;
import palmturn.measure.ProgressScore;
import palmturn.work.score.AthleteProgress;

/** The progress of the open session's athlete over that session and those beside it. */
public final class ProgressModel {
  private final Tasks tasks;
  private final ProgressSource source;
  private final ReadOnlyObjectWrapper<@Nullable ProgressScore> score =
      new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<List<String>> unread = new ReadOnlyObjectWrapper<>(List.of());
  private final ReadOnlyObjectWrapper<List<String>> changes =
      new ReadOnlyObjectWrapper<>(List.of());
  private final ReadOnlyStringWrapper words = new ReadOnlyStringWrapper("");
  private @Nullable Path asked;
  private @Nullable Limits limits;

  /**
   * Knows nothing yet.
   *
   * @param tasks reads the sessions
   */
  public ProgressModel(Tasks tasks, ProgressSource finder) {
    this.tasks = tasks;
    this.source = finder;
  }

  /** The figures; null while they are looked for, and where there are none. */
  public ReadOnlyObjectProperty<@Nullable ProgressScore> scoreProperty() {
    return score.getReadOnlyProperty();
  }

  /** Returns the limits that the figures are held against; null before any were found. */
  @Nullable Limits limits() {
    return limits;
  }

  /** The changes from block to block in the open session, a line each. */
  public ReadOnlyObjectProperty<List<String>> changesProperty() {
    return changes.getReadOnlyProperty();
  }

  /** A line for each session beside that can't be read or has no figures. */
  public ReadOnlyObjectProperty<List<String>> unreadProperty() {
    return unread.getReadOnlyProperty();
  }

  /** The state of the search, the number of sessions, or the reason why nothing is shown. */
  public ReadOnlyStringProperty wordsProperty() {
    return words.getReadOnlyProperty();
  }

  /** Looks for the athlete's sessions; an answer for a session asked for before is passed over. */
  public void load(Path session) {
    asked = session;
    score.set(null);
    unread.set(List.of());
    changes.set(List.of());
    words.set("Looking for this athlete’s sessions beside the open one …");
    tasks.run(
        () -> source.of(session),
        found -> {
          if (session.equals(asked)) {
            show(found);
          }
        },
        problem -> {
          if (session.equals(asked)) {
            words.set(String.valueOf(problem.getMessage()));
          }
        });
  }

  private void show(AthleteProgress found) {
    ProgressScore now = found.score();
    unread.set(found.unread());
    changes.set(found.changes());
    words.set(words(now));
    limits = found.limits();
    score.set(now);
  }

  private static String words(@Nullable ProgressScore score) {
    if (score == null || score.courses().isEmpty()) {
      return "No session of this athlete has figures yet. Mark a trial, and it shows here.";
    }
    return score.sessions() == 1
        ? score.athlete()
            + ", one session. A change wants a second one: keep its folder beside this one."
        : String.format(
            Locale.ROOT,
            "%s, %d sessions. Each change is from the first session’s first block to the last’s.",
            score.athlete(),
            score.sessions());
  }
}
