package palmturn.measure;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate;

/**
 * The elbow's displacement frame by frame, in the picture plane.
 *
 * @param timesS media seconds, rising
 * @param cm distance at each, 0 or more
 */
public record ElbowSeries(double[] timesS, double[] cm) {
  public ElbowSeries {
    if (timesS.length != cm.length) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "%d times but %d distances", timesS.length, cm.length));
    }
  }

  /** Returns what an estimate followed, null where it followed no elbow or has no scale. */
  static @Nullable ElbowSeries of(@Nullable Estimate estimate) {
    ElbowPath path = estimate == null ? null : estimate.elbow();
    Double cmPerPixel = path == null ? null : path.cmPerPixel();
    if (path == null || cmPerPixel == null || path.samples().isEmpty()) {
      return null;
    }
    return new ElbowSeries(
        path.samples().stream().mapToDouble(ElbowPath.Sample::timeS).toArray(),
        path.samples().stream().mapToDouble(each -> each.distancePx() * cmPerPixel).toArray());
  }
}
