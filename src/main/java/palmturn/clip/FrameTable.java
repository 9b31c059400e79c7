package palmturn.clip;

import java.util.Arrays;

/** The presentation time of every frame that is shown, in order. */
public final class FrameTable {
  /** Frame distances that differ by more than this share of the median make a rate variable. */
  private static final double VARIABLE_BY = 0.1;

  private final double[] timesS;
  private final double medianS;

  FrameTable(double[] timesS) {
    this.timesS = timesS.clone();
    double[] gaps = new double[Math.max(0, timesS.length - 1)];
    for (int i = 0; i < gaps.length; i++) {
      gaps[i] = timesS[i + 1] - timesS[i];
    }
    Arrays.sort(gaps);
    this.medianS = gaps.length == 0 ? 0 : (gaps[(gaps.length - 1) / 2] + gaps[gaps.length / 2]) / 2;
  }

  /** Returns how many frames are shown. */
  public int size() {
    return timesS.length;
  }

  /** Returns a frame's presentation time, seconds. */
  public double timeS(int index) {
    return timesS[index];
  }

  /** Returns all times, seconds. */
  public double[] timesS() {
    return timesS.clone();
  }

  /** Returns the last frame at or before a moment; the first one before all. */
  public int indexAt(double timeS) {
    int found = Arrays.binarySearch(timesS, timeS);
    return found >= 0 ? found : Math.max(0, -found - 2);
  }

  /** Returns the frame nearest to a moment. */
  public int nearest(double timeS) {
    int before = indexAt(timeS);
    int after = Math.min(before + 1, timesS.length - 1);
    return timesS[after] - timeS < timeS - timesS[before] ? after : before;
  }

  /** Returns the distance to the frame before, seconds; for the first frame the median distance. */
  public double resolutionS(int index) {
    return index == 0 ? medianS : timesS[index] - timesS[index - 1];
  }

  /**
   * Returns the distance between the two frames around a moment, seconds; outside all the median.
   */
  public double spacingAtS(double timeS) {
    int before = indexAt(timeS);
    return timeS < timesS[0] || before + 1 == timesS.length ? medianS : resolutionS(before + 1);
  }

  /** Returns the median distance between frames, seconds; 0 with a single frame. */
  public double medianS() {
    return medianS;
  }

  /** Returns whether any two neighbours are nearer or farther apart than a tenth off the median. */
  public boolean isVariable() {
    for (int i = 1; i < timesS.length; i++) {
      if (Math.abs(timesS[i] - timesS[i - 1] - medianS) > VARIABLE_BY * medianS) {
        return true;
      }
    }
    return false;
  }
}
