package palmturn.app.look;

import java.util.Locale;

/** Sentence case for lines that are also printed in a terminal. */
public final class Sentence {
  private Sentence() {}

  /** Capitalises the first letter unless a path or file name comes first. */
  public static String of(String line) {
    boolean word = line.matches("(?s)[a-z]+[ ,:;’].*");
    return word ? line.substring(0, 1).toUpperCase(Locale.ROOT) + line.substring(1) : line;
  }
}
