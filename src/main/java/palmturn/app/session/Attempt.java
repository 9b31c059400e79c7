package palmturn.app.session;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Hand;

/**
 * A stretch of a clip that may become a trial.
 *
 * @param clip where it lies
 * @param fromS its start, media seconds; null for the clip's start
 * @param toS its end, media seconds; null for the clip's end
 * @param taken whether it is to become a trial
 * @param said the moving hand as a person said for this one; null where it follows from the order
 */
public record Attempt(
    Path clip, @Nullable Double fromS, @Nullable Double toS, boolean taken, @Nullable Hand said) {

  static Attempt whole(Path clip) {
    return new Attempt(clip, null, null, true, null);
  }

  Attempt withTaken(boolean newTaken) {
    return new Attempt(clip, fromS, toS, newTaken, said);
  }

  Attempt withSaid(Hand newSaid) {
    return new Attempt(clip, fromS, toS, taken, newSaid);
  }
}
