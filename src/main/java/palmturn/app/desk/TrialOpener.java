package palmturn.app.desk;

import java.nio.file.Path;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.app.stage.Stage;
import palmturn.app.strip.Strip;
import palmturn.app.tasks.Tasks;
import palmturn.clip.Sound;
import palmturn.store.SessionFolder;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

/** Opens a trial's clip and its sound in the background, and lets go of them. */
final class TrialOpener {
  private final Tasks background;
  private final Stage stage;
  private final Strip strip;
  private final ReadOnlyObjectWrapper<@Nullable TrialId> trial = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<@Nullable Sound> sound = new ReadOnlyObjectWrapper<>();
  private @Nullable OpenClip open;

  TrialOpener(Tasks background, Stage stage, Strip strip) {
    this.background = background;
    this.stage = stage;
    this.strip = strip;
  }

  /** The trial that was asked for; null when none was. */
  ReadOnlyObjectProperty<@Nullable TrialId> trialProperty() {
    return trial.getReadOnlyProperty();
  }

  /** The sound of its clip; null until it is read, or where there is none. */
  ReadOnlyObjectProperty<@Nullable Sound> soundProperty() {
    return sound.getReadOnlyProperty();
  }

  /** Returns the clip that is open, null until it is. */
  @Nullable OpenClip clip() {
    return open;
  }

  /**
   * Opens a trial.
   *
   * @param shown runs when its first picture is asked for and before its sound is read
   * @param failed gets what went wrong, as long as this trial is the one asked for
   */
  void open(
      Trial wanted, SessionFolder from, Consumer<OpenClip> shown, Consumer<Exception> failed) {
    trial.set(wanted.id());
    Path clip = from.clipPath(wanted);
    background.run(
        () -> wanted.id().equals(trial.get()) ? OpenClip.open(wanted.id(), clip) : null,
        came -> {
          if (came != null && came.id().equals(trial.get()) && open == null) {
            open = came;
            stage.open(came.clip().frames(), came.cache()::frame, wanted.fromS(), wanted.toS());
            shown.accept(came);
            readSound(came, wanted, from, failed);
          } else {
            OpenClip.close(came);
          }
        },
        problem -> {
          if (wanted.id().equals(trial.get())) {
            failed.accept(problem);
          }
        });
  }

  private void readSound(
      OpenClip came, Trial wanted, SessionFolder from, Consumer<Exception> failed) {
    background.run(
        () -> ClipSound.read(came.clip()),
        heard -> {
          if (open == came) {
            sound.set(heard.sound());
            strip.setOutline(heard.wave());
          }
        },
        failed);
    background.run(
        () -> {
          from.checkClip(wanted);
          return true;
        },
        same -> {},
        problem -> {
          if (open == came) {
            failed.accept(problem);
          }
        });
  }

  void close() {
    OpenClip old = open;
    open = null;
    trial.set(null);
    stage.close();
    sound.set(null);
    strip.setOutline(null);
    OpenClip.close(old);
  }
}
