package palmturn.lab.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameReader;
import palmturn.clip.Progress;
import palmturn.estimate.request.Hints;
import palmturn.estimate.request.KnownSide;
import palmturn.json.JsonException;
import palmturn.trial.ClipFacts;
import palmturn.trial.Estimate;
import palmturn.trial.KnownLength;
import palmturn.trial.Mirrored;
import palmturn.trial.Point;
import palmturn.trial.UserError;
import palmturn.work.estimate.Estimating;

/** Runs the estimate on clips with a truth file beside them and says how right it is. */
public final class Bench {
  private static final String TRUTH = ".truth.json";
  private static final String CLIP = ".mp4";

  /** A size too small to cost time beyond decoding. */
  private static final int TINY_PX = 32;

  private final Estimating estimating;

  /** Starts with what makes the estimates. */
  public Bench(Estimating estimating) {
    this.estimating = estimating;
  }

  /**
   * Measures every clip of some folders that has its truth beside it. A clip that can't be measured
   * is listed and does not stop the others.
   *
   * @throws UserError if a folder can't be read, or there is no such clip
   */
  public BenchResult run(List<Path> folders, Progress progress) throws UserError {
    List<Path> truths = truths(folders);
    List<String> failed = new ArrayList<>();
    warmUp(truths.get(0));
    List<ClipMeasurement> measured = measureEach(truths, this::measure, failed, progress);
    return new BenchResult(EstimateFigures.of(measured), measured, failed);
  }

  /**
   * Measures what the shape of the hands adds, on the same clips: sides with nothing named, zones,
   * bent wrists; beside it the same without shape, the side of one slap named.
   *
   * @param installed whether the landmark networks are; without them the rest is measured
   * @throws UserError if a folder can't be read, or there is no such clip
   */
  public ShapeResult measureShapes(List<Path> folders, boolean installed, Progress progress)
      throws UserError {
    List<Path> truths = truths(folders);
    List<String> failed = new ArrayList<>();
    List<ShapeMeasurement> measured =
        measureEach(truths, truth -> measureShape(truth, installed), failed, progress);
    return new ShapeResult(installed, measured, failed);
  }

  private interface Measuring<T> {
    T of(Path truth) throws UserError;
  }

  private static <T> List<T> measureEach(
      List<Path> truths, Measuring<T> measuring, List<String> failed, Progress progress) {
    List<T> measured = new ArrayList<>();
    for (int i = 0; i < truths.size() && !progress.stopped(); i++) {
      Path truth = truths.get(i);
      progress.at((double) i / truths.size(), name(truth));
      try {
        measured.add(measuring.of(truth));
      } catch (UserError e) {
        failed.add(e.getMessage());
      } catch (RuntimeException e) {
        failed.add("%s: something went wrong inside (%s)".formatted(name(truth), e));
      }
    }
    return measured;
  }

  private static List<Path> truths(List<Path> folders) throws UserError {
    List<Path> truths = new ArrayList<>();
    for (Path folder : folders) {
      truths.addAll(truths(folder));
    }
    if (truths.isEmpty()) {
      throw new UserError(
          "no clip to measure: a folder must hold NAME.mp4 with NAME.truth.json beside it");
    }
    return truths;
  }

  private static List<Path> truths(Path folder) throws UserError {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(file -> file.getFileName().toString().endsWith(TRUTH))
          .filter(file -> Files.exists(clip(file)))
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new UserError(folder + " is not a folder that can be read", e);
    }
  }

  private static String name(Path truth) {
    String file = truth.getFileName().toString();
    return file.substring(0, file.length() - TRUTH.length());
  }

  private static Path clip(Path truth) {
    return truth.resolveSibling(name(truth) + CLIP);
  }

  /** The first run in a process also loads libraries and compiles, which no clip shall pay for. */
  private void warmUp(Path truth) {
    try {
      ClipTruth known = read(truth);
      estimating.clip(clipToEstimate(truth, known), soundAndMotion(known), Progress.NONE);
    } catch (UserError | RuntimeException e) {
      // The clip is measured again and then tells what is wrong with it.
      return;
    }
  }

  private ClipMeasurement measure(Path truthFile) throws UserError {
    ClipTruth truth = read(truthFile);
    Estimating.Clip wanted = clipToEstimate(truthFile, truth);
    try {
      ClipFile clip = ClipFile.open(wanted.path());
      ClipFacts facts = clip.facts();
      double fps = 1 / facts.medianFrameS();
      double toleranceS = toleranceS(fps);
      double decodeS = decode(clip);
      long start = System.nanoTime();
      Estimate all = estimating.clip(wanted, soundAndMotion(truth), Progress.NONE);
      double estimateS = seconds(start);
      Estimate picture = estimating.clip(wanted, pictureOnly(truth), Progress.NONE);
      return new ClipMeasurement(
          name(truthFile),
          facts.width(),
          facts.height(),
          fps,
          facts.durationS(),
          clip.sound() != null,
          trueRate(truth),
          EstimateComparison.of(truth, all, toleranceS),
          EstimateComparison.of(truth, picture, toleranceS),
          ElbowComparison.of(truth, all),
          estimateS,
          decodeS,
          all.warnings());
    } catch (ClipException e) {
      throw new UserError(String.valueOf(e.getMessage()), e);
    }
  }

  private ShapeMeasurement measureShape(Path truthFile, boolean installed) throws UserError {
    ClipTruth truth = read(truthFile);
    Estimating.Clip wanted = clipToEstimate(truthFile, truth);
    try {
      ClipFacts facts = ClipFile.open(wanted.path()).facts();
      double fps = 1 / facts.medianFrameS();
      Estimate without = estimating.clip(wanted, soundAndMotion(truth), Progress.NONE);
      long start = System.nanoTime();
      Estimate with =
          installed ? estimating.clip(wanted, Estimating.Options.ALL, Progress.NONE) : null;
      return new ShapeMeasurement(
          name(truthFile),
          fps,
          facts.durationS(),
          ShapeComparison.of(truth, without, toleranceS(fps)),
          with == null ? null : ShapeComparison.of(truth, with, toleranceS(fps)),
          with == null ? null : seconds(start),
          with == null ? List.of() : with.warnings());
    } catch (ClipException e) {
      throw new UserError(String.valueOf(e.getMessage()), e);
    }
  }

  private static double toleranceS(double fps) {
    return fps >= 50 ? 0.025 : 0.040;
  }

  private static ClipTruth read(Path file) throws UserError {
    try {
      return ClipTruth.read(Files.readString(file));
    } catch (IOException e) {
      throw new UserError(file + " can't be read", e);
    } catch (JsonException e) {
      throw new UserError(file.getFileName() + ": " + e.getMessage(), e);
    }
  }

  private static Estimating.Clip clipToEstimate(Path truthFile, ClipTruth truth) {
    return new Estimating.Clip(
        clip(truthFile),
        truth.hand(),
        truth.mirrored() ? Mirrored.TRUE : Mirrored.FALSE,
        null,
        null,
        null);
  }

  /** All but the shape, which is measured by itself. */
  private static Estimating.Options soundAndMotion(ClipTruth truth) {
    return new Estimating.Options(
        EnumSet.of(Estimate.Source.SOUND, Estimate.Source.MOTION), hints(truth), firstSide(truth));
  }

  private static Estimating.Options pictureOnly(ClipTruth truth) {
    return new Estimating.Options(EnumSet.of(Estimate.Source.MOTION), Hints.NONE, firstSide(truth));
  }

  /** The elbow's place in the first picture and the scale there, as a user would click them. */
  private static Hints hints(ClipTruth truth) {
    ClipTruth.ElbowDisplacement displacement = truth.elbow();
    if (displacement == null) {
      return Hints.NONE;
    }
    double x = displacement.xPx();
    double y = displacement.yPx();
    return new Hints(
        null,
        new Point(x, y),
        null,
        new KnownLength(new Point(x, y), new Point(x + 100, y), 100 * displacement.cmPerPixel()),
        null,
        null,
        null);
  }

  /** The first contact, which is the one that a reader would mark first. */
  private static @Nullable KnownSide firstSide(ClipTruth truth) {
    return truth.contacts().isEmpty()
        ? null
        : new KnownSide(truth.contacts().get(0).timeS(), truth.contacts().get(0).side());
  }

  private static @Nullable Double trueRate(ClipTruth truth) {
    List<ClipTruth.TrueContact> slaps =
        truth.contacts().stream().filter(contact -> !contact.isDouble()).toList();
    return slaps.size() < 2
        ? null
        : (slaps.size() - 1) / (slaps.get(slaps.size() - 1).timeS() - slaps.get(0).timeS());
  }

  private static double decode(ClipFile clip) throws ClipException {
    long start = System.nanoTime();
    try (FrameReader reader = clip.newReader(TINY_PX)) {
      for (int i = 0; i < clip.frames().size(); i++) {
        reader.read(i);
      }
    }
    return seconds(start);
  }

  private static double seconds(long start) {
    return (System.nanoTime() - start) / 1e9;
  }
}
