package palmturn.estimate.elbow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import palmturn.estimate.hands.ElbowAlong;
import palmturn.estimate.hands.ElbowCandidates;
import palmturn.numbers.Robust;
import palmturn.trial.ElbowPath;

/**
 * The elbow's positions by the body's landmarks while its patch was lost. The landmarks of each
 * input square are compared with the tracked path: their median offset is subtracted, and the
 * squares with the least remaining scatter are used.
 *
 * @param sightings the positions, in order
 * @param comparedS the moments at which they were compared with the path, media seconds
 * @param sdPx standard deviation of each coordinate, pixels
 */
record ElbowByBody(List<Sighting> sightings, List<Double> comparedS, double sdPx) {
  /** Least visibility: below it the network doubts that the landmark is in view. */
  private static final double LEAST_VISIBILITY = 0.8;

  /** Fewest looks compared with the path, and fewest of them that see the elbow in a square. */
  private static final int FEWEST = 4;

  /** Least share of the looks in which a square sees the elbow. */
  private static final double SEEN_SHARE = 0.5;

  /** Number of squares used: those with the least scatter. */
  private static final int BEST = 6;

  /** Largest scatter of a usable square, radii of the disc. */
  private static final double MOST_SCATTER_RADII = 1;

  /**
   * Largest median distance of a look's squares from their common position, radii of the disc: 2
   * cm.
   */
  private static final double AGREE_RADII = 0.48;

  /** Least standard deviation of the landmarks, radii of the disc: 2 cm. */
  private static final double LEAST_SD_RADII = 0.48;

  /**
   * Visibility quantile for an unoccluded elbow: a square whose visibility is lower than in four of
   * five looks at a visible elbow is left out.
   */
  private static final double VISIBLE_SHARE = 0.8;

  /** Least share of the squares that must remain; with fewer, the position is unknown. */
  private static final double LEFT_SHARE = 0.5;

  /**
   * The elbow's position at one moment.
   *
   * @param timeS media seconds
   * @param rightPx displacement from its place, to the right of the picture, pixels
   * @param downPx displacement from its place, down the picture, pixels
   */
  record Sighting(double timeS, double rightPx, double downPx) {}

  /** A square's median offset from the path, its remaining scatter and its least visibility. */
  private record CalibratedSquare(
      int square, double rightPx, double downPx, double scatterPx, double visibility) {}

  ElbowByBody {
    sightings = List.copyOf(sightings);
    comparedS = List.copyOf(comparedS);
  }

  /**
   * Calibrates looks against a path.
   *
   * @param looks by several squares each, some while the elbow was tracked and some while it was
   *     lost
   * @param path of the patch
   * @param realPerMediaS the looks' seconds in one of the path's
   * @param radiusPx of the tracked disc, full-size pixels: 4.2 cm
   * @return null where too few can be compared
   */
  static @Nullable ElbowByBody of(
      List<ElbowCandidates> looks, ElbowPath path, double realPerMediaS, double radiusPx) {
    List<ElbowCandidates> visible = new ArrayList<>();
    List<ElbowCandidates> lost = new ArrayList<>();
    for (ElbowCandidates look : looks) {
      boolean seen = ElbowAlong.at(path, look.timeS() / realPerMediaS) != null;
      (seen ? visible : lost).add(look);
    }
    if (visible.size() < FEWEST) {
      return null;
    }
    double[][] at =
        visible.stream()
            .map(look -> ElbowAlong.at(path, look.timeS() / realPerMediaS))
            .toArray(double[][]::new);
    List<CalibratedSquare> best =
        IntStream.range(0, visible.get(0).x().length)
            .mapToObj(square -> calibrate(square, visible, at))
            .filter(held -> held != null && held.scatterPx <= MOST_SCATTER_RADII * radiusPx)
            .sorted(Comparator.comparingDouble(CalibratedSquare::scatterPx))
            .limit(BEST)
            .toList();
    double squares = 0;
    int n = 0;
    for (int i = 0; i < visible.size(); i++) {
      double[] place = place(visible.get(i), best, radiusPx);
      if (place != null) {
        squares += Math.pow(place[0] - at[i][0], 2) + Math.pow(place[1] - at[i][1], 2);
        n++;
      }
    }
    if (n < FEWEST) {
      return null;
    }
    List<Sighting> all = new ArrayList<>();
    for (ElbowCandidates look : lost) {
      double[] place = place(look, best, radiusPx);
      if (place != null) {
        all.add(
            new Sighting(
                look.timeS() / realPerMediaS,
                place[0] - path.start().x(),
                place[1] - path.start().y()));
      }
    }
    return new ElbowByBody(
        all,
        visible.stream().map(look -> look.timeS() / realPerMediaS).toList(),
        Math.max(LEAST_SD_RADII * radiusPx, Math.sqrt(squares / (2.0 * (n - 1)))));
  }

  /** Returns these positions without those that fail a test. */
  ElbowByBody filter(Predicate<Sighting> holds) {
    return new ElbowByBody(sightings.stream().filter(holds).toList(), comparedS, sdPx);
  }

  private static @Nullable CalibratedSquare calibrate(
      int square, List<ElbowCandidates> visible, double[][] at) {
    int[] seen =
        IntStream.range(0, visible.size())
            .filter(i -> visible.get(i).visibility()[square] > LEAST_VISIBILITY)
            .toArray();
    if (seen.length < Math.max(FEWEST, SEEN_SHARE * visible.size())) {
      return null;
    }
    double[] right =
        Arrays.stream(seen).mapToDouble(i -> visible.get(i).x()[square] - at[i][0]).toArray();
    double[] down =
        Arrays.stream(seen).mapToDouble(i -> visible.get(i).y()[square] - at[i][1]).toArray();
    double offRight = Robust.median(right);
    double offDown = Robust.median(down);
    double squares = 0;
    for (int i = 0; i < seen.length; i++) {
      squares += Math.pow(right[i] - offRight, 2) + Math.pow(down[i] - offDown, 2);
    }
    double[] visibility = visible.stream().mapToDouble(look -> look.visibility()[square]).toArray();
    return new CalibratedSquare(
        square,
        offRight,
        offDown,
        Math.sqrt(squares / seen.length),
        Math.max(LEAST_VISIBILITY, Robust.quantile(visibility, 1 - VISIBLE_SHARE)));
  }

  /**
   * Returns the elbow's position by a look, x and y; null where too few squares see it or they
   * disagree.
   */
  private static double @Nullable [] place(
      ElbowCandidates look, List<CalibratedSquare> best, double radiusPx) {
    List<CalibratedSquare> seen =
        best.stream().filter(held -> look.visibility()[held.square] >= held.visibility).toList();
    if (seen.size() < Math.max(2, LEFT_SHARE * best.size())) {
      return null;
    }
    double[] x = seen.stream().mapToDouble(held -> look.x()[held.square] - held.rightPx).toArray();
    double[] y = seen.stream().mapToDouble(held -> look.y()[held.square] - held.downPx).toArray();
    double atX = Robust.median(x);
    double atY = Robust.median(y);
    double apart =
        Robust.median(
            IntStream.range(0, x.length)
                .mapToDouble(i -> Math.hypot(x[i] - atX, y[i] - atY))
                .toArray());
    return apart > AGREE_RADII * radiusPx ? null : new double[] {atX, atY};
  }
}
