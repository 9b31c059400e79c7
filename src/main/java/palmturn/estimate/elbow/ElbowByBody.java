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
 * Where the body's landmarks put the elbow while its patch was lost. Each square that they were
 * looked at in is held against the path where that is seen: what it is off by there is taken out,
 * and what it still scatters by tells how much it counts.
 *
 * @param looks what single looks tell of it, in order
 * @param comparedS the moments at which they were held against the path, media seconds
 * @param sdPx standard deviation of each of the two ways, pixels
 */
record ElbowByBody(List<Look> looks, List<Double> comparedS, double sdPx) {
  /** Under this the network itself doubts that the landmark is in view. */
  private static final double LEAST_VISIBILITY = 0.8;

  /** So many looks must be held against the path, and so many of them see the elbow in a square. */
  private static final int FEWEST = 4;

  /** Share of the looks in which a square must see the elbow to be compared. */
  private static final double SEEN_SHARE = 0.5;

  /** The squares that scatter least, by which the elbow's place is told. */
  private static final int BEST = 6;

  /** A square that scatters by more than the disc's radius tells nothing. */
  private static final double MOST_SCATTER_RADII = 1;

  /** Half of the squares of a look must agree to within this, radii of the disc: 2 cm. */
  private static final double AGREE_RADII = 0.48;

  /** What the landmarks are known to at the best, radii of the disc: 2 cm. */
  private static final double LEAST_SD_RADII = 0.48;

  /**
   * A covered elbow is less visible than it was: a square in which it is less so than in four of
   * five looks at an open one is left out.
   */
  private static final double OPEN_SHARE = 0.8;

  /** Nothing is told where more of the squares are left out. */
  private static final double LEFT_SHARE = 0.5;

  /**
   * Where a look puts the elbow.
   *
   * @param timeS media seconds
   * @param rightPx way from its place, to the right of the picture, pixels
   * @param downPx way from its place, down the picture, pixels
   */
  record Look(double timeS, double rightPx, double downPx) {}

  /** What one square is off by, and what it scatters by after that. */
  private record Held(
      int square, double rightPx, double downPx, double scatterPx, double visibility) {}

  ElbowByBody {
    looks = List.copyOf(looks);
    comparedS = List.copyOf(comparedS);
  }

  /**
   * Holds looks against a path.
   *
   * @param looks by several squares each, some while the elbow was seen and some while it was lost
   * @param path of the patch
   * @param realPerMediaS the looks' seconds in one of the path's
   * @param radiusPx of the disc that was followed, full-size pixels: 4.2 cm
   * @return null where they can't be held against it
   */
  static @Nullable ElbowByBody of(
      List<ElbowCandidates> looks, ElbowPath path, double realPerMediaS, double radiusPx) {
    List<ElbowCandidates> open = new ArrayList<>();
    List<ElbowCandidates> lost = new ArrayList<>();
    for (ElbowCandidates look : looks) {
      boolean seen = ElbowAlong.at(path, look.timeS() / realPerMediaS) != null;
      (seen ? open : lost).add(look);
    }
    if (open.size() < FEWEST) {
      return null;
    }
    double[][] at =
        open.stream()
            .map(look -> ElbowAlong.at(path, look.timeS() / realPerMediaS))
            .toArray(double[][]::new);
    List<Held> best =
        IntStream.range(0, open.get(0).x().length)
            .mapToObj(square -> held(square, open, at))
            .filter(held -> held != null && held.scatterPx <= MOST_SCATTER_RADII * radiusPx)
            .sorted(Comparator.comparingDouble(Held::scatterPx))
            .limit(BEST)
            .toList();
    double squares = 0;
    int n = 0;
    for (int i = 0; i < open.size(); i++) {
      double[] place = place(open.get(i), best, radiusPx);
      if (place != null) {
        squares += Math.pow(place[0] - at[i][0], 2) + Math.pow(place[1] - at[i][1], 2);
        n++;
      }
    }
    if (n < FEWEST) {
      return null;
    }
    List<Look> all = new ArrayList<>();
    for (ElbowCandidates look : lost) {
      double[] place = place(look, best, radiusPx);
      if (place != null) {
        all.add(
            new Look(
                look.timeS() / realPerMediaS,
                place[0] - path.start().x(),
                place[1] - path.start().y()));
      }
    }
    return new ElbowByBody(
        all,
        open.stream().map(look -> look.timeS() / realPerMediaS).toList(),
        Math.max(LEAST_SD_RADII * radiusPx, Math.sqrt(squares / (2.0 * (n - 1)))));
  }

  /** Returns this with those looks only that something holds of. */
  ElbowByBody where(Predicate<Look> holds) {
    return new ElbowByBody(looks.stream().filter(holds).toList(), comparedS, sdPx);
  }

  private static @Nullable Held held(int square, List<ElbowCandidates> open, double[][] at) {
    int[] seen =
        IntStream.range(0, open.size())
            .filter(i -> open.get(i).visibility()[square] > LEAST_VISIBILITY)
            .toArray();
    if (seen.length < Math.max(FEWEST, SEEN_SHARE * open.size())) {
      return null;
    }
    double[] right =
        Arrays.stream(seen).mapToDouble(i -> open.get(i).x()[square] - at[i][0]).toArray();
    double[] down =
        Arrays.stream(seen).mapToDouble(i -> open.get(i).y()[square] - at[i][1]).toArray();
    double offRight = Robust.median(right);
    double offDown = Robust.median(down);
    double squares = 0;
    for (int i = 0; i < seen.length; i++) {
      squares += Math.pow(right[i] - offRight, 2) + Math.pow(down[i] - offDown, 2);
    }
    double[] visibility = open.stream().mapToDouble(look -> look.visibility()[square]).toArray();
    return new Held(
        square,
        offRight,
        offDown,
        Math.sqrt(squares / seen.length),
        Math.max(LEAST_VISIBILITY, Robust.quantile(visibility, 1 - OPEN_SHARE)));
  }

  /** Returns what a look makes of the elbow's place, x and y; null where it is not seen well. */
  private static double @Nullable [] place(ElbowCandidates look, List<Held> best, double radiusPx) {
    List<Held> seen =
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
