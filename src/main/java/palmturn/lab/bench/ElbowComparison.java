package palmturn.lab.bench;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Stats;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate;

/**
 * The elbow's distance from its place, beside the true one in the picture plane; both are measured
 * from the median place in the 0.3 s before the first slap.
 *
 * @param frames where it was followed
 * @param within of these, how many are right to {@link #GOAL_CM}
 * @param p95Cm 95th percentile of the absolute error; null without a frame
 */
public record ElbowComparison(int frames, int within, @Nullable Double p95Cm) {
  /** The error that the estimate is to keep to. */
  static final double GOAL_CM = 0.3;

  /** The hand still rests then, as the estimate takes it too. */
  private static final double BEFORE_S = 0.3;

  /** Returns null where either has no elbow, or the estimate has no scale. */
  static @Nullable ElbowComparison of(ClipTruth truth, Estimate estimate) {
    ClipTruth.ElbowDisplacement displacement = truth.elbow();
    ElbowPath path = estimate.elbow();
    if (displacement == null || path == null || path.cmPerPixel() == null) {
      return null;
    }
    double[] trueCm = distances(displacement, firstS(truth, displacement));
    double[] errorsCm = new double[path.samples().size()];
    for (int i = 0; i < errorsCm.length; i++) {
      ElbowPath.Sample sample = path.samples().get(i);
      double cm = sample.distancePx() * path.cmPerPixel();
      errorsCm[i] = Math.abs(cm - at(displacement.timesS(), trueCm, sample.timeS()));
    }
    int within = (int) Arrays.stream(errorsCm).filter(error -> error <= GOAL_CM).count();
    return new ElbowComparison(errorsCm.length, within, Stats.percentile(errorsCm, 95));
  }

  private static double firstS(ClipTruth truth, ClipTruth.ElbowDisplacement displacement) {
    return truth.contacts().isEmpty()
        ? displacement.timesS()[0] + BEFORE_S
        : truth.contacts().get(0).timeS();
  }

  private static double[] distances(ClipTruth.ElbowDisplacement displacement, double firstS) {
    double rightCm = place(displacement.timesS(), displacement.rightCm(), firstS);
    double upCm = place(displacement.timesS(), displacement.upCm(), firstS);
    double[] distances = new double[displacement.timesS().length];
    for (int i = 0; i < distances.length; i++) {
      distances[i] = Math.hypot(displacement.rightCm()[i] - rightCm, displacement.upCm()[i] - upCm);
    }
    return distances;
  }

  private static double place(double[] timesS, double[] values, double firstS) {
    double[] before = new double[values.length];
    int n = 0;
    for (int i = 0; i < values.length; i++) {
      if (timesS[i] >= firstS - BEFORE_S && timesS[i] < firstS) {
        before[n++] = values[i];
      }
    }
    Double median = Stats.median(Arrays.copyOf(before, n));
    return median == null ? values[0] : median;
  }

  /** Straight between samples, which lie closer than the elbow can move. */
  private static double at(double[] timesS, double[] values, double timeS) {
    int found = Arrays.binarySearch(timesS, timeS);
    int after = found >= 0 ? found : -found - 1;
    if (after == 0 || after >= timesS.length) {
      return values[Math.min(after, timesS.length - 1)];
    }
    double share = (timeS - timesS[after - 1]) / (timesS[after] - timesS[after - 1]);
    return values[after - 1] + share * (values[after] - values[after - 1]);
  }
}
