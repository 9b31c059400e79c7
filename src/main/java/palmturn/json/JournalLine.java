package palmturn.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.zip.CRC32;
import palmturn.trial.Reading;

/**
 * One line of a trial's journal: a reading as it was after one edit.
 *
 * @param at when it was made
 * @param sentence what it did, as the history shows it
 * @param reading all marks after it
 */
public record JournalLine(Instant at, String sentence, Reading reading) {
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
        keys.object("reading", MarksJson::reading));
  }

  /** Returns whether a line ends with the checksum of what comes before it. */
  public static boolean whole(String line) {
    int end = line.length() - CHECK_LENGTH;
    return end >= 0 && line.substring(end).equals(check(line.substring(0, end)));
  }

  /** Returns the line, ending with a line break. */
  public String write() {
    ObjectNode node = FORMAT.begin();
    node.put("at", at.toString());
    node.put("sentence", sentence);
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
