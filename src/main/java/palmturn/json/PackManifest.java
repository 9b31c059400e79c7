package palmturn.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

/**
 * The table of contents of a pack.
 *
 * @param athlete the athlete's code
 * @param date the day of filming
 * @param at when it was packed
 * @param entries every other file in it
 */
public record PackManifest(String athlete, LocalDate date, Instant at, List<Entry> entries) {
  private static final Format FORMAT = new Format("palmturn-pack", List.of());
  private static final double MOST_BYTES = 1e15;

  /**
   * A file.
   *
   * @param name its path in the pack, with forward slashes
   * @param sha256 of its content, 64 lower-case hexadecimal digits
   * @param bytes length of its content
   */
  public record Entry(String name, String sha256, long bytes) {}

  public PackManifest {
    entries = List.copyOf(entries);
  }

  /**
   * Reads a manifest.
   *
   * @throws JsonException if the text is damaged or newer than this program
   */
  public static PackManifest read(String text) throws JsonException {
    Keys keys = FORMAT.open(text);
    return new PackManifest(
        keys.text("athlete"),
        keys.parsed("date", LocalDate::parse),
        keys.parsed("at", Instant::parse),
        keys.list("entries", PackManifest::entry));
  }

  private static Entry entry(Keys keys) throws JsonException {
    keys.dropRest();
    return new Entry(
        keys.text("name"),
        keys.parsed("sha256", TrialJson::sha256),
        (long) keys.number("bytes", 0, MOST_BYTES));
  }

  /** Returns it as it lies in the pack. */
  public String write() {
    ObjectNode file = RecordForm.put(FORMAT.begin(), this, "athlete date at");
    file.set("entries", RecordForm.all(entries, "name sha256 bytes"));
    return JsonText.page(file);
  }
}
