package palmturn.estimate;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import palmturn.estimate.motion.Contacts;
import palmturn.estimate.motion.Motion;
import palmturn.estimate.sound.SoundMatch;
import palmturn.numbers.Robust;

/**
 * A check of whether an oscillation is that of a slapping and turning hand. The limits were set on
 * clips of slapping hands, of hands that turn, wave, clap or sign, and of scenes without hands;
 * what was measured is in docs/measured/estimate.md.
 */
public final class TrialCheck {
  /** Fewer stops show no beat to be judged. */
  private static final int FEWEST = 6;

  /** Slower than this, slapping and turning in the air look alike. */
  private static final double SURELY_WIDTHS_PER_S = 2;

  /** Hands that gesture moved at 0.1 to 2.6 widths a second, slapping hands mostly at 4.5 to 9. */
  private static final double LEAST_WIDTHS_PER_S = 1;

  /** Hands that turn in the air go up and down less from turn to turn. */
  private static final double WIDTHS_PER_SLAP = 0.6;

  /** A metronome beside turning hands reached 0.37. */
  private static final double CLEAR_AGREEMENT = 0.5;

  /** Share of intervals near their median; two pauses among nineteen slaps leave 0.78. */
  private static final double LEAST_REGULARITY = 0.65;

  /** Clapping without turns reached 0.02; half is where undoing outweighs repeating. */
  private static final double LEAST_ALTERNATION = 0.5;

  /** A hand that turns looks at least as unlike its last contact as the one before. */
  private static final double LEAST_LOOK_ALTERNATION = 0.95;

  /** A turn takes two values: its kurtosis is 1, that of a normal distribution 3. */
  private static final double MOST_KURTOSIS = 1.7;

  /** Turns undo each other: about −1 in trials, 0.98 in clapping without turns. */
  private static final double MOST_AUTOCORRELATION = -0.5;

  /** The one reason that the hand's shape can outweigh. */
  static final String NO_TURN = "The moving hand does not turn from stop to stop.";

  private TrialCheck() {}

  /**
   * Returns the objections to a trial, one sentence each; empty without any.
   *
   * @param heard the sound laid beside it, null without sound
   */
  public static List<String> objections(Motion motion, @Nullable SoundMatch heard) {
    List<String> against = new ArrayList<>();
    Contacts contacts = motion.contacts();
    if (motion.size() < FEWEST) {
      against.add(
          String.format(
              Locale.ROOT,
              "Only %d stops of a moving hand were seen; a trial has at least %d.",
              motion.size(),
              FEWEST));
    }
    if (tooSlow(motion, heard)) {
      against.add(
          String.format(
              Locale.ROOT,
              "The hand moves too slowly for its stops to be taken for slaps without their sound:"
                  + " %.1f hand widths a second.",
              motion.widthsPerS()));
    }
    if (heard != null && heard.hearsNoContacts()) {
      against.add(
          "A hand turns to and fro, but no contact can be heard where the room is quiet. Use the"
              + " motion alone if the microphone was off.");
    }
    if (contacts.regularity() < LEAST_REGULARITY) {
      against.add("The movement to and fro has no steady beat.");
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

  private static boolean tooSlow(Motion motion, @Nullable SoundMatch heard) {
    double speed = motion.widthsPerS();
    double perSlap = speed * Robust.median(motion.poses().intervals());
    boolean confirmed = heard != null && heard.trusted() && heard.agreement() > CLEAR_AGREEMENT;
    return speed < LEAST_WIDTHS_PER_S
        || speed < SURELY_WIDTHS_PER_S && perSlap < WIDTHS_PER_SLAP && !confirmed;
  }
}
