package palmturn.estimate.sound;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Robust;

/**
 * The sound laid beside the contacts that the motion proposes: which onset belongs to which
 * contact, and how much later the sound is. Talk, a metronome, echoes and puffs of air need no rule
 * of their own, since none of them agrees with the motion.
 *
 * @param onsets for each contact its onset, null where none was heard
 * @param offsetS how much later the sound is than the picture, the median over matched contacts
 * @param agreement share of the contacts at whose place something loud begins, 0 to 1
 * @param scatterS median distance from the offset
 * @param quiet whether hardly anything stands out by itself while the hand moves
 */
public record SoundMatch(
    List<@Nullable Onset> onsets,
    double offsetS,
    double agreement,
    double scatterS,
    boolean quiet) {
  /** Hands without sound beside talk, noise or a metronome agree by chance up to about 0.32. */
  private static final double LEAST_AGREEMENT = 0.38;

  /** With less agreement in a quiet room, nothing was touched. */
  private static final double NOTHING_HEARD = 0.2;

  /** A room is quiet in which fewer clear sounds than this share of the contacts are heard. */
  private static final double QUIET_SHARE = 1 / 3.0;

  /** True slaps scatter by 1 to 6 ms, chance by about 8 and more. */
  private static final double MOST_SCATTER_S = 0.008;

  /** Offsets tried: differences of up to 80 ms between sound and picture were followed. */
  private static final double FARTHEST_S = 0.15;

  /** Step of the offsets tried. */
  private static final double STEP_S = 0.001;

  /** Standard deviation of the window in which a sound supports an offset. */
  private static final double NARROW_S = 0.006;

  /** An offset at the end of the range counts this much less: small ones are likelier. */
  private static final double FAR_COST = 0.3;

  /** An onset belongs to a contact within this of it, in the first round and the next. */
  private static final double[] WITHIN_S = {0.030, 0.022};

  /** In the last round only onsets are taken that are off by no more than is usual in this clip. */
  private static final double USUAL_SCATTERS = 5;

  /** The last round takes onsets this near whatever the scatter. */
  private static final double CLOSEST_S = 0.012;

  /** Standard deviation of an onset's place, as a share of that distance. */
  private static final double LIKELY_SHARE = 0.4;

  /**
   * Matches.
   *
   * @param contactsS times by the picture
   * @param sound onsets on the sound's own clock
   */
  public static SoundMatch of(double[] contactsS, Onsets sound) {
    List<Onset> heard = near(contactsS, sound.candidates());
    double offset = 0;
    double most = -1;
    int steps = (int) Math.round(FARTHEST_S / STEP_S);
    for (int i = -steps; i <= steps; i++) {
      double sum = support(contactsS, heard, i * STEP_S);
      if (sum > most) {
        most = sum;
        offset = i * STEP_S;
      }
    }
    List<@Nullable Onset> matched = List.of();
    double scatter = Double.POSITIVE_INFINITY;
    double within = WITHIN_S[0];
    for (int round = 0; round <= WITHIN_S.length; round++) {
      matched = match(contactsS, heard, offset, within);
      double[] late = late(contactsS, matched);
      if (late.length > 0) {
        offset = Robust.median(late);
        scatter = Robust.mad(late);
      }
      within =
          round + 1 < WITHIN_S.length
              ? WITHIN_S[round + 1]
              : Math.max(CLOSEST_S, Math.min(WITHIN_S[1], USUAL_SCATTERS * scatter));
    }
    return new SoundMatch(
        matched,
        offset,
        Math.max(0, most) / contactsS.length,
        scatter,
        quiet(contactsS, sound.clear()));
  }

  /**
   * Returns the onsets that any offset could bring to a contact; the rest of an hour is far off.
   */
  private static List<Onset> near(double[] contactsS, List<Onset> onsets) {
    double firstS = contactsS[0] - 2 * FARTHEST_S;
    double lastS = contactsS[contactsS.length - 1] + 2 * FARTHEST_S;
    return onsets.stream()
        .filter(onset -> onset.timeS() >= firstS && onset.timeS() <= lastS)
        .toList();
  }

  /** Returns whether the sound fits the motion well enough to time the contacts. */
  public boolean trusted() {
    return agreement > LEAST_AGREEMENT && scatterS < MOST_SCATTER_S;
  }

  /** Returns whether the hand turns in the air: nothing is heard where slaps would be. */
  public boolean hearsNoContacts() {
    return quiet && !trusted() && agreement < NOTHING_HEARD;
  }

  /** Returns why the sound is set aside. */
  public String rejection() {
    return String.format(
        Locale.ROOT,
        "The sound does not fit the motion (agreement %.2f, at least %.2f is needed): it was set"
            + " aside, and times are by the picture.",
        agreement,
        LEAST_AGREEMENT);
  }

  private static boolean quiet(double[] contactsS, List<Onset> clear) {
    double firstS = contactsS[0] - FARTHEST_S;
    double lastS = contactsS[contactsS.length - 1] + FARTHEST_S;
    long during =
        clear.stream().filter(onset -> onset.timeS() >= firstS && onset.timeS() <= lastS).count();
    return during < QUIET_SHARE * contactsS.length;
  }

  private static double support(double[] contactsS, List<Onset> heard, double offset) {
    double sum = 0;
    for (double contact : contactsS) {
      for (Onset onset : heard) {
        double off = (onset.timeS() - contact - offset) / NARROW_S;
        if (Math.abs(off) < 5) {
          sum += Math.min(onset.strength(), 1) * Math.exp(-0.5 * off * off);
        }
      }
    }
    return sum * (1 - FAR_COST * Math.abs(offset) / FARTHEST_S);
  }

  private static List<@Nullable Onset> match(
      double[] contactsS, List<Onset> heard, double offset, double within) {
    @Nullable Onset[] matched = new Onset[contactsS.length];
    double likely = LIKELY_SHARE * within;
    for (int j = 0; j < contactsS.length; j++) {
      double best = 0;
      for (Onset onset : heard) {
        double off = onset.timeS() - contactsS[j] - offset;
        double fit =
            Math.min(onset.strength(), 1.5) * Math.exp(-0.5 * off * off / (likely * likely));
        boolean taken = j > 0 && onset.equals(matched[j - 1]);
        if (Math.abs(off) <= within && fit > best && !taken) {
          best = fit;
          matched[j] = onset;
        }
      }
    }
    return Arrays.asList(matched);
  }

  private static double[] late(double[] contactsS, List<@Nullable Onset> matched) {
    double[] late = new double[contactsS.length];
    int n = 0;
    for (int j = 0; j < contactsS.length; j++) {
      Onset onset = matched.get(j);
      if (onset != null) {
        late[n++] = onset.timeS() - contactsS[j];
      }
    }
    return Arrays.copyOf(late, n);
  }
}
