package palmturn.app.look;

import java.util.Locale;

/** Makes a sentence for the window of a line that also ends up in a terminal. */
public final class Sentence {
  private Sentence() {}

  /** Begins a line with a capital unless a path or a file's name comes first. */
  public static String of(String line) {
    boolean word = line.matches("(?s)[a-z]+[ ,:;’].*");
    return word ? line.substring(0, 1).toUpperCase(Locale.ROOT) + line.substring(1) : line;
  }
}
