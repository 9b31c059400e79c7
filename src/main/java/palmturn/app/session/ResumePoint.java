package palmturn.app.session;

import java.nio.file.Files;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Executor;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.app.board.Board;
import palmturn.app.desk.Notices;
import palmturn.app.desk.OpenSession;
import palmturn.app.stage.Stage;
import palmturn.clip.FrameTable;
import palmturn.settings.RecentSessions;
import palmturn.settings.RecentSessions.Entry;
import palmturn.store.SessionFolder;
import palmturn.trial.TrialId;

/** The trial and the frame at which a session was left, for when it is opened again. */
final class ResumePoint {
  /** At most this much is lost when the program is killed. */
  private static final Duration KEPT_EVERY = Duration.ofSeconds(1);

  private final OpenSession session;
  private final Board board;
  private final Stage stage;
  private final Notices notices;
  private final RecentSessions recents;
  private final Executor screen;
  private final Clock clock;
  private Instant rememberedAt = Instant.EPOCH;
  private final ReadOnlyObjectWrapper<List<Entry>> all;
  private @Nullable Entry goal;
  private @Nullable Double timeS;

  ResumePoint(
      OpenSession session,
      Board board,
      Stage stage,
      Notices notices,
      RecentSessions recents,
      Executor screen,
      Clock clock) {
    this.session = session;
    this.board = board;
    this.stage = stage;
    this.notices = notices;
    this.recents = recents;
    this.screen = screen;
    this.clock = clock;
    RecentSessions.PendingAdd was = recents.unfinishedAdd();
    if (was != null && Files.isDirectory(was.folder()) && recents.of(was.folder()).isEmpty()) {
      recents.remember(new Entry(was.folder(), was.folder().getFileName() + "", null, null, null));
    }
    all = new ReadOnlyObjectWrapper<>(recents.all());
    session.folderProperty().addListener((folder, before, now) -> opened(now));
    board.cellsProperty().addListener((cells, before, now) -> choose());
    session.trialIdProperty().addListener((trial, before, now) -> moved(before, now));
    stage.framesProperty().addListener((frames, before, now) -> seekGoal(now));
    stage.frameProperty().addListener((frame, before, now) -> noteTime());
    stage.playingProperty().addListener((playing, before, now) -> noteTime());
  }

  /** The sessions that were opened last, the last first. */
  ReadOnlyObjectProperty<List<Entry>> allProperty() {
    return all.getReadOnlyProperty();
  }

  /** Takes a session off the list. */
  void forget(Entry gone) {
    recents.forget(gone.folder());
    all.set(recents.all());
  }

  private void opened(@Nullable SessionFolder now) {
    goal = now == null ? null : recents.of(now.folder()).orElse(null);
    timeS = null;
    if (now != null) {
      reportInterruptedAddition(now);
    }
    if (now != null && goal == null) {
      remember(now, null, null);
    }
  }

  /** Says once which clips were on their way into a session when the program ended. */
  private void reportInterruptedAddition(SessionFolder open) {
    RecentSessions.PendingAdd was = recents.unfinishedAdd();
    if (was == null || !was.folder().equals(open.folder().toAbsolutePath().normalize())) {
      return;
    }
    recents.finishAdding();
    List<String> missing = new ArrayList<>(was.trials());
    open.trials().forEach(trial -> missing.remove(trial.id().name()));
    if (!missing.isEmpty()) {
      notices.warn(
          "Palmturn ended while clips were added here: %s %s not in; add %s again with A"
              .formatted(
                  String.join(", ", missing),
                  missing.size() == 1 ? "is" : "are",
                  missing.size() == 1 ? "it" : "them"));
    }
  }

  /** Chooses the trial as soon as the board shows it. */
  private void choose() {
    Entry to = goal;
    if (to != null && to.trial() != null && !to.trial().equals(chosen())) {
      boolean there =
          board.cellsProperty().get().stream().anyMatch(cell -> cell.id().equals(to.trial()));
      if (there) {
        board.choose(to.trial());
      } else {
        goal = null;
      }
    }
  }

  private @Nullable TrialId chosen() {
    return board.chosenProperty().get();
  }

  private void moved(@Nullable TrialId before, @Nullable TrialId now) {
    SessionFolder open = session.folder();
    if (open == null) {
      return;
    }
    if (now == null && before != null && timeS != null) {
      remember(open, before, timeS);
    } else if (now != null && (goal == null || !now.equals(goal.trial()))) {
      goal = null;
      remember(open, now, null);
    }
    timeS = null;
  }

  private void seekGoal(@Nullable FrameTable frames) {
    Entry to = goal;
    if (frames == null) {
      return;
    }
    goal = null;
    Double back = to == null ? null : to.timeS();
    if (to != null && back != null && Objects.equals(session.trialId(), to.trial())) {
      // The stage asks for its first picture after it has told of its frames.
      screen.execute(
          () -> {
            if (stage.framesProperty().get() == frames) {
              stage.seek(frames.nearest(back));
            }
          });
    }
  }

  private void noteTime() {
    if (stage.framesProperty().get() != null) {
      timeS = stage.timeS();
      rememberNow();
    }
  }

  /** Keeps the place now and then, since a program that is killed does not say where it was. */
  private void rememberNow() {
    SessionFolder open = session.folder();
    TrialId trial = session.trialId();
    Instant now = clock.instant();
    boolean due = !now.isBefore(rememberedAt.plus(KEPT_EVERY)) && !stage.playingProperty().get();
    if (goal == null && open != null && trial != null && due) {
      rememberedAt = now;
      recents.remember(left(open, trial, timeS));
    }
  }

  private void remember(SessionFolder open, @Nullable TrialId trial, @Nullable Double atS) {
    recents.remember(left(open, trial, atS));
    all.set(recents.all());
  }

  private Entry left(SessionFolder open, @Nullable TrialId trial, @Nullable Double atS) {
    String reader = session.reader();
    return new Entry(
        open.folder(),
        session.headingProperty().get(),
        trial,
        atS,
        reader != null ? reader : recents.of(open.folder()).map(Entry::reader).orElse(null));
  }
}
