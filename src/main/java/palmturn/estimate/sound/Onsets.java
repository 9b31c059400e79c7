package palmturn.estimate.sound;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import palmturn.clip.ClipException;
import palmturn.clip.Sound;
import palmturn.clip.SoundTrack;
import palmturn.numbers.Stats;
import palmturn.trial.Curve;

/**
 * Onsets of short broadband sounds: peaks of the flux over a threshold that follows the sound, each
 * timed on the waveform.
 *
 * @param strength flux above its median on the sound's clock, 1 = a strong onset
 * @param candidates all that could be a slap, in order; for agreement with the motion
 * @param clear those that stand out by themselves, in order; a part of the candidates
 */
public record Onsets(Curve strength, List<Onset> candidates, List<Onset> clear) {
  /** Nothing heard. */
  public static final Onsets NONE = new Onsets(Curve.EMPTY, List.of(), List.of());

  /**
   * Candidates, for comparison with the motion: low, since the motion picks among them; closest
   * that two can be told apart.
   */
  private static final double CANDIDATE_SHARE = 0.10;

  private static final double CANDIDATE_APART_S = 0.05;

  /**
   * Clear ones: best agreement on real claps, knocks and drums; no two slaps of one hand are
   * nearer.
   */
  private static final double CLEAR_SHARE = 0.25;

  private static final double CLEAR_APART_S = 0.08;

  /**
   * So long after a slap a sound that is much weaker or that swells is taken for its echo or a puff
   * of air, in the clear ones; a weak double tap is lost with them, which only the motion can tell
   * apart.
   */
  private static final double AFTER_S = 0.13;

  /**
   * Level and sharpness of such a sound, against the slap's; the sharpness by 447 slaps and
   * strikes.
   */
  private static final double AFTER_LEVEL = 0.45;

  private static final double AFTER_SHARP = 0.2;

  /** Half width of the running median: several slaps. */
  private static final double MEDIAN_HALF_S = 0.3;

  /** Half width of the window whose loud sounds set a moment's reference level. */
  private static final double LOUD_HALF_S = 2.5;

  /** Percentile that stands for loud. */
  private static final double LOUD_PERCENT = 99;

  /** Least reference level, as a share of the loud level of the whole stretch. */
  private static final double LEAST_LOUD_SHARE = 0.5;

  public Onsets {
    candidates = List.copyOf(candidates);
    clear = List.copyOf(clear);
  }

  /**
   * Returns the onsets in a stretch of a sound.
   *
   * @param fromS first moment, on the sound's clock
   * @param toS last moment
   */
  public static Onsets of(Sound sound, double fromS, double toS) {
    try {
      return of((SoundTrack) sound, fromS, toS);
    } catch (ClipException e) {
      throw new IllegalStateException("no file is read", e);
    }
  }

  /**
   * Returns the onsets in a stretch of a sound, which is gone through twice and never held whole.
   *
   * @param fromS first moment, on the sound's clock
   * @param toS last moment
   * @throws ClipException if the sound can't be read
   */
  public static Onsets of(SoundTrack sound, double fromS, double toS) throws ClipException {
    SoundFlux flux;
    try (SoundTrack.Pass pass = sound.begin()) {
      flux = SoundFlux.of(pass, fromS, toS);
    }
    int count = flux.values().length;
    if (count == 0) {
      return NONE;
    }
    double[] median = running(flux.values(), 50, MEDIAN_HALF_S, flux.hopS());
    double[] loud = running(flux.values(), LOUD_PERCENT, LOUD_HALF_S, flux.hopS());
    Double loudest = Stats.percentile(flux.values(), LOUD_PERCENT);
    double leastLoud = loudest == null ? 0 : LEAST_LOUD_SHARE * loudest;
    // An hour has a million and a half values: each series takes the place of one done with.
    double[] height = median;
    double[] share = loud;
    for (int i = 0; i < count; i++) {
      double loudHere = Math.max(loud[i] - median[i], leastLoud);
      height[i] = flux.values()[i] - median[i];
      share[i] = height[i] > flux.leastHeight() ? height[i] / loudHere : 0;
    }
    List<Integer> peaks = peaks(height, share, CANDIDATE_SHARE, CANDIDATE_APART_S / flux.hopS());
    List<Integer> high = peaks(height, share, CLEAR_SHARE, CLEAR_APART_S / flux.hopS());
    double[] heights = peaks.stream().mapToDouble(i -> height[i]).toArray();
    Double strong = Stats.percentile(heights, 90);
    double unit = strong == null ? 1 : strong;

    List<Onset> candidates = new ArrayList<>();
    List<Onset> clear = new ArrayList<>();
    try (SoundTrack.Pass pass = sound.begin()) {
      time(pass, peaks, new HashSet<>(high), flux, height, unit, candidates, clear);
    }
    double[] times = IntStream.range(0, count).mapToDouble(flux::timeS).toArray();
    double[] values = Arrays.stream(height).map(each -> each / unit).toArray();
    return new Onsets(Curve.of(times, values), candidates, clear);
  }

  /** Times each peak on the waveform, in order. */
  private static void time(
      SoundTrack.Pass pass,
      List<Integer> peaks,
      Set<Integer> high,
      SoundFlux flux,
      double[] height,
      double unit,
      List<Onset> candidates,
      List<Onset> clear) {
    Waveform waveform = new Waveform(pass);
    double lastS = Double.NEGATIVE_INFINITY;
    double lastLevel = 0;
    for (int i : peaks) {
      Waveform.Beginning begins = waveform.at(flux.timeS(i));
      Onset onset = new Onset(begins.timeS(), height[i] / unit);
      candidates.add(onset);
      boolean follows =
          begins.timeS() - lastS < AFTER_S
              && (begins.level() < AFTER_LEVEL * lastLevel || begins.sharpness() < AFTER_SHARP);
      if (high.contains(i) && !follows) {
        clear.add(onset);
        lastS = begins.timeS();
        lastLevel = begins.level();
      }
    }
  }

  /** Local peaks, the highest first, each keeping others away. */
  private static List<Integer> peaks(
      double[] height, double[] share, double leastShare, double apart) {
    List<Integer> tops =
        IntStream.range(0, height.length)
            .filter(i -> share[i] > leastShare)
            .filter(i -> i == 0 || height[i] > height[i - 1])
            .filter(i -> i == height.length - 1 || height[i] >= height[i + 1])
            .boxed()
            .sorted(Comparator.comparingDouble((Integer i) -> -height[i]))
            .toList();
    List<Integer> kept = new ArrayList<>();
    for (int top : tops) {
      if (kept.stream().noneMatch(other -> Math.abs(other - top) < apart)) {
        kept.add(top);
      }
    }
    kept.sort(null);
    return kept;
  }

  /** A percentile around each value, found at every sixteenth of the half width and joined up. */
  private static double[] running(double[] x, double percent, double halfS, double hopS) {
    int half = (int) Math.round(halfS / hopS);
    int step = Math.max(1, half / 16);
    double[] result = new double[x.length];
    double left = percentileAt(x, 0, half, percent);
    for (int at = 0; at < x.length; at += step) {
      double right = percentileAt(x, Math.min(at + step, x.length - 1), half, percent);
      for (int i = at; i < Math.min(at + step, x.length); i++) {
        result[i] = left + (right - left) * (i - at) / step;
      }
      left = right;
    }
    return result;
  }

  private static double percentileAt(double[] x, int at, int half, double percent) {
    int from = Math.max(0, at - half);
    int to = Math.min(x.length, at + half + 1);
    Double value = Stats.percentile(Arrays.copyOfRange(x, from, to), percent);
    return value == null ? 0 : value;
  }
}
