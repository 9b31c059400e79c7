package palmturn.app.desk;

import org.jspecify.annotations.Nullable;
import palmturn.app.strip.Wave;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.Sound;

/** A clip's sound and its outline; both null where it has none. */
record SoundOf(@Nullable Sound sound, @Nullable Wave wave) {
  static SoundOf clip(ClipFile clip) throws ClipException {
    Sound sound = clip.sound();
    return new SoundOf(sound, sound == null ? null : Wave.of(sound));
  }
}
