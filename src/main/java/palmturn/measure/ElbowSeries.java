package palmturn.measure;

/**
 * How far the elbow was from its place, frame by frame, in the picture plane.
 *
 * @param timesS media seconds, rising
 * @param cm distance at each, 0 or more
 */
public record ElbowSeries(double[] timesS, double[] cm) {
  public ElbowSeries {
    if (timesS.length != cm.length) {
      throw new IllegalArgumentException(
          "%d times but %d distances".formatted(timesS.length, cm.length));
    }
  }
}
