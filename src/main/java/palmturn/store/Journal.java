package palmturn.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import palmturn.json.JournalLine;
import palmturn.json.JsonException;

/**
 * A journal of the edits of one trial since its file was last written, a line each; a line counts
 * once it is complete and on the disk. Nothing is written to a file that another program has
 * changed, moved or replaced since: what was acknowledged before could be lost with it.
 */
final class Journal {
  /** A line ends in a checksum of its own, which these bytes hold. */
  private static final int TAIL = 64;

  private final Path file;
  private final Disk disk;
  private final Map<String, JournalLine> lastOfReader = new LinkedHashMap<>();
  private long length;
  private byte[] tail = {};

  /** The file's identity, where it exists and the system has one. */
  private @Nullable Object identity;

  /** The most that the file holds by what was read and written here, bytes. */
  private long most;

  private boolean isTorn;
  private int damagedLines;

  private Journal(Path file, Disk disk) {
    this.file = file;
    this.disk = disk;
  }

  /**
   * Reads a journal; one that is not there is empty. Damaged lines are left out and counted: every
   * line holds the whole reading, so that those around them still say what was saved.
   *
   * @throws StoreException if it can't be read, or a whole line is newer than this program; an
   *     incomplete last line was never acknowledged and is ignored
   */
  static Journal open(Path file, Disk disk) throws StoreException {
    Journal journal = new Journal(file, disk);
    // Another program may delete it at any moment, so its existence is not checked first.
    byte[] bytes = TextFile.bytesOrEmpty(file);
    journal.parse(bytes);
    journal.most = bytes.length;
    try {
      BasicFileAttributes there = journal.attributes();
      journal.identity = there == null ? null : there.fileKey();
    } catch (IOException e) {
      throw new StoreException("%s: can't be read: %s".formatted(file, IoErrors.reason(e)), e);
    }
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
      String whole = end == bytes.length ? null : JournalLine.wholeLineIn(text);
      if (whole == null && end + 1 >= bytes.length) {
        isTorn = true;
        return;
      }
      if (whole == null || !whole.equals(text)) {
        damagedLines++;
      }
      if (whole != null) {
        read(whole, line);
      }
      from = end + 1;
      length = from;
      tail = Arrays.copyOfRange(bytes, Math.max(0, from - TAIL), from);
    }
  }

  private void read(String text, int line) throws StoreException {
    try {
      JournalLine read = JournalLine.read(text);
      lastOfReader.put(read.reading().reader(), read);
    } catch (JsonException e) {
      throw new StoreException(
          String.format(Locale.ROOT, "%s: line %d: %s", file, line, e.getMessage()), e);
    }
  }

  Path path() {
    return file;
  }

  /** Returns the last line of each reader. */
  Iterable<JournalLine> lastOfReaders() {
    return lastOfReader.values();
  }

  /** Returns whether the file ended in an incomplete line. */
  boolean isTorn() {
    return isTorn;
  }

  /** Returns the number of lines that were damaged, in whole or in front of a whole one. */
  int damagedLines() {
    return damagedLines;
  }

  /** Returns the length of all complete lines, bytes. */
  long length() {
    return length;
  }

  /**
   * Adds a line and returns when it is on the disk.
   *
   * @throws ForeignChangeException if another program has changed the file; nothing is written
   * @throws StoreException if it could not be saved
   */
  void add(JournalLine line) throws StoreException {
    byte[] bytes = checked(line).getBytes(StandardCharsets.UTF_8);
    requireUnchanged();
    boolean first = length == 0;
    most = Math.max(most, length + bytes.length);
    try {
      // Writing from the end of the last complete line removes the remains of a failed append.
      disk.writeFrom(file, length, bytes);
      if (first) {
        Disk.forceFolderOf(disk, file);
      }
      acknowledge(bytes);
    } catch (IOException e) {
      throw new StoreException(
          "%s: this edit could not be saved: %s; all that was saved before is there"
              .formatted(file, IoErrors.reason(e)),
          e);
    }
  }

  /** Takes what was written as saved, if the file under this name is the one that has it. */
  private void acknowledge(byte[] written) throws StoreException, IOException {
    BasicFileAttributes there = attributes();
    if (there == null
        || there.size() != length + written.length
        || (identity != null && !identity.equals(there.fileKey()))) {
      throw ForeignChangeException.of(file);
    }
    identity = there.fileKey();
    length += written.length;
    most = length;
    tail = Arrays.copyOfRange(written, Math.max(0, written.length - TAIL), written.length);
    isTorn = false;
  }

  /**
   * Refuses a file that is not as it was left here.
   *
   * @throws ForeignChangeException if it is another file, or its length or last line differs
   */
  void requireUnchanged() throws StoreException {
    try {
      BasicFileAttributes there = attributes();
      if (there == null) {
        // Only the remains of a failed append may vanish unnoticed.
        identity = null;
        if (length > 0) {
          throw ForeignChangeException.of(file);
        }
        return;
      }
      boolean same =
          (identity == null || identity.equals(there.fileKey()))
              && there.size() >= length
              && there.size() <= most
              && Arrays.equals(tail, tailOnDisk());
      if (!same) {
        throw ForeignChangeException.of(file);
      }
    } catch (IOException e) {
      throw new StoreException("%s: can't be read: %s".formatted(file, IoErrors.reason(e)), e);
    }
  }

  private byte[] tailOnDisk() throws IOException {
    try (SeekableByteChannel channel = Files.newByteChannel(file)) {
      ByteBuffer found = ByteBuffer.allocate(tail.length);
      channel.position(length - tail.length);
      while (found.hasRemaining() && channel.read(found) >= 0) {
        // Reads on until the buffer is full.
      }
      return found.array();
    }
  }

  private @Nullable BasicFileAttributes attributes() throws IOException {
    try {
      return Files.readAttributes(file, BasicFileAttributes.class);
    } catch (NoSuchFileException e) {
      return null;
    }
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
    return most > 0;
  }

  /**
   * Forgets all lines, once the trial's file holds them; a damaged journal is put aside, not
   * deleted.
   */
  void clear() throws StoreException {
    boolean damaged = damagedLines > 0;
    // Should the steps below fail halfway, the next line must not be written beyond a gap.
    lastOfReader.clear();
    length = 0;
    tail = new byte[0];
    try {
      if (damaged) {
        disk.moveOver(file, Layout.vacant(file, ".damaged"));
      } else if (Files.exists(file)) {
        disk.writeFrom(file, 0, new byte[0]);
        disk.deleteIfExists(file);
      }
    } catch (IOException e) {
      throw new StoreException(
          "%s: can't be cleared: %s; nothing is lost".formatted(file, IoErrors.reason(e)), e);
    }
    damagedLines = 0;
    identity = null;
    most = 0;
    isTorn = false;
  }
}
