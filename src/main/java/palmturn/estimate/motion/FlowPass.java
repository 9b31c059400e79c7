package palmturn.estimate.motion;

import static org.bytedeco.opencv.global.opencv_core.BORDER_CONSTANT;
import static org.bytedeco.opencv.global.opencv_core.BORDER_REPLICATE;
import static org.bytedeco.opencv.global.opencv_imgproc.COLOR_BGRA2BGR;
import static org.bytedeco.opencv.global.opencv_imgproc.COLOR_BGRA2GRAY;
import static org.bytedeco.opencv.global.opencv_imgproc.INTER_AREA;
import static org.bytedeco.opencv.global.opencv_imgproc.INTER_LINEAR;
import static org.bytedeco.opencv.global.opencv_imgproc.WARP_INVERSE_MAP;
import static org.bytedeco.opencv.global.opencv_imgproc.cvtColor;
import static org.bytedeco.opencv.global.opencv_imgproc.resize;
import static org.bytedeco.opencv.global.opencv_imgproc.warpAffine;

import java.util.ArrayList;
import java.util.List;
import org.bytedeco.javacpp.indexer.UByteIndexer;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Scalar;
import org.bytedeco.opencv.opencv_core.Size;
import org.bytedeco.opencv.opencv_video.DISOpticalFlow;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.Picture;
import palmturn.clip.Progress;
import palmturn.clip.StoppedException;
import palmturn.estimate.image.Footage;
import palmturn.estimate.image.FrameFeed;
import palmturn.estimate.image.Mats;
import palmturn.estimate.image.Similarity;
import palmturn.numbers.Robust;

/**
 * Decodes a stretch once and measures its motion: each frame is registered to the one before,
 * matched in brightness, and compared by dense inverse search flow (Kroeger et al. 2016).
 */
public final class FlowPass implements AutoCloseable {
  /** Longer side of the pictures that are compared. */
  static final int LONG_SIDE_PX = 320;

  /** Size of the cells in which brightness is compared. */
  private static final int GAIN_CELL_PX = 32;

  /** Least difference of brightness that is corrected. */
  private static final double GAIN_WORTH = 0.004;

  /**
   * Share of the picture at each edge without flow: what came in there has nothing to be compared
   * with.
   */
  private static final double MARGIN = 0.03;

  private final int width;
  private final int height;
  private final Size full;
  private final Size half;
  private final Stabiliser stabiliser;
  private final DISOpticalFlow flow = DISOpticalFlow.create(DISOpticalFlow.PRESET_FAST);

  private final List<Double> timesS = new ArrayList<>();
  private final List<float[]> right = new ArrayList<>();
  private final List<float[]> down = new ArrayList<>();
  private final List<byte[]> pictures = new ArrayList<>();
  private final List<Similarity> camera = new ArrayList<>();

  private @Nullable Mat before;
  private Similarity place = Similarity.IDENTITY;

  private FlowPass(Picture first) {
    width = first.width();
    height = first.height();
    full = new Size(width, height);
    half = new Size(width / 2, height / 2);
    stabiliser = new Stabiliser(width, height);
  }

  /**
   * Measures a stretch.
   *
   * @param from first frame's place in the frame table
   * @param to place after the last frame
   * @return null if not even one frame can be decoded
   * @throws ClipException if the clip can't be opened any more
   */
  public static @Nullable Footage of(
      ClipFile clip, int from, int to, double fullLongSidePx, Progress watch) throws ClipException {
    try (FrameFeed feed = new FrameFeed(clip, from, to, LONG_SIDE_PX)) {
      Picture picture = feed.next();
      if (picture == null) {
        return null;
      }
      double pxPerCell = 2 * fullLongSidePx / Math.max(picture.width(), picture.height());
      try (FlowPass pass = new FlowPass(picture)) {
        for (; picture != null; picture = feed.next()) {
          if (watch.stopped()) {
            throw new StoppedException();
          }
          watch.at((picture.index() - from) / (double) (to - from), "following the motion");
          pass.add(picture);
        }
        return pass.footage(pxPerCell, feed.unreadable());
      }
    }
  }

  private Footage footage(double pxPerCell, int unreadable) {
    return new Footage(
        half.width(),
        half.height(),
        pxPerCell,
        timesS.stream().mapToDouble(Double::doubleValue).toArray(),
        right,
        down,
        pictures,
        camera,
        unreadable);
  }

  private void add(Picture picture) {
    try (Mat colour = Mats.bgra(picture)) {
      Mat now = new Mat();
      cvtColor(colour, now, COLOR_BGRA2GRAY);
      if (before == null) {
        right.add(new float[half.area()]);
        down.add(new float[half.area()]);
      } else {
        Similarity step = stabiliser.between(before, now);
        motion(before, now, step);
        place = step.after(place);
        before.close();
      }
      before = now;
      timesS.add(picture.timeS());
      camera.add(place.scaled(0.5));
      keep(colour);
    }
  }

  /** Stores a small picture, registered to the first frame. */
  private void keep(Mat colour) {
    try (Mat small = new Mat();
        Mat laid = new Mat();
        Mat bgr = new Mat();
        Mat matrix = Mats.matrix(place.scaled(0.5))) {
      resize(colour, small, half, 0, 0, INTER_AREA);
      cvtColor(small, bgr, COLOR_BGRA2BGR);
      lay(bgr, laid, matrix, half, BORDER_REPLICATE);
      pictures.add(Mats.bytes(laid));
    }
  }

  private static void lay(Mat from, Mat to, Mat matrix, Size size, int border) {
    try (Scalar nothing = new Scalar(0)) {
      warpAffine(from, to, matrix, size, INTER_LINEAR | WARP_INVERSE_MAP, border, nothing);
    }
  }

  private void motion(Mat first, Mat second, Similarity step) {
    try (Mat matrix = Mats.matrix(step);
        Mat laid = new Mat();
        Mat field = new Mat();
        Mat small = new Mat();
        Mat home = new Mat();
        Mat homeMatrix = Mats.matrix(place.scaled(0.5))) {
      lay(second, laid, matrix, full, BORDER_REPLICATE);
      even(first, laid);
      flow.calc(first, laid, field);
      resize(field, small, half, 0, 0, INTER_AREA);
      lay(small, home, homeMatrix, half, BORDER_CONSTANT);
      split(Mats.floats(home));
    }
  }

  /** Turns vectors as the first frame sees them, in cells, and drops those at the margin. */
  private void split(float[] field) {
    int w = half.width();
    int h = half.height();
    float[] u = new float[w * h];
    float[] v = new float[w * h];
    double size = place.a() * place.a() + place.b() * place.b();
    float a = (float) (0.5 * place.a() / size);
    float b = (float) (0.5 * place.b() / size);
    int mx = (int) Math.ceil(MARGIN * w);
    int my = (int) Math.ceil(MARGIN * h);
    for (int y = my; y < h - my; y++) {
      for (int x = mx; x < w - mx; x++) {
        int i = y * w + x;
        u[i] = a * field[2 * i] + b * field[2 * i + 1];
        v[i] = a * field[2 * i + 1] - b * field[2 * i];
      }
    }
    right.add(u);
    down.add(v);
  }

  /** Matches the second frame's brightness to the first's: lamps flicker and cameras adjust. */
  private void even(Mat first, Mat second) {
    try (Size cells =
            new Size(Math.max(1, width / GAIN_CELL_PX), Math.max(1, height / GAIN_CELL_PX));
        Mat a = new Mat();
        Mat b = new Mat()) {
      resize(first, a, cells, 0, 0, INTER_AREA);
      resize(second, b, cells, 0, 0, INTER_AREA);
      double[] ratios = new double[cells.area()];
      try (UByteIndexer p = a.createIndexer();
          UByteIndexer q = b.createIndexer()) {
        for (int i = 0; i < ratios.length; i++) {
          int y = i / cells.width();
          int x = i % cells.width();
          ratios[i] = (p.get(y, x) + 4.0) / (q.get(y, x) + 4.0);
        }
      }
      double gain = Robust.median(ratios);
      if (Math.abs(gain - 1) > GAIN_WORTH) {
        second.convertTo(second, -1, gain, 0);
      }
    }
  }

  @Override
  public void close() {
    if (before != null) {
      before.close();
    }
    flow.close();
    stabiliser.close();
    full.close();
    half.close();
  }
}
