package palmturn.advise;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Drill;

/**
 * A drill as the library has it, in a coach's words. It says what to do and never why it should
 * work: whether it changed this person is measured.
 *
 * @param code lower-case words joined by dashes, as {@code drill --code} takes them
 * @param name as shown
 * @param aims what it is for
 * @param trains which hand
 * @param how what to do
 * @param dose how much and how often
 * @param paceShare share of the clean ceiling at which to start; null for a drill without a click
 * @param harder the next step, taken only after {@link #CLEAN_BEFORE_HARDER} of {@link
 *     #OF_BEFORE_HARDER} clean
 * @param retest when to film again
 * @param stop when to stop
 * @param cautions beside {@link Caution#PAIN}, which holds for every drill
 * @param source a citation, or {@link #NO_SOURCE}
 */
public record LibraryDrill(
    String code,
    String name,
    List<DrillAim> aims,
    TrainedHand trains,
    String how,
    String dose,
    @Nullable Double paceShare,
    String harder,
    String retest,
    String stop,
    List<Caution> cautions,
    String source) {

  /** The text in place of a missing source. */
  public static final String NO_SOURCE = "common practice, no source";

  /** Clean slaps required before a drill is made harder; common practice, no source. */
  public static final int CLEAN_BEFORE_HARDER = 18;

  /** Slaps of which {@link #CLEAN_BEFORE_HARDER} must be clean. */
  public static final int OF_BEFORE_HARDER = 20;

  public LibraryDrill {
    aims = List.copyOf(aims);
    cautions = List.copyOf(cautions);
    if (!code.matches("[a-z0-9]+(-[a-z0-9]+)*")) {
      throw new IllegalArgumentException(
          "the code \"%s\" must be lower-case words joined by dashes, such as paced-flips"
              .formatted(code));
    }
    if (code.equals(Drill.REST)) {
      throw new IllegalArgumentException(
          "the code \"rest\" is taken by a rest between blocks: choose another");
    }
    if (harder.isEmpty()) {
      throw new IllegalArgumentException("harder is empty: say it in a few words");
    }
    if (aims.isEmpty()) {
      throw new IllegalArgumentException("qualities: name at least one");
    }
  }

  /** Returns when and how the drill is made harder, as one sentence or more. */
  public String harderWhen() {
    return String.format(
        Locale.ROOT,
        "Only after %d of %d slaps were clean: %s%s",
        CLEAN_BEFORE_HARDER,
        OF_BEFORE_HARDER,
        harder.substring(0, 1).toLowerCase(Locale.ROOT),
        harder.substring(1));
  }
}
