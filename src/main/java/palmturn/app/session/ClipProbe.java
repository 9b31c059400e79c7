package palmturn.app.session;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import palmturn.clip.Progress;
import palmturn.trial.Estimate;
import palmturn.trial.Hand;
import palmturn.trial.Mirrored;
import palmturn.trial.UserError;
import palmturn.work.estimate.Estimating;
import palmturn.work.session.ClipSummary;

/** A look into clips before they are added; tests put their own in its place. */
public interface ClipProbe {
  /**
   * Returns a clip's facts, and pictures from the middle of a stretch of it.
   *
   * @param fromS start of the stretch, media seconds; null for the clip's start
   * @param toS its end; null for the clip's end
   */
  ClipSummary inspect(Path clip, @Nullable Double fromS, @Nullable Double toS) throws UserError;

  /** Returns a quick estimate of a long clip, for the stretches of slapping in it. */
  Estimate estimate(Path clip, Progress progress) throws UserError;

  /** Returns the program's own probe. */
  static ClipProbe standard() {
    return new ClipProbe() {
      @Override
      public ClipSummary inspect(Path clip, @Nullable Double fromS, @Nullable Double toS)
          throws UserError {
        return ClipSummary.of(clip, fromS, toS, 3, 0.1);
      }

      @Override
      public Estimate estimate(Path clip, Progress progress) throws UserError {
        // Where the attempts lie depends neither on the hand nor on its shape.
        return Estimating.standard()
            .clip(
                new Estimating.Clip(clip, Hand.RIGHT, Mirrored.UNKNOWN, null, null, null),
                Estimating.Options.QUICK,
                progress);
      }
    };
  }
}
