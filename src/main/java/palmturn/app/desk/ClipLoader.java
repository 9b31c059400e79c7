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

/** Loads the clip of the trial on the stage and its sound in the background. */
public final class ClipLoader {
  private final Tasks background;
  private final OpenSession session;
  private final Stage stage;
  private final Strip strip;
  private final ReadOnlyObjectWrapper<@Nullable Sound> sound = new ReadOnlyObjectWrapper<>();
  private @Nullable OpenClip clip;

  ClipLoader(Tasks background, OpenSession session, Stage stage, Strip strip) {
    this.background = background;
    this.session = session;
    this.stage = stage;
    this.strip = strip;
  }

  /** The clip's sound; null until it is read, or where there is none. */
  public ReadOnlyObjectProperty<@Nullable Sound> soundProperty() {
    return sound.getReadOnlyProperty();
  }

  /** Returns the clip that is open; null until it is. */
  @Nullable OpenClip clip() {
    return clip;
  }

  /**
   * Opens a trial's clip on the stage.
   *
   * @param shown runs when its first picture is asked for and before its sound is read
   * @param failed gets the problem, as long as this trial is the one asked for
   */
  void open(
      Trial wanted, SessionFolder from, Consumer<OpenClip> shown, Consumer<Exception> failed) {
    session.setTrialId(wanted.id());
    Path file = from.clipPath(wanted);
    background.run(
        () -> wanted.id().equals(session.trialId()) ? OpenClip.open(wanted.id(), file) : null,
        came -> {
          if (came != null && came.id().equals(session.trialId()) && clip == null) {
            clip = came;
            stage.open(came.clip().frames(), came.cache()::frame, wanted.fromS(), wanted.toS());
            shown.accept(came);
            readSound(came, wanted, from, failed);
          } else {
            OpenClip.close(came);
          }
        },
        problem -> {
          if (wanted.id().equals(session.trialId())) {
            failed.accept(problem);
          }
        });
  }

  private void readSound(
      OpenClip came, Trial wanted, SessionFolder from, Consumer<Exception> failed) {
    background.run(
        () -> ClipSound.read(came.clip()),
        read -> {
          if (clip == came) {
            sound.set(read.sound());
            strip.setOutline(read.wave());
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
          if (clip == came) {
            failed.accept(problem);
          }
        });
  }

  void close() {
    OpenClip old = clip;
    clip = null;
    session.setTrialId(null);
    stage.close();
    sound.set(null);
    strip.setOutline(null);
    OpenClip.close(old);
  }
}
