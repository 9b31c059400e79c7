package palmturn.work.session;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameReader;
import palmturn.clip.Picture;
import palmturn.trial.ClipFacts;
import palmturn.trial.UserError;

/**
 * A clip's facts, and small pictures from its middle.
 *
 * @param facts with the warnings about its fitness
 * @param stills one after the other; fewer than asked for where the clip is short
 */
public record ClipSummary(ClipFacts facts, List<Picture> stills) {
  private static final int LONG_SIDE_PX = 320;

  public ClipSummary {
    stills = List.copyOf(stills);
  }

  /**
   * Looks at a clip.
   *
   * @param fromS start of the stretch to take pictures from, media seconds; null for the start
   * @param toS end of that stretch; null for the end
   * @param stills how many pictures
   * @param apartS distance between them, media seconds
   */
  public static ClipSummary of(
      Path path, @Nullable Double fromS, @Nullable Double toS, int stills, double apartS)
      throws UserError {
    ClipFile clip = ClipFile.open(path);
    ClipFacts facts = clip.facts();
    double from = fromS == null ? facts.firstS() : fromS;
    double to = toS == null ? facts.firstS() + facts.durationS() : toS;
    List<Picture> taken = new ArrayList<>();
    try (FrameReader reader = clip.newReader(LONG_SIDE_PX)) {
      int before = -1;
      for (int i = 0; i < stills; i++) {
        double atS = (from + to) / 2 + (i - (stills - 1) / 2.0) * apartS;
        int frame = clip.frames().nearest(atS);
        if (frame != before) {
          taken.add(reader.read(frame));
        }
        before = frame;
      }
    }
    return new ClipSummary(facts, taken);
  }
}
