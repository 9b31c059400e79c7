package palmturn.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.zip.CRC32;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Reading;

/**
 * One line of a trial's journal: a reading as it was after one edit.
 *
 * @param at when it was made
 * @param sentence what it did, as the history shows it
 * @param reading all marks after it
 * @param fileSha256 the digest of the trial's file that the journal continues, lower-case hex; null
 *     in a line of an older program
 */
public record JournalLine(
    Instant at, String sentence, Reading reading, @Nullable String fileSha256) {
  private static final Format FORMAT = new Format("palmturn-journal", List.of());
  private static final String CHECK = ",\"crc32\":\"";
  private static final int CHECK_LENGTH = CHECK.length() + 8 + "\"}".length();

  /**
   * Reads a line, without the line break at its end.
   *
   * @throws JsonException if its checksum is wrong, or its text is not a journal's
   */
  public static JournalLine read(String line) throws JsonException {
    if (!whole(line)) {
      throw new JsonException("damaged: its checksum does not fit");
    }
    Keys keys = FORMAT.open(line);
    return new JournalLine(
        keys.parsed("at", Instant::parse),
        keys.text("sentence"),
        keys.object("reading", MarksJson::reading),
        keys.parsedOrNull("fileSha256", TrialJson::sha256));
  }

  /** Returns whether it was written after a state of the trial's file, as far as it says. */
  public boolean continues(@Nullable String sha256) {
    return fileSha256 == null || fileSha256.equals(sha256);
  }

  /**
   * Returns the whole line that a text ends with, null where there is none: bytes that were lost in
   * front of it, as in a hole of a file, take nothing from it.
   */
  public static @Nullable String wholeLineIn(String text) {
    int start = text.lastIndexOf(FORMAT.opening());
    return start >= 0 && whole(text.substring(start)) ? text.substring(start) : null;
  }

  /** Returns whether a line ends with the checksum of what comes before it. */
  private static boolean whole(String line) {
    int end = line.length() - CHECK_LENGTH;
    return end >= 0 && line.substring(end).equals(check(line.substring(0, end)));
  }

  /** Returns the line, ending with a line break. */
  public String write() {
    ObjectNode node = RecordForm.put(FORMAT.begin(), this, "at sentence fileSha256?");
    node.set("reading", MarksJson.write(reading));
    String open = JsonText.line(node);
    open = open.substring(0, open.length() - 1);
    return open + check(open) + "\n";
  }

  /** Returns the end of a line: the CRC-32 of all bytes before it. */
  private static String check(String open) {
    CRC32 crc = new CRC32();
    crc.update(open.getBytes(StandardCharsets.UTF_8));
    return CHECK + String.format(Locale.ROOT, "%08x", crc.getValue()) + "\"}";
  }
}
