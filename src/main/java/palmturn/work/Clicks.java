package palmturn.work;

import java.nio.file.Path;
import java.util.Locale;
import palmturn.film.ClickTrack;

/** Writes click tracks. */
public final class Clicks {
  private Clicks() {}

  /**
   * Writes a click track as a WAV file.
   *
   * @param file ends in {@code .wav}
   * @param replace whether a file that is there may go
   * @return how many clicks there are to slap to
   */
  public static int write(
      Path file, double paceSlapsPerS, double forS, int countInClicks, boolean replace)
      throws UserError {
    if (!file.toString().toLowerCase(Locale.ROOT).endsWith(".wav")) {
      throw new UserError(file + ": a click track is a WAV file: let its name end in .wav");
    }
    ClickTrack track;
    try {
      track = ClickTrack.of(paceSlapsPerS, forS, countInClicks);
    } catch (IllegalArgumentException e) {
      throw UserError.of(e);
    }
    NewFile.write(file, replace, track.wav());
    return track.slaps().size();
  }
}
