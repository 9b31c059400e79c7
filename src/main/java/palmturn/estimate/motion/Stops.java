package palmturn.estimate.motion;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import palmturn.numbers.Robust;

/**
 * The moment of each contact by the picture, to a fraction of a frame. A stroke can stop twice,
 * when the hand bounces and touches again: that shows only in the velocity before it is smoothed.
 *
 * @param pictureS the estimate of the first touch
 * @param strengths how far the velocity falls, as a share of what is usual in this clip
 */
@SuppressWarnings("ArrayRecordComponent")
public // Made once and only read.
record Stops(double[] pictureS, double[] strengths) {
  /** A longer press is a rest, at whose end the hand turns long after it touched. */
  private static final double LONGEST_PRESS_S = 0.025;

  /**
   * More scatter of the presses than this, or than this share of a frame, makes their median no
   * guide.
   */
  private static final double UNEQUAL_PRESS_S = 0.004;

  private static final double UNEQUAL_FRAMES = 0.3;

  /** A stroke reaches this share of the median interval to either side of its crossing. */
  private static final double STROKE = 0.6;

  /** The rebound is fastest within this time of the turning point. */
  private static final double SOON_S = 0.04;

  /**
   * Level between fastest approach and fastest rebound, as a share, at which the approach counts as
   * over.
   */
  private static final double ENDED = 0.25;

  /** A bounce must stand out of the rebound by this share of a usual stop. */
  private static final double BOUNCE = 0.15;

  /** Least interval of two touches that are distinct in the velocity. */
  private static final double BOUNCE_APART_S = 0.04;

  /** One stop, in samples of the velocity. */
  private record Stop(double turned, double ended, double strength, boolean bounced) {}

  static Stops of(Contacts contacts) {
    double[] v = contacts.approach().velocity().clone();
    for (int i = 0; i < v.length; i++) {
      v[i] *= contacts.sign();
    }
    BlobMotion motion = contacts.motion();
    double usual = Robust.median(contacts.crossings().strengths());
    List<Stop> all = new ArrayList<>();
    int[] peaks = peaks(v, contacts);
    for (int j = 0; j + 1 < peaks.length; j++) {
      all.addAll(stroke(v, peaks[j], peaks[j + 1], contacts, j, usual));
    }
    double[] presses =
        all.stream()
            .filter(stop -> !stop.bounced)
            .mapToDouble(stop -> (stop.turned - stop.ended) / motion.hz())
            .toArray();
    double press = Robust.median(presses);
    double unequal = Math.max(UNEQUAL_PRESS_S, UNEQUAL_FRAMES * motion.footage().medianFrameS());
    // Then the zero crossing is late by an unknown time, and the end of the approach is taken.
    boolean rests = press > LONGEST_PRESS_S || Robust.mad(presses) > unequal;
    return new Stops(
        all.stream()
            .mapToDouble(
                stop ->
                    rests || stop.bounced
                        ? motion.timeS(stop.ended)
                        : motion.timeS(stop.turned) - press)
            .toArray(),
        all.stream().mapToDouble(stop -> stop.strength / usual).toArray());
  }

  /** Returns where each approach is fastest, and where the stroke after the last one ends. */
  private static int[] peaks(double[] v, Contacts contacts) {
    double[] crossings = contacts.crossings().samples();
    int reach = (int) Math.round(STROKE * contacts.medianIntervalS() * contacts.motion().hz());
    int[] peaks = new int[crossings.length + 1];
    for (int j = 0; j < crossings.length; j++) {
      int from = Math.max(j == 0 ? 0 : (int) crossings[j - 1] + 1, (int) crossings[j] - reach);
      peaks[j] = top(v, from, (int) crossings[j]);
    }
    int last = (int) crossings[crossings.length - 1];
    peaks[crossings.length] = Math.min(v.length - 1, last + reach);
    for (int j = 0; j + 1 < crossings.length; j++) {
      // Before a pause the stroke is over long before the next approach.
      peaks[j + 1] = Math.max(peaks[j + 1], peaks[j] + 1);
    }
    return peaks;
  }

  private static List<Stop> stroke(
      double[] v, int peak, int nextPeak, Contacts contacts, int j, double usual) {
    double hz = contacts.motion().hz();
    int reach = (int) Math.round(2 * STROKE * contacts.medianIntervalS() * hz);
    int end = Math.min(nextPeak, peak + reach);
    int bump = bump(v, peak, end, BOUNCE * usual);
    double crossing = contacts.crossings().samples()[j];
    if (bump < 0) {
      double near = 1.2 * contacts.motion().footage().medianFrameS() * hz;
      double turned = middle(v, peak, zeroNear(v, crossing, near), SOON_S * hz);
      return List.of(stop(v, peak, end, turned, Double.POSITIVE_INFINITY));
    }
    int between = low(v, peak, bump);
    Stop first = stop(v, peak, between, zeroAfter(v, peak, between), Double.POSITIVE_INFINITY);
    Stop second = stop(v, bump, end, zeroAfter(v, bump, end), v[bump] - v[between]);
    return second.ended - first.ended < BOUNCE_APART_S * hz
        ? List.of(first)
        : List.of(first, second);
  }

  /**
   * Measures a stop.
   *
   * @param rise how far the velocity rose after a bounce, infinite for a stroke of its own
   */
  private static Stop stop(double[] v, int peak, int end, double turned, double rise) {
    int low = low(v, peak, Math.max(peak, end));
    double level = v[peak] - ENDED * Math.min(rise, v[peak] - v[low]);
    double ended = turned;
    for (int i = peak; i < low; i++) {
      if (v[i] >= level && v[i + 1] < level) {
        ended = i + (v[i] - level) / (v[i] - v[i + 1]);
        break;
      }
    }
    return new Stop(Math.max(turned, ended), ended, v[peak] - v[low], Double.isFinite(rise));
  }

  /**
   * Returns where the velocity is half-way between fastest approach and fastest rebound. At zero it
   * would come early after a slow approach, late where the hand stays.
   */
  private static double middle(double[] v, int peak, double zero, double soon) {
    int low = low(v, (int) zero, (int) Math.ceil(zero + soon));
    double level = (v[peak] + v[low]) / 4;
    for (int i = low; i > peak; i--) {
      if (v[i] < level && v[i - 1] >= level) {
        return i - 1 + (v[i - 1] - level) / (v[i - 1] - v[i]);
      }
    }
    return zero;
  }

  /** Returns the place of the most prominent rise between two peaks, −1 if none stands out. */
  private static int bump(double[] v, int from, int to, double least) {
    int best = -1;
    double most = least;
    for (int k = from + 2; k < to - 1; k++) {
      if (v[k] >= v[k - 1] && v[k] > v[k + 1]) {
        double prominence = v[k] - Math.max(v[low(v, from, k)], v[low(v, k, to)]);
        if (prominence >= most) {
          best = k;
          most = prominence;
        }
      }
    }
    return best;
  }

  private static int top(double[] v, int from, int to) {
    int top = Math.min(from, v.length - 1);
    for (int i = from; i <= Math.min(to, v.length - 1); i++) {
      if (v[i] > v[top]) {
        top = i;
      }
    }
    return top;
  }

  private static int low(double[] v, int from, int to) {
    int low = from;
    for (int i = from; i <= Math.min(to, v.length - 1); i++) {
      if (v[i] < v[low]) {
        low = i;
      }
    }
    return low;
  }

  /** Returns the first falling zero crossing in a stretch, its end if there is none. */
  private static double zeroAfter(double[] v, int from, int to) {
    for (int i = from; i < to; i++) {
      if (v[i] > 0 && v[i + 1] <= 0) {
        return i + v[i] / (v[i] - v[i + 1]);
      }
    }
    return to;
  }

  /** Returns the falling zero crossing nearest to a place, the place itself if there is none. */
  private static double zeroNear(double[] v, double place, double near) {
    int from = Math.max(0, (int) Math.floor(place - near) - 1);
    int to = Math.min(v.length - 2, (int) Math.ceil(place + near) + 1);
    double[] crossings = new double[Math.max(0, to - from + 1)];
    int n = 0;
    for (int i = from; i <= to; i++) {
      if (v[i] > 0 && v[i + 1] <= 0) {
        crossings[n++] = i + v[i] / (v[i] - v[i + 1]);
      }
    }
    return Arrays.stream(crossings, 0, n)
        .filter(at -> Math.abs(at - place) <= near)
        .boxed()
        .min((a, b) -> Double.compare(Math.abs(a - place), Math.abs(b - place)))
        .orElse(place);
  }
}
