package palmturn.estimate.motion;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.LombScargle;
import palmturn.numbers.Pchip;
import palmturn.numbers.Robust;
import palmturn.numbers.Signals;

/**
 * The hand's turn over time, with its frequency by two methods that need no count, as cross-checks.
 *
 * @param timesS evenly spaced, seconds
 * @param values about +1 at contacts of one side and −1 at those of the other
 * @param spectrumHz strongest period of the Lomb-Scargle periodogram of the turn's velocity
 * @param autocorrelationHz the lag at which the turn's velocity repeats itself best; null where it
 *     does not
 */
@SuppressWarnings("ArrayRecordComponent")
public // Made once and only read.
record TurnCurve(
    double[] timesS, double[] values, double spectrumHz, @Nullable Double autocorrelationHz) {
  /** Shown before the first and after the last contact. */
  private static final double AROUND_S = 0.4;

  /** Limit at which the curve is clipped: 1 is a usual turn. */
  private static final double MOST = 1.6;

  /** Turns there and back a second that are tried: half the slap rates. */
  private static final double LOWEST_HZ = 0.5;

  private static final double HIGHEST_HZ = 6;

  /** Step of the search: 0.4 % at two and a half turns a second. */
  private static final double STEP_HZ = 0.01;

  /** Less autocorrelation than this is no period. */
  private static final double REPEATS = 0.2;

  /** Of several lags that fit about as well, the shortest is the period. */
  private static final double AS_GOOD = 0.85;

  public static TurnCurve of(Motion found) {
    BlobMotion motion = found.contacts().motion();
    double[] velocity = velocity(found);
    double[] position = new double[velocity.length];
    for (int i = 1; i < position.length; i++) {
      position[i] = position[i - 1] + velocity[i - 1] / motion.hz();
    }
    double[] contacts = found.stops().pictureS();
    int from = sample(motion, contacts[0] - AROUND_S);
    int to = sample(motion, contacts[contacts.length - 1] + AROUND_S) + 1;
    double[] times = new double[to - from];
    double[] values = new double[to - from];
    Levelling levelling = Levelling.of(found, position);
    for (int i = from; i < to; i++) {
      times[i - from] = motion.timeS(i);
      double value = levelling.of(motion.timeS(i), position[i]);
      values[i - from] = Math.max(-MOST, Math.min(MOST, value));
    }
    double[] active =
        Arrays.copyOfRange(
            velocity,
            sample(motion, contacts[0]),
            sample(motion, contacts[contacts.length - 1]) + 1);
    return new TurnCurve(
        times, values, spectrumHz(active, motion.hz()), repeatHz(active, motion.hz()));
  }

  private static int sample(BlobMotion motion, double timeS) {
    int at = (int) Math.round((timeS - motion.timeS(0)) * motion.hz());
    return Math.max(0, Math.min(motion.samples() - 1, at));
  }

  /** Returns the turn's velocity, in a unit of its own: the cells' motion mixed by the turn. */
  private static double[] velocity(Motion found) {
    BlobMotion motion = found.contacts().motion();
    double[] shares = Approach.shares(motion.blob());
    int n = shares.length;
    double[] right = new double[n];
    double[] down = new double[n];
    double allRight = 0;
    double allDown = 0;
    for (int i = 0; i < n; i++) {
      right[i] = found.turns().weights()[i] * Math.sqrt(shares[i]);
      down[i] = found.turns().weights()[n + i] * Math.sqrt(shares[i]);
      allRight += right[i];
      allDown += down[i];
    }
    for (int i = 0; i < n; i++) {
      right[i] -= allRight * shares[i];
      down[i] -= allDown * shares[i];
    }
    return motion.velocity(right, down);
  }

  private static double spectrumHz(double[] velocity, double hz) {
    double[] grid = new double[(int) Math.round((HIGHEST_HZ - LOWEST_HZ) / STEP_HZ) + 1];
    Arrays.setAll(grid, i -> LOWEST_HZ + i * STEP_HZ);
    double[] times = new double[velocity.length];
    Arrays.setAll(times, i -> i / hz);
    double[] power = LombScargle.power(times, velocity, grid);
    int best = 0;
    for (int i = 1; i < power.length; i++) {
      best = power[i] > power[best] ? i : best;
    }
    return grid[best];
  }

  private static @Nullable Double repeatHz(double[] velocity, double hz) {
    int shortest = Math.max(1, (int) (hz / HIGHEST_HZ));
    int longest = Math.min((int) (hz / LOWEST_HZ), velocity.length / 2);
    double[] match = new double[Math.max(0, longest + 1)];
    double best = REPEATS;
    for (int lag = shortest; lag <= longest; lag++) {
      match[lag] = Signals.autocorrelation(velocity, lag);
      best = Math.max(best, match[lag]);
    }
    for (int lag = shortest + 1; lag < longest; lag++) {
      if (match[lag] >= AS_GOOD * best
          && match[lag] >= match[lag - 1]
          && match[lag] > match[lag + 1]) {
        return hz / lag;
      }
    }
    return null;
  }

  /**
   * A correction of integrated motion's drift: the middle between neighbouring contacts is drawn to
   * zero.
   */
  private record Levelling(@Nullable Pchip middle, double unit) {

    static Levelling of(Motion found, double[] position) {
      BlobMotion motion = found.contacts().motion();
      double[] contacts = found.stops().pictureS();
      double[] at = Arrays.stream(contacts).map(t -> position[sample(motion, t)]).toArray();
      double[] times = new double[contacts.length - 1];
      double[] middles = new double[times.length];
      double[] halves = new double[times.length];
      double sign = 0;
      int n = 0;
      for (int j = 0; j < times.length; j++) {
        if (!found.turns().noTurn()[j]) {
          times[n] = (contacts[j] + contacts[j + 1]) / 2;
          middles[n] = (at[j] + at[j + 1]) / 2;
          halves[n] = Math.abs(at[j + 1] - at[j]) / 2;
          sign += (at[j + 1] - at[j]) * found.turns().poses()[j + 1];
          n++;
        }
      }
      if (n < 2) {
        return new Levelling(null, 1);
      }
      double unit = Math.max(Robust.median(Arrays.copyOf(halves, n)), 1e-12);
      return new Levelling(
          Pchip.of(Arrays.copyOf(times, n), Arrays.copyOf(middles, n)), sign < 0 ? -unit : unit);
    }

    double of(double timeS, double position) {
      return middle == null ? 0 : (position - middle.at(timeS)) / unit;
    }
  }
}
