package palmturn.app.board;

import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.clip.Picture;

/**
 * A short description of a trial's clip, for the board.
 *
 * @param lengthS of the trial's stretch, media seconds
 * @param fps frames a second in the file
 * @param warnings what stands in the way of scoring it
 * @param still a small picture of it; null where none could be read
 */
public record ClipPreview(
    double lengthS, double fps, List<String> warnings, @Nullable Picture still) {
  public ClipPreview {
    warnings = List.copyOf(warnings);
  }
}
