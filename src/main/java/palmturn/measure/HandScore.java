package palmturn.measure;

import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Range;
import palmturn.trial.Hand;

/**
 * One quality of one hand in one block, over its trials, by the quality's headline measure.
 *
 * @param hand the moving hand
 * @param block {@code baseline} or {@code after-N}
 * @param quality what is judged
 * @param measure the headline measure
 * @param n trials that have the figure
 * @param mean over them; null without one
 * @param sd divisor n−1; null under two
 * @param best the best single trial
 * @param typicalError the hand's SD within blocks, pooled over all blocks
 * @param mean95 95 % t-interval of the mean, as far as the measure reaches; null under two
 * @param readings whose marks those trials' figures come from, each named once
 */
public record HandScore(
    Hand hand,
    String block,
    Quality quality,
    Measure measure,
    int n,
    @Nullable Double mean,
    @Nullable Double sd,
    @Nullable Double best,
    @Nullable Double typicalError,
    @Nullable Range mean95,
    List<String> readings) {

  public HandScore {
    readings = List.copyOf(readings);
  }
}
