package palmturn.lab;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import palmturn.trial.UserError;

/**
 * A page of {@code docs/measured} whose tables are generated: they stand between two marks, and
 * what is around them is written by hand.
 */
final class MeasuredPage {
  /** The marks, which Markdown does not show. */
  static final String BEGIN = "<!-- tools/lab: from here -->";

  static final String END = "<!-- tools/lab: to here -->";

  private final Path file;
  private final String before;
  private final String after;

  private MeasuredPage(Path file, String before, String after) {
    this.file = file;
    this.before = before;
    this.after = after;
  }

  /**
   * Reads a page.
   *
   * @throws UserError if it can't be read, or has lost its marks
   */
  static MeasuredPage read(Path file) throws UserError {
    try {
      String page = Files.readString(file, StandardCharsets.UTF_8);
      int begin = page.indexOf(BEGIN + "\n");
      int end = page.indexOf(END + "\n");
      if (begin < 0 || end < begin) {
        throw new UserError(
            "%s has lost its marks: put back the lines %s and %s".formatted(file, BEGIN, END));
      }
      return new MeasuredPage(
          file, page.substring(0, begin + BEGIN.length() + 1), page.substring(end));
    } catch (IOException e) {
      throw new UserError(file + " can't be read", e);
    }
  }

  /**
   * Puts tables between the marks, in place of those that stood there.
   *
   * @throws UserError if the page can't be written
   */
  void write(String tables) throws UserError {
    try {
      Files.writeString(
          file, before + "\n" + tables.strip() + "\n\n" + after, StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UserError(file + " can't be written", e);
    }
  }
}
