package palmturn.estimate.motion;

import static org.bytedeco.opencv.global.opencv_imgproc.GaussianBlur;

import java.util.ArrayList;
import java.util.List;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Size;
import palmturn.estimate.image.Footage;
import palmturn.estimate.image.Mats;
import palmturn.numbers.Robust;

/**
 * The hand's motion between moments that may be contacts, and its look at them. At contacts its
 * poses alternate; at the tops of its path they repeat.
 *
 * @param timesS the moments
 * @param turns for each gap between neighbours, how each cell moved: right, then down, in cells
 * @param looks for each moment, the small picture of the blob: blue, green, red of every cell
 */
@SuppressWarnings("ArrayRecordComponent")
public // Made once and only read.
record Poses(double[] timesS, List<float[]> turns, List<float[]> looks) {
  /** Standard deviation, cells: levels noise but not the look of a hand. */
  private static final double BLUR = 1.5;

  /** Of 255 steps of light: less is no change at all. */
  static final double LEAST_CHANGE = 0.01;

  static Poses at(BlobMotion motion, double[] timesS) {
    List<float[]> turns = new ArrayList<>();
    List<float[]> looks = new ArrayList<>();
    for (int j = 0; j < timesS.length; j++) {
      looks.add(look(motion, timesS[j]));
      if (j > 0) {
        turns.add(motion.between(timesS[j - 1], timesS[j]));
      }
    }
    return new Poses(timesS, turns, looks);
  }

  private static float[] look(BlobMotion motion, double timeS) {
    Footage footage = motion.footage();
    byte[] picture = footage.pictures().get(motion.nearestFrame(timeS));
    int[] cells = motion.blob().cells();
    float[] look = new float[3 * cells.length];
    try (Mat mat = Mats.bgr(picture, footage.width(), footage.height());
        Size automatic = new Size(0, 0)) {
      GaussianBlur(mat, mat, automatic, BLUR);
      byte[] smooth = Mats.bytes(mat);
      for (int i = 0; i < cells.length; i++) {
        for (int c = 0; c < 3; c++) {
          look[3 * i + c] = smooth[3 * cells[i] + c] & 0xff;
        }
      }
    }
    return look;
  }

  /** Returns the seconds between neighbours. */
  public double[] intervals() {
    double[] intervals = new double[timesS.length - 1];
    for (int i = 0; i < intervals.length; i++) {
      intervals[i] = timesS[i + 1] - timesS[i];
    }
    return intervals;
  }

  /** Returns the anticorrelation of neighbouring gaps: 1 if each turn reverses the one before. */
  public double alternation() {
    double undone = 0;
    double repeated = 0;
    for (int j = 1; j < turns.size(); j++) {
      float[] a = turns.get(j - 1);
      float[] b = turns.get(j);
      for (int i = 0; i < a.length; i++) {
        undone += (b[i] - a[i]) * (b[i] - a[i]);
        repeated += (b[i] + a[i]) * (b[i] + a[i]);
      }
    }
    return undone / (undone + repeated);
  }

  /** Returns the mean size of the cells' motion in a gap, the root of the summed squares. */
  double size() {
    return turns.stream().mapToDouble(Poses::length).average().orElse(0);
  }

  /** Returns how much the look differs between neighbours, the median. */
  double lookChange() {
    return lookChange(1);
  }

  /** Returns how much more it differs between neighbours than between every second. */
  public double lookAlternation() {
    return (lookChange(1) + LEAST_CHANGE) / (lookChange(2) + LEAST_CHANGE);
  }

  private double lookChange(int apart) {
    double[] off = new double[looks.size() - apart];
    for (int j = 0; j < off.length; j++) {
      float[] a = looks.get(j);
      float[] b = looks.get(j + apart);
      double sum = 0;
      for (int i = 0; i < a.length; i++) {
        sum += Math.abs(b[i] - a[i]);
      }
      off[j] = sum / a.length;
    }
    return Robust.median(off);
  }

  static double length(float[] vector) {
    double sum = 0;
    for (float value : vector) {
      sum += value * value;
    }
    return Math.sqrt(sum);
  }
}
