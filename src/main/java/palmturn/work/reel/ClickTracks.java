package palmturn.work.reel;

import java.nio.file.Path;
import java.util.Locale;
import palmturn.film.ClickTrack;
import palmturn.trial.Hand;
import palmturn.trial.UserError;
import palmturn.work.NewFile;

/** Writes click tracks. */
public final class ClickTracks {
  /** A little longer than the protocol's window, so that the track never ends inside it. */
  private static final double LADDER_S = 6;

  private static final int LADDER_COUNT_IN = 4;

  private ClickTracks() {}

  /**
   * Writes the click track of a pace of a hand's ladder, named by both.
   *
   * @return the file
   */
  public static Path ladder(Path folder, Hand hand, double paceSlapsPerS, boolean replace)
      throws UserError {
    Path file =
        folder.resolve(String.format(Locale.ROOT, "%s-%.1f.wav", hand.code(), paceSlapsPerS));
    write(file, paceSlapsPerS, LADDER_S, LADDER_COUNT_IN, replace);
    return file;
  }

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
      throw new UserError(String.valueOf(e.getMessage()), e);
    }
    NewFile.write(file, replace, track.wav());
    return track.slaps().size();
  }
}
