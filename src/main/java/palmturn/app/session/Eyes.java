package palmturn.app.session;

import java.nio.file.Path;
import palmturn.trial.Estimate;
import palmturn.trial.Hand;
import palmturn.trial.Mirrored;
import palmturn.work.ClipLook;
import palmturn.work.Estimating;
import palmturn.work.Progress;
import palmturn.work.UserError;

/** What looks into clips before they are added; tests put their own in its place. */
public interface Eyes {
  /** Returns a clip's facts and pictures. */
  ClipLook look(Path clip) throws UserError;

  /** Returns what moves in a long clip, for the attempts in it. */
  Estimate find(Path clip, Progress progress) throws UserError;

  /** Returns the program's own. */
  static Eyes own() {
    return new Eyes() {
      @Override
      public ClipLook look(Path clip) throws UserError {
        return ClipLook.of(clip, null, null, 3, 0.1);
      }

      @Override
      public Estimate find(Path clip, Progress progress) throws UserError {
        // Where the attempts lie does not depend on the hand.
        return Estimating.standard()
            .clip(
                new Estimating.Clip(clip, Hand.RIGHT, Mirrored.UNKNOWN, null, null, null),
                Estimating.Asked.ALL,
                progress);
      }
    };
  }
}
