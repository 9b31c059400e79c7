package palmturn.estimate;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Whether what moves to and fro is a slapping and turning hand. The limits were set on clips of
 * slapping hands, of hands that turn, wave, clap or sign, and of scenes without hands; what was
 * measured is in docs/measured.md.
 */
final class TrialCheck {
  private static final int FEWEST = 6;

  /**
   * Turning and lifting in the air looks like slow slapping: only the sound can tell them apart.
   */
  private static final double LEAST_WIDTHS_PER_S = 2;

  private static final double LEAST_WIDTHS_PER_S_HEARD = 1;
  private static final double LEAST_REGULARITY = 0.65;
  private static final double LEAST_ALTERNATION = 0.5;
  private static final double LEAST_LOOK_ALTERNATION = 0.95;
  private static final double MOST_KURTOSIS = 1.7;
  private static final double MOST_AUTOCORRELATION = -0.5;

  private TrialCheck() {}

  /**
   * Returns what speaks against a trial, one sentence each; empty if nothing does.
   *
   * @param heard the sound laid beside it, null without sound
   */
  static List<String> against(Motion motion, @Nullable Heard heard) {
    List<String> against = new ArrayList<>();
    Contacts contacts = motion.contacts();
    if (motion.size() < FEWEST) {
      against.add(
          "Only %d stops of a moving hand were seen; a trial has at least %d."
              .formatted(motion.size(), FEWEST));
    }
    double speed = motion.widthsPerS();
    boolean confirmed = heard != null && heard.trusted();
    if (speed < (confirmed ? LEAST_WIDTHS_PER_S_HEARD : LEAST_WIDTHS_PER_S)) {
      against.add(
          String.format(
              Locale.ROOT,
              "What moves to and fro is too slow for slaps that are not heard: %.1f of its own widths a"
                  + " second.",
              speed));
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
      against.add("What moves to and fro does not turn from stop to stop.");
    }
    return against;
  }
}
