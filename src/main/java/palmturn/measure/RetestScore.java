package palmturn.measure;

import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Range;
import palmturn.trial.Coded;
import palmturn.trial.Hand;

/**
 * One quality of one hand in a block against the block before, by the quality's headline measure.
 * The change alone has practice in it; only the net figures may say that the drill did something.
 *
 * @param hand the moving hand
 * @param quality what is compared
 * @param measure the headline measure
 * @param block the later block, {@code after-N}
 * @param before mean over the block before
 * @param after mean over the later block
 * @param difference after − before
 * @param difference95 95 % interval of the difference
 * @param margin a difference too small to matter; null where it can't be told
 * @param verdict what may be said of the change, practice included
 * @param furtherTrials further trials a block, 1 to 20, that should settle an unclear verdict; 0
 *     where it is settled; null for more than 20 or where it can't be told
 * @param drill the code of the drill between the two blocks; null where none was named
 * @param control what the change was compared with
 * @param netDifference the change less the control's change; null without a control
 * @param net95 95 % interval of the net difference
 * @param netVerdict what may be said of the drill
 * @param readings whose marks the figures come from, the control's too, each named once
 */
public record RetestScore(
    Hand hand,
    Quality quality,
    Measure measure,
    String block,
    @Nullable Double before,
    @Nullable Double after,
    @Nullable Double difference,
    @Nullable Range difference95,
    @Nullable Double margin,
    ChangeVerdict verdict,
    @Nullable Integer furtherTrials,
    @Nullable String drill,
    Control control,
    @Nullable Double netDifference,
    @Nullable Range net95,
    ChangeVerdict netVerdict,
    List<String> readings) {

  public RetestScore {
    readings = List.copyOf(readings);
  }

  /** The control that a change is compared with, to take out practice. */
  public enum Control implements Coded {
    /** The other hand over the same two blocks, which the drill left out. */
    OTHER_HAND,
    /** The same hand over a rest as long as the drill. */
    REST,
    NONE
  }

  /** The possible verdicts on a change. */
  public enum ChangeVerdict implements Coded {
    BETTER,
    WORSE,
    NO_CHANGE,
    UNCLEAR,
    CANNOT_TELL
  }
}
