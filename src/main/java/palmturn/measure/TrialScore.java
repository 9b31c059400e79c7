package palmturn.measure;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import palmturn.trial.TrialId;

/**
 * The figures of one reading of one trial.
 *
 * @param trial hand, block and repeat
 * @param reading who read it
 * @param independent whether the reading was started from nothing
 * @param paceSlapsPerS the click track it was filmed to; null for an ordinary trial
 * @param speed how fast
 * @param accuracy how clean
 * @param rhythm how even
 * @param endurance what the length did
 * @param drift whether the elbow stayed
 * @param intervals one for each slap but the last, in order, for charts
 * @param attempts those whose pace can be told, for the clean ceiling
 * @param verdicts each quality's headline figure against its limit
 * @param timeRefusedWhy empty, or why speed, rhythm and endurance are null
 */
public record TrialScore(
    TrialId trial,
    String reading,
    boolean independent,
    @Nullable Double paceSlapsPerS,
    Speed speed,
    Accuracy accuracy,
    Rhythm rhythm,
    Endurance endurance,
    Drift drift,
    List<SlapInterval> intervals,
    List<TimedAttempt> attempts,
    Map<Quality, LimitVerdict> verdicts,
    String timeRefusedWhy) {

  public TrialScore {
    intervals = List.copyOf(intervals);
    attempts = List.copyOf(attempts);
    verdicts = Collections.unmodifiableMap(new EnumMap<>(verdicts));
  }
}
