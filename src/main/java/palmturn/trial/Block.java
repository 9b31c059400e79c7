package palmturn.trial;

import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Trials filmed together: {@code baseline}, or {@code after-N} following a drill.
 *
 * @param name {@code baseline} or {@code after-N}
 * @param drill what was done before this block; null for the baseline
 * @param extra unknown keys
 */
public record Block(String name, @Nullable Drill drill, Extra extra) {
  public static final String BASELINE = "baseline";
  private static final Pattern NAME = Pattern.compile("baseline|after-[1-9][0-9]{0,2}");

  public Block {
    if (!isName(name)) {
      throw new IllegalArgumentException(
          "\"%s\" is not a block: baseline, after-1, after-2 …".formatted(name));
    }
  }

  /** Returns whether a text names a block. */
  public static boolean isName(String text) {
    return NAME.matcher(text).matches();
  }

  /** Returns the place of a block in the session's order: 0 for the baseline, N for after-N. */
  public static int order(String name) {
    return name.equals(BASELINE) ? 0 : Integer.parseInt(name.substring("after-".length()));
  }
}
