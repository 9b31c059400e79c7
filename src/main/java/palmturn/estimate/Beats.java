package palmturn.estimate;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Robust;
import palmturn.numbers.Stats;

/**
 * The figures of a series of contacts, in real time. The definitions are those of the measures;
 * doubles are left out of all of them.
 *
 * @param rateSlapsPerS pauses counted in
 * @param intervalCvPct by one source of times, pauses left out
 * @param timingFloorPct the CV that the marks' own scatter would give
 * @param bySound whether the intervals are those of the sound
 * @param turnHz turns there and back a second while the hand was active
 * @param pauses places of the contacts before which the hand paused
 */
record Beats(
    @Nullable Double rateSlapsPerS,
    @Nullable Double intervalCvPct,
    @Nullable Double timingFloorPct,
    boolean bySound,
    @Nullable Double turnHz,
    List<Integer> pauses) {
  /** A longer interval, in medians, is a pause: the definition of the measures. */
  private static final double PAUSE = 2.2;

  /**
   * Intervals with both ends heard from which the series is the sound's: the definition of the
   * measures.
   */
  private static final double HEARD_SHARE = 0.8;

  /**
   * A count of turns that differs by more from the median interval's rate holds a wrong turn; tried
   * out on drawn clips.
   */
  private static final double SLIP = 0.03;

  /**
   * One contact.
   *
   * @param timeS what the marks say
   * @param pictureS by the picture
   * @param pictureVariance of that time, s²
   * @param soundS by the sound, null where it was not heard
   * @param soundVariance of that time, s²
   * @param turned whether the hand is turned otherwise than at the slap before; false for the first
   * @param isDouble whether it is no slap of its own
   */
  record Contact(
      double timeS,
      double pictureS,
      double pictureVariance,
      @Nullable Double soundS,
      double soundVariance,
      boolean turned,
      boolean isDouble) {}

  static Beats of(List<Contact> contacts) {
    List<Contact> slaps = contacts.stream().filter(contact -> !contact.isDouble()).toList();
    int gaps = slaps.size() - 1;
    if (gaps < 1) {
      return new Beats(null, null, null, false, null, List.of());
    }
    double[] all = new double[gaps];
    int heard = 0;
    for (int i = 0; i < gaps; i++) {
      all[i] = slaps.get(i + 1).timeS() - slaps.get(i).timeS();
      heard += bothHeard(slaps, i) ? 1 : 0;
    }
    double longest = PAUSE * Robust.median(all);
    boolean bySound = heard >= HEARD_SHARE * gaps;
    List<Double> intervals = new ArrayList<>();
    List<Integer> pauses = new ArrayList<>();
    double variance = 0;
    double active = 0;
    int turns = 0;
    for (int i = 0; i < gaps; i++) {
      Contact from = slaps.get(i);
      Contact to = slaps.get(i + 1);
      if (all[i] > longest) {
        pauses.add(i + 1);
        continue;
      }
      active += all[i];
      turns += to.turned() ? 1 : 0;
      if (bySound && bothHeard(slaps, i)) {
        intervals.add(Objects.requireNonNull(to.soundS()) - Objects.requireNonNull(from.soundS()));
        variance += from.soundVariance() + to.soundVariance();
      } else if (!bySound) {
        intervals.add(to.pictureS() - from.pictureS());
        variance += from.pictureVariance() + to.pictureVariance();
      }
    }
    double[] used = intervals.stream().mapToDouble(Double::doubleValue).toArray();
    Double mean = Stats.mean(used);
    return new Beats(
        gaps / (slaps.get(gaps).timeS() - slaps.get(0).timeS()),
        Stats.cvPct(used),
        mean == null ? null : 100 * Math.sqrt(variance / used.length) / mean,
        bySound,
        turnHz(turns, active, used),
        pauses);
  }

  private static boolean bothHeard(List<Contact> slaps, int i) {
    return slaps.get(i).soundS() != null && slaps.get(i + 1).soundS() != null;
  }

  /** Counts turns; where a wrong turn would matter, the median interval has the last word. */
  private static @Nullable Double turnHz(int turns, double active, double[] intervals) {
    if (intervals.length == 0 || active <= 0) {
      return null;
    }
    double counted = turns / (2 * active);
    double typical = 1 / (2 * Robust.median(intervals));
    return turns == intervals.length || Math.abs(counted - typical) <= SLIP * typical
        ? counted
        : typical;
  }
}
