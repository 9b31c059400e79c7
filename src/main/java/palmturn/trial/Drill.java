package palmturn.trial;

import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A drill, or a rest, between two blocks.
 *
 * @param code the drill's code in the library; {@code rest} is one too
 * @param hand which hand it trained
 * @param dose how much, in the coach's words, often empty
 * @param start when it began, if known
 * @param end when it ended, if known
 * @param extra unknown keys
 */
public record Drill(
    String code,
    DrillHand hand,
    String dose,
    @Nullable Instant start,
    @Nullable Instant end,
    Extra extra) {

  /** The code of a rest in a drill's place. */
  public static final String REST = "rest";

  /** Returns whether nothing was trained. */
  public boolean isRest() {
    return code.equals(REST);
  }

  /** Returns how long it took; null where that is not known. */
  public @Nullable Duration length() {
    return start == null || end == null ? null : Duration.between(start, end);
  }
}
