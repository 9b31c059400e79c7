package palmturn.estimate.sound;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import palmturn.numbers.Stats;

/**
 * Slaps detected from the sound alone: clear onsets that follow each other like the slaps of a
 * trial. The sound can't tell their cause.
 *
 * @param slaps onsets of all such series, in order
 * @param warnings sentences for the reader
 */
public record SoundAlone(List<Onset> slaps, List<String> warnings) {
  public static final String UNCONFIRMED =
      "Found by sound alone, which can't tell a slap from talk, a metronome or a door: check each"
          + " mark against the picture.";
  static final String NO_SERIES =
      "The sound holds no series of short sounds that follow each other like slaps.";
  static final String MAYBE_METRONOME =
      "The sounds follow each other as evenly as a machine's: this may be a metronome.";

  /** A longer silence parts two series. */
  private static final double PART_S = 1.5;

  /** Fewer sounds show no beat. */
  private static final int FEWEST = 6;

  /** Median intervals of slaps: 10 to 1.25 a second. */
  private static final double SHORTEST_S = 0.1;

  private static final double LONGEST_S = 0.8;

  /** An interval is near the median within this share of it. */
  private static final double NEAR = 0.35;

  /** Share of intervals that must be near it. */
  private static final double NEAR_SHARE = 0.65;

  /** A longer interval, in medians, is a pause: the definition of the measures. */
  private static final double PAUSE = 2.2;

  /** A hand is never as even: Palmturn's choice. */
  private static final double MACHINE_CV_PCT = 1;

  public SoundAlone {
    slaps = List.copyOf(slaps);
    warnings = List.copyOf(warnings);
  }

  /** Returns the series among the clear onsets. */
  public static SoundAlone of(Onsets onsets) {
    List<Onset> slaps = new ArrayList<>();
    boolean machine = false;
    for (List<Onset> part : parts(onsets.clear())) {
      List<Onset> series = withoutStragglers(part);
      if (plausible(series)) {
        slaps.addAll(series);
        Double cvPct = Stats.cvPct(near(intervals(series)));
        machine |= cvPct != null && cvPct < MACHINE_CV_PCT;
      }
    }
    if (slaps.isEmpty()) {
      return new SoundAlone(slaps, List.of(NO_SERIES));
    }
    return new SoundAlone(
        slaps, machine ? List.of(UNCONFIRMED, MAYBE_METRONOME) : List.of(UNCONFIRMED));
  }

  private static List<List<Onset>> parts(List<Onset> onsets) {
    List<List<Onset>> parts = new ArrayList<>();
    int from = 0;
    for (int i = 1; i <= onsets.size(); i++) {
      if (i == onsets.size() || onsets.get(i).timeS() - onsets.get(i - 1).timeS() > PART_S) {
        parts.add(onsets.subList(from, i));
        from = i;
      }
    }
    return parts;
  }

  /** A sound at either end that keeps more than a pause's distance is another thing. */
  private static List<Onset> withoutStragglers(List<Onset> part) {
    double[] intervals = intervals(part);
    double longest = PAUSE * median(intervals);
    int from = 0;
    int to = part.size();
    while (from < intervals.length && intervals[from] > longest) {
      from++;
    }
    while (to - 1 > from && intervals[to - 2] > longest) {
      to--;
    }
    return part.subList(from, to);
  }

  private static boolean plausible(List<Onset> series) {
    double[] intervals = intervals(series);
    double median = median(intervals);
    return series.size() >= FEWEST
        && median >= SHORTEST_S
        && median <= LONGEST_S
        && near(intervals).length >= NEAR_SHARE * intervals.length;
  }

  private static double[] near(double[] intervals) {
    double median = median(intervals);
    return Arrays.stream(intervals).filter(d -> Math.abs(d - median) <= NEAR * median).toArray();
  }

  private static double[] intervals(List<Onset> series) {
    return IntStream.range(1, series.size())
        .mapToDouble(i -> series.get(i).timeS() - series.get(i - 1).timeS())
        .toArray();
  }

  private static double median(double[] values) {
    Double median = Stats.median(values);
    return median == null ? 0 : median;
  }
}
