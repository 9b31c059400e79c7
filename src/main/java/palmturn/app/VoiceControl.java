package palmturn.app;

import javafx.beans.InvalidationListener;
import palmturn.app.desk.ClipLoader;
import palmturn.app.stage.PlaySpeed;
import palmturn.app.stage.SoundPlayer;
import palmturn.app.stage.Stage;

/** Plays a clip's sound while the clip plays at full speed. */
final class VoiceControl {
  private VoiceControl() {}

  static void connect(SoundPlayer voice, Stage stage, ClipLoader loader) {
    InvalidationListener follow =
        changed -> {
          var sound = loader.soundProperty().get();
          boolean aloud =
              stage.playingProperty().get() && stage.speedProperty().get() == PlaySpeed.FULL;
          if (aloud && sound != null) {
            voice.play(sound, stage.timeS());
          } else {
            voice.stop();
          }
        };
    stage.playingProperty().addListener(follow);
    stage.speedProperty().addListener(follow);
  }
}
