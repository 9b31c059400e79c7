package palmturn.estimate.sound;

import java.util.List;
import palmturn.clip.Sound;

/** Onsets that stand out in a sound, for a person who marks by the picture and settles by ear. */
public final class SlapSounds {
  private SlapSounds() {}

  /**
   * Returns the times of onsets in a stretch, on the sound's own clock, in order. The sound can't
   * tell their cause.
   *
   * @param fromS first moment, seconds
   * @param toS last moment
   */
  public static List<Double> clearS(Sound sound, double fromS, double toS) {
    return Onsets.of(sound, fromS, toS).clear().stream().map(Onset::timeS).toList();
  }
}
