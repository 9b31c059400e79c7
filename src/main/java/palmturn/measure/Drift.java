package palmturn.measure;

import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Stats;

/**
 * Whether the elbow stayed where it was, over the window and in the picture plane; null where no
 * elbow was tracked.
 *
 * @param elbowMaxCm farthest from its place
 * @param elbowP95Cm 95th percentile
 * @param elbowOverLimitPct share of the time over the limit
 */
public record Drift(
    @Nullable Double elbowMaxCm, @Nullable Double elbowP95Cm, @Nullable Double elbowOverLimitPct) {

  static Drift of(Window window, @Nullable ElbowSeries elbow, double limitCm) {
    if (elbow == null || window.slaps().isEmpty()) {
      return new Drift(null, null, null);
    }
    double fromS = window.slaps().get(0).timeS();
    double toS = window.slaps().get(window.slaps().size() - 1).timeS();
    double[] timesS = elbow.timesS();
    int[] inside =
        IntStream.range(0, timesS.length)
            .filter(i -> fromS <= timesS[i] && timesS[i] <= toS)
            .toArray();
    double[] cm = IntStream.of(inside).mapToDouble(i -> elbow.cm()[i]).toArray();
    double overS = 0;
    double allS = 0;
    for (int k = 0; k + 1 < inside.length; k++) {
      // Each distance holds until the next, so that uneven frames weigh by how long they last.
      double holdsS = window.scale().realBetween(timesS[inside[k]], timesS[inside[k + 1]]);
      allS += holdsS;
      overS += cm[k] > limitCm ? holdsS : 0;
    }
    return new Drift(
        Stats.max(cm), Stats.percentile(cm, 95), allS <= 0 ? null : 100 * overS / allS);
  }
}
