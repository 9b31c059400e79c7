package palmturn.measure;

import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Range;
import palmturn.trial.Coded;

/**
 * The two hands side by side in one block, by the quality's headline measure.
 *
 * @param block {@code baseline} or {@code after-N}
 * @param quality what is compared
 * @param measure the headline measure
 * @param right mean over the right hand's trials
 * @param left mean over the left hand's trials
 * @param difference right − left
 * @param differencePct of the mean of both; null where that is 0
 * @param difference95 95 % interval of the difference
 * @param margin a difference too small to matter; null where it can't be told
 * @param verdict what may be said
 * @param furtherTrials further trials a hand, 1 to 20, that should settle an unclear verdict; 0
 *     where it is settled; null for more than 20 or where it can't be told
 * @param readings whose marks both hands' figures come from, each named once
 */
public record SideScore(
    String block,
    Quality quality,
    Measure measure,
    @Nullable Double right,
    @Nullable Double left,
    @Nullable Double difference,
    @Nullable Double differencePct,
    @Nullable Range difference95,
    @Nullable Double margin,
    SideVerdict verdict,
    @Nullable Integer furtherTrials,
    List<String> readings) {

  public SideScore {
    readings = List.copyOf(readings);
  }

  /** The possible verdicts on the two hands. */
  public enum SideVerdict implements Coded {
    BALANCED,
    WEAKER_LEFT,
    WEAKER_RIGHT,
    UNCLEAR,
    CANNOT_TELL
  }
}
