package palmturn.lab.elbow;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameReader;
import palmturn.clip.Picture;
import palmturn.film.ClipWriter;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate.Stretch;
import palmturn.trial.Point;

/**
 * A drawn clip whose elbow something covers for a while, up to the moment at which it is farthest
 * out.
 *
 * @param truth of the clip with the cover
 * @param fromS the first covered moment
 * @param toS the first moment after it
 */
public record CoveredElbow(ElbowTruth truth, double fromS, double toS) {
  /** Farther off than this a path is wrong, whatever else is known of the clip. */
  static final double WRONG_CM = 2;

  /** As long as an arm that swings past hides it. */
  private static final double COVERED_S = 0.6;

  /** Wide enough to hide the whole elbow as the band goes by. */
  private static final double BAND_CM = 12;

  /** Light that a deep indoor shadow leaves. */
  private static final double SHADOW_LIGHT = 0.35;

  /** A thing that covers it. */
  public enum Cover {
    /** A grey disc. */
    GREY(7, true),
    /** A dark square. */
    DARK(5.5, false),
    /** A disc of the arm's own colour. */
    SKIN(7, true),
    /** A piece of the picture's upper left corner. */
    ROOM(7, true),
    /** A grey band as high as the picture that goes through it. */
    PASSING(0, false),
    /** A shadow: the arm stays in view, but looks another. */
    SHADOW(7, true);

    private final double radiusCm;
    private final boolean round;

    Cover(double radiusCm, boolean round) {
      this.radiusCm = radiusCm;
      this.round = round;
    }
  }

  /** Writes the clip with a cover into a folder. */
  static CoveredElbow write(ElbowTruth truth, Cover cover, Path folder) throws Exception {
    return write(truth, cover, COVERED_S, folder);
  }

  /**
   * Writes it with a cover that stays for longer, and so until after the elbow was farthest out.
   *
   * @param coveredS how long
   */
  public static CoveredElbow write(ElbowTruth truth, Cover cover, double coveredS, Path folder)
      throws Exception {
    ClipFile clip = ClipFile.open(truth.clip());
    Path file = folder.resolve(cover + "-" + truth.clip().getFileName());
    double toS =
        Math.max(farthestS(truth) + (coveredS - COVERED_S) / 2, truth.firstSlapS() + coveredS);
    double fromS = toS - coveredS;
    Random noise = new Random(1);
    int width = clip.facts().width();
    int height = clip.facts().height();
    ClipWriter.Settings settings =
        new ClipWriter.Settings(width, height, 60, 4_000_000, 30, 0, 64_000);
    try (ClipWriter writer = ClipWriter.create(file, settings);
        FrameReader reader = clip.newReader()) {
      int[] first = reader.read(0).argb();
      for (int i = 0; i < clip.frames().size(); i++) {
        Picture picture = reader.read(i);
        int[] argb = picture.argb().clone();
        double timeS = clip.frames().timeS(i);
        if (timeS >= fromS && timeS < toS) {
          double share = (timeS - fromS) / coveredS;
          new Brush(truth, cover, first, width, height, noise)
              .paint(argb, share, (fromS + toS) / 2);
        }
        writer.picture(timeS, argb);
      }
      writer.finish();
    }
    ElbowTruth covered =
        new ElbowTruth(
            file,
            truth.hand(),
            truth.elbow(),
            truth.cmPerPixel(),
            truth.firstSlapS(),
            truth.hz(),
            truth.rightCm(),
            truth.upCm());
    return new CoveredElbow(covered, fromS, toS);
  }

  /** Returns when the elbow was farthest out. */
  static double farthestS(ElbowTruth truth) {
    int farthest = 0;
    for (int i = 0; i < truth.rightCm().length; i++) {
      if (displacementCm(truth, i) > displacementCm(truth, farthest)) {
        farthest = i;
      }
    }
    return farthest / truth.hz();
  }

  private static double displacementCm(ElbowTruth truth, int i) {
    return Math.hypot(truth.rightCm()[i], truth.upCm()[i]);
  }

  /** Paints the cover into a frame. */
  private record Brush(
      ElbowTruth truth, Cover cover, int[] first, int width, int height, Random noise) {
    void paint(int[] argb, double share, double middleS) {
      Point displacement = truth.displacementCm(middleS);
      double middleX = truth.elbow().x() + displacement.x() / truth.cmPerPixel();
      double middleY = truth.elbow().y() - displacement.y() / truth.cmPerPixel();
      double radius = cover.radiusCm / truth.cmPerPixel();
      double band = BAND_CM / truth.cmPerPixel();
      double bandX = share * (width + band) - band;
      for (int y = 0; y < height; y++) {
        for (int x = 0; x < width; x++) {
          double dx = x - middleX;
          double dy = y - middleY;
          boolean inside =
              cover == Cover.PASSING
                  ? x >= bandX && x < bandX + band
                  : cover.round
                      ? Math.hypot(dx, dy) < radius
                      : Math.max(Math.abs(dx), Math.abs(dy)) < radius;
          if (inside) {
            argb[y * width + x] = colour(argb[y * width + x], dx / radius, dy / radius, radius);
          }
        }
      }
    }

    private int colour(int argb, double u, double v, double radius) {
      return switch (cover) {
        case GREY -> gray(128);
        case DARK -> gray(30);
        case PASSING -> gray(95);
        case SKIN ->
            dimmed(
                first[(int) truth.elbow().y() * width + (int) truth.elbow().x()],
                1 - 0.25 * Math.hypot(u, v));
        case SHADOW -> dimmed(argb, SHADOW_LIGHT);
        case ROOM -> first[(int) ((1 + v) * radius) * width + (int) ((1 + u) * radius)];
      };
    }

    private int gray(int level) {
      int grainy = Math.max(0, Math.min(255, (int) (level + 3 * noise.nextGaussian())));
      return 0xff000000 | grainy << 16 | grainy << 8 | grainy;
    }

    private static int dimmed(int argb, double light) {
      int red = (int) (light * (argb >> 16 & 255));
      int green = (int) (light * (argb >> 8 & 255));
      int blue = (int) (light * (argb & 255));
      return 0xff000000 | red << 16 | green << 8 | blue;
    }
  }

  /** Returns how many frames of a path are wrong. */
  long countWrong(ElbowPath path) {
    double[] errors = ElbowErrors.errorsCm(path, truth);
    long wrong = 0;
    for (double error : errors) {
      wrong += error > WRONG_CM ? 1 : 0;
    }
    return wrong;
  }

  /** Returns whether a path says of a moment that the elbow was lost. */
  static boolean isLost(ElbowPath path, double timeS) {
    return path.gaps().stream().anyMatch(gap -> gap.startS() < timeS && gap.endS() > timeS);
  }

  /** Prints the wrong frames of some clips under each cover, each on a line. */
  public static void print(List<Path> files, PrintWriter out) throws Exception {
    Path folder = Files.createTempDirectory("covered");
    out.println("clip                                      frames  seen  wrong  lost, s");
    long[] sum = new long[3];
    for (Path file : files) {
      ElbowTruth truth = ElbowTruth.read(file);
      for (Cover cover : EnumSet.complementOf(EnumSet.of(Cover.SHADOW))) {
        CoveredElbow covered = write(truth, cover, folder);
        ElbowPath path = ElbowErrors.follow(covered.truth(), 0, 0).path();
        int frames = ClipFile.open(covered.truth().clip()).frames().size();
        int tracked = path == null ? 0 : path.samples().size();
        long wrong = path == null ? 0 : covered.countWrong(path);
        printLine(out, covered, frames, tracked, wrong, path == null ? List.of() : path.gaps());
        sum[0] += frames;
        sum[1] += tracked;
        sum[2] += wrong;
        Files.delete(covered.truth().clip());
      }
    }
    Files.delete(folder);
    out.printf(Locale.ROOT, "all: %d frames, %d tracked, %d wrong%n", sum[0], sum[1], sum[2]);
  }

  private static void printLine(
      PrintWriter out,
      CoveredElbow covered,
      int frames,
      int tracked,
      long wrong,
      List<Stretch> gaps) {
    out.printf(
        Locale.ROOT,
        "%-40.40s  %6d  %4d  %5d  covered %.2f-%.2f, lost %s%n",
        covered.truth().clip().getFileName(),
        frames,
        tracked,
        wrong,
        covered.fromS(),
        covered.toS(),
        gaps.stream()
            .map(gap -> String.format(Locale.ROOT, "%.2f-%.2f", gap.startS(), gap.endS()))
            .toList());
  }
}
