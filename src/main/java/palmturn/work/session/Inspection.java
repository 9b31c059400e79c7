package palmturn.work.session;

import java.nio.file.Path;
import java.util.List;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameTable;
import palmturn.json.FactsJson;
import palmturn.trial.ClipFacts;
import palmturn.trial.UserError;

/** The facts of a clip outside a session, and its fitness to be scored. */
public final class Inspection {
  private Inspection() {}

  /** Returns a clip's facts. */
  public static ClipFacts facts(Path clip) throws UserError {
    return open(clip).facts();
  }

  /** Returns the times of a clip's shown frames. */
  public static FrameTable frames(Path clip) throws UserError {
    return open(clip).frames();
  }

  /** Returns facts in the fixed form of scripts. */
  public static String json(List<ClipFacts> clips) {
    return FactsJson.write(clips);
  }

  private static ClipFile open(Path clip) throws UserError {
    return ClipFile.open(clip);
  }
}
