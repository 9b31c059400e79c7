package palmturn.settle;

import org.jspecify.annotations.Nullable;
import palmturn.trial.TrialId;

/**
 * The agreement of two readings on one of many trials.
 *
 * @param session name of the session's folder
 * @param trial hand, block and repeat
 * @param comparison the two readings beside each other
 * @param agreement how well they agree
 * @param first the figure that is compared over trials, by the first's marks; null where it can't
 *     be told
 * @param second the same by the second's
 */
public record TrialAgreement(
    String session,
    TrialId trial,
    ReadingComparison comparison,
    Agreement agreement,
    @Nullable Double first,
    @Nullable Double second) {}
