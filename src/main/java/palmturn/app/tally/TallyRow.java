package palmturn.app.tally;

import org.jspecify.annotations.Nullable;
import palmturn.measure.LimitVerdict;

/**
 * One row of the tally.
 *
 * @param name the quality
 * @param verdict how it stands to its limit
 * @param verdictWords the same in words, empty where there is nothing to say
 * @param figure the number as it is written, or a dash where it can't be told
 * @param unit the unit after it
 * @param gauge where it lies; null where it can't be told
 * @param note one line more
 */
public record TallyRow(
    String name,
    LimitVerdict verdict,
    String verdictWords,
    String figure,
    String unit,
    @Nullable Gauge gauge,
    String note) {}
