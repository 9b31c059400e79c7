package palmturn.store;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import palmturn.json.JournalLine;
import palmturn.json.JsonException;

/**
 * A journal of the edits of one trial since its file was last written, a line each; a line counts
 * once it is complete and on the disk.
 */
final class Journal {
  private final Path file;
  private final Disk disk;
  private final Map<String, JournalLine> lastOfReader = new LinkedHashMap<>();
  private long length;
  private boolean isTorn;

  /** True while the file may hold something after its complete lines. */
  private boolean leftover;

  private Journal(Path file, Disk disk) {
    this.file = file;
    this.disk = disk;
  }

  /**
   * Reads a journal; one that is not there is empty.
   *
   * @throws StoreException if a line before the last one is damaged; an incomplete last line was
   *     never acknowledged and is ignored
   */
  static Journal open(Path file, Disk disk) throws StoreException {
    Journal journal = new Journal(file, disk);
    // Another program may delete it at any moment, so its existence is not checked first.
    journal.parse(TextFile.bytesOrEmpty(file));
    return journal;
  }

  private void parse(byte[] bytes) throws StoreException {
    int from = 0;
    for (int line = 1; from < bytes.length; line++) {
      int end = from;
      while (end < bytes.length && bytes[end] != '\n') {
        end++;
      }
      String text = new String(bytes, from, end - from, StandardCharsets.UTF_8);
      boolean last = end + 1 >= bytes.length;
      if (end == bytes.length || (last && !JournalLine.whole(text))) {
        isTorn = true;
        return;
      }
      try {
        JournalLine read = JournalLine.read(text);
        lastOfReader.put(read.reading().reader(), read);
      } catch (JsonException e) {
        throw new StoreException("%s: line %d: %s".formatted(file, line, e.getMessage()), e);
      }
      from = end + 1;
      length = from;
    }
  }

  /** Returns the last line of each reader. */
  Iterable<JournalLine> lastOfReaders() {
    return lastOfReader.values();
  }

  /** Returns whether the file ended in an incomplete line. */
  boolean isTorn() {
    return isTorn;
  }

  /** Returns the length of all complete lines, bytes. */
  long length() {
    return length;
  }

  /** Adds a line and returns when it is on the disk. */
  void add(JournalLine line) throws StoreException {
    byte[] bytes = checked(line).getBytes(StandardCharsets.UTF_8);
    boolean first = length == 0;
    leftover = true;
    try {
      // Writing from the end of the last complete line removes the remains of a failed append.
      disk.writeFrom(file, length, bytes);
      if (first) {
        Disk.forceFolderOf(disk, file);
      }
    } catch (IOException e) {
      throw new StoreException(
          "%s: this edit could not be saved: %s; all that was saved before is there"
              .formatted(file, IoErrors.reason(e)),
          e);
    }
    length += bytes.length;
    isTorn = false;
    leftover = false;
  }

  /** Returns the text of a line that can be read back. */
  private String checked(JournalLine line) throws StoreException {
    try {
      String text = line.write();
      JournalLine.read(text.substring(0, text.length() - 1));
      return text;
    } catch (IllegalArgumentException | JsonException e) {
      throw new StoreException("%s: not saved: %s".formatted(file, e.getMessage()), e);
    }
  }

  /** Returns whether there may be anything in the file. */
  boolean mayHaveContent() {
    return length > 0 || isTorn || leftover;
  }

  /** Forgets all lines, once the trial's file holds them. */
  void clear() throws StoreException {
    // Should the steps below fail halfway, the next line must not be written beyond a gap.
    lastOfReader.clear();
    length = 0;
    leftover = true;
    try {
      if (Files.exists(file)) {
        disk.writeFrom(file, 0, new byte[0]);
        disk.deleteIfExists(file);
      }
    } catch (IOException e) {
      throw new StoreException(
          "%s: can't be cleared: %s; nothing is lost".formatted(file, IoErrors.reason(e)), e);
    }
    isTorn = false;
    leftover = false;
  }
}
