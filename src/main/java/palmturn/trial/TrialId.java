package palmturn.trial;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Names a trial within its session, as in {@code right-baseline-1} or {@code left-after-2-3}.
 *
 * @param hand the moving hand
 * @param block {@code baseline} or {@code after-N}
 * @param repeat which attempt, from 1
 */
public record TrialId(Hand hand, String block, int repeat) {
  private static final Pattern NAME =
      Pattern.compile("(left|right)-(baseline|after-[1-9][0-9]{0,2})-([1-9][0-9]{0,2})");

  public TrialId {
    if (!Block.isName(block)) {
      throw new IllegalArgumentException(
          "\"%s\" is not a block: baseline, after-1, after-2 …".formatted(block));
    }
    if (repeat < 1 || repeat > 999) {
      throw new IllegalArgumentException("a repeat is 1 to 999, not " + repeat);
    }
  }

  /** Returns the name, which is also the file's name without its ending. */
  public String name() {
    return hand.code() + "-" + block + "-" + repeat;
  }

  /**
   * Returns what {@link #name} wrote.
   *
   * @throws IllegalArgumentException if the text is no trial's name
   */
  public static TrialId parse(String name) {
    Matcher matcher = NAME.matcher(name);
    if (!matcher.matches()) {
      throw new IllegalArgumentException(
          "\"%s\" is not a trial's name, such as right-baseline-1".formatted(name));
    }
    return new TrialId(
        Coded.parse(Hand.class, matcher.group(1)),
        matcher.group(2),
        Integer.parseInt(matcher.group(3)));
  }
}
