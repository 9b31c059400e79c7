package palmturn.cli;

import java.io.FilterWriter;
import java.io.IOException;
import java.io.Writer;
import org.jspecify.annotations.Nullable;

/**
 * The one door to the terminal. Texts that were received may hold what a terminal takes for orders
 * (escape sequences, titles of its window, a reversed direction of writing); each such character is
 * printed as a question mark. What can't be written is remembered, as a print writer says nothing
 * of it.
 */
final class TerminalWriter extends FilterWriter {
  private @Nullable IOException failure;

  TerminalWriter(Writer out) {
    super(out);
  }

  /** Returns a text without characters that a terminal takes for orders. */
  static String harmless(String text) {
    StringBuilder kept = new StringBuilder(text);
    for (int i = 0; i < kept.length(); i++) {
      char c = kept.charAt(i);
      // A carriage return alone would let what follows overwrite its line.
      boolean lineBreak = c == '\r' && i + 1 < kept.length() && kept.charAt(i + 1) == '\n';
      if (isOrder(c) && !lineBreak) {
        kept.setCharAt(i, '?');
      }
    }
    return kept.toString();
  }

  private static boolean isOrder(char c) {
    return switch (Character.getType(c)) {
      case Character.CONTROL -> c != '\n' && c != '\t';
      case Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR -> true;
      // Names in some scripts are spelled with joiners, and a soft hyphen hides nothing.
      case Character.FORMAT -> c != '\u200C' && c != '\u200D' && c != '\u00AD';
      default -> false;
    };
  }

  /** Returns the first failure to write; null where all was written. */
  @Nullable IOException failure() {
    return failure;
  }

  @Override
  public void write(int c) throws IOException {
    write(String.valueOf((char) c), 0, 1);
  }

  @Override
  public void write(char[] text, int from, int length) throws IOException {
    write(new String(text, from, length), 0, length);
  }

  @Override
  public void write(String text, int from, int length) throws IOException {
    try {
      out.write(harmless(text.substring(from, from + length)));
    } catch (IOException e) {
      throw remembered(e);
    }
  }

  @Override
  public void flush() throws IOException {
    try {
      out.flush();
    } catch (IOException e) {
      throw remembered(e);
    }
  }

  private IOException remembered(IOException e) {
    failure = failure == null ? e : failure;
    return e;
  }
}
