package palmturn.trial;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * What was done between two blocks.
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
    Extra extra) {}
