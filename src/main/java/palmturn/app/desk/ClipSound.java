package palmturn.app.desk;

import org.jspecify.annotations.Nullable;
import palmturn.app.strip.SoundOutline;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.Sound;

/** A clip's sound and its outline; both null where it has none. */
record ClipSound(@Nullable Sound sound, @Nullable SoundOutline wave) {
  static ClipSound read(ClipFile clip) throws ClipException {
    Sound sound = clip.sound();
    return new ClipSound(sound, sound == null ? null : SoundOutline.of(sound));
  }
}
