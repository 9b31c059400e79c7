package palmturn.measure;

import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Range;
import palmturn.trial.Coded;
import palmturn.trial.Hand;

/**
 * The rate at which a hand still has 90 % of its attempts clean, over all its trials and its pace
 * ladder.
 *
 * @param hand the moving hand
 * @param outcome what may be said
 * @param cleanCeilingSlapsPerS the ceiling; null unless it was found
 * @param lowSlapsPerS lower end of its 95 % interval; null where that lies under the rates filmed
 * @param highSlapsPerS upper end of it; null where that lies over the rates filmed
 * @param filmedSlapsPerS the slowest and the fastest local rate filmed; null without an attempt
 * @param trials how many trials it rests on
 * @param paced how many of them were filmed to a click track
 * @param attempts how many attempts it rests on
 * @param faulty how many of these were not clean
 * @param readings whose marks they are, each named once
 */
public record CeilingScore(
    Hand hand,
    CeilingOutcome outcome,
    @Nullable Double cleanCeilingSlapsPerS,
    @Nullable Double lowSlapsPerS,
    @Nullable Double highSlapsPerS,
    @Nullable Range filmedSlapsPerS,
    int trials,
    int paced,
    int attempts,
    int faulty,
    List<String> readings) {

  public CeilingScore {
    readings = List.copyOf(readings);
  }

  /** The possible verdicts on a ceiling. */
  public enum CeilingOutcome implements Coded {
    /** It lies among the rates filmed. */
    FOUND,
    /** Over 90 % are clean at the fastest rate filmed. */
    NOT_REACHED,
    /** Under 90 % are clean at the slowest rate filmed. */
    UNDER_FILMED,
    CANNOT_TELL
  }
}
