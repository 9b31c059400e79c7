package palmturn.estimate;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import palmturn.estimate.motion.Contacts;
import palmturn.estimate.motion.Motion;
import palmturn.estimate.sound.Heard;
import palmturn.numbers.Robust;

/**
 * Whether what moves to and fro is a slapping and turning hand. The limits were set on clips of
 * slapping hands, of hands that turn, wave, clap or sign, and of scenes without hands; what was
 * measured is in docs/measured/estimate.md.
 */
public final class TrialCheck {
  private static final int FEWEST = 6;

  /** Slower than this, slapping and turning in the air look alike. */
  private static final double SURELY_WIDTHS_PER_S = 2;

  private static final double LEAST_WIDTHS_PER_S = 1;

  /** Hands that turn in the air go up and down less from turn to turn. */
  private static final double WIDTHS_PER_SLAP = 0.6;

  /** A metronome beside turning hands reached 0.37. */
  private static final double CLEAR_AGREEMENT = 0.5;

  private static final double LEAST_REGULARITY = 0.65;
  private static final double LEAST_ALTERNATION = 0.5;
  private static final double LEAST_LOOK_ALTERNATION = 0.95;
  private static final double MOST_KURTOSIS = 1.7;
  private static final double MOST_AUTOCORRELATION = -0.5;

  /** The one reason that the hand's shape can outweigh. */
  static final String NO_TURN = "What moves to and fro does not turn from stop to stop.";

  private TrialCheck() {}

  /**
   * Returns what speaks against a trial, one sentence each; empty if nothing does.
   *
   * @param heard the sound laid beside it, null without sound
   */
  public static List<String> against(Motion motion, @Nullable Heard heard) {
    List<String> against = new ArrayList<>();
    Contacts contacts = motion.contacts();
    if (motion.size() < FEWEST) {
      against.add(
          "Only %d stops of a moving hand were seen; a trial has at least %d."
              .formatted(motion.size(), FEWEST));
    }
    if (tooSlow(motion, heard)) {
      against.add(
          String.format(
              Locale.ROOT,
              "What moves to and fro is too slow for slaps that are not heard: %.1f of its own"
                  + " widths a second.",
              motion.widthsPerS()));
    }
    if (heard != null && heard.touchesNothing()) {
      against.add(
          "A hand turns to and fro, but no contact can be heard where the room is quiet. Use the"
              + " motion alone if the microphone was off.");
    }
    if (contacts.regularity() < LEAST_REGULARITY) {
      against.add("What moves to and fro keeps no beat.");
    }
    boolean turns =
        contacts.poses().alternation() >= LEAST_ALTERNATION
            && contacts.poses().lookAlternation() >= LEAST_LOOK_ALTERNATION
            && motion.turns().kurtosis() <= MOST_KURTOSIS
            && motion.turns().autocorrelation() <= MOST_AUTOCORRELATION;
    if (!turns) {
      against.add(NO_TURN);
    }
    return against;
  }

  private static boolean tooSlow(Motion motion, @Nullable Heard heard) {
    double speed = motion.widthsPerS();
    double perSlap = speed * Robust.median(motion.poses().intervals());
    boolean confirmed = heard != null && heard.trusted() && heard.agreement() > CLEAR_AGREEMENT;
    return speed < LEAST_WIDTHS_PER_S
        || speed < SURELY_WIDTHS_PER_S && perSlap < WIDTHS_PER_SLAP && !confirmed;
  }
}
