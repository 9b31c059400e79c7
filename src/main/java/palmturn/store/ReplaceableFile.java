package palmturn.store;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * A file that is only ever replaced as a whole, and only while it holds what was last read or
 * written here: what another program has put there is not overwritten unseen.
 */
final class ReplaceableFile<T> {
  private final Path path;
  private final Disk disk;
  private final Function<T, String> writer;
  private final TextFile.Reader<T> reader;
  private byte @Nullable [] known;

  /**
   * The file's attributes while it held what is known: as long as they stay, it need not be read.
   */
  private @Nullable Attributes attributes;

  /** The content of a replacement that failed, perhaps only after it was in place. */
  private byte @Nullable [] uncertain;

  private record Attributes(@Nullable Object key, long size, FileTime modified) {
    static @Nullable Attributes of(Path path) {
      try {
        BasicFileAttributes read = Files.readAttributes(path, BasicFileAttributes.class);
        return new Attributes(read.fileKey(), read.size(), read.lastModifiedTime());
      } catch (IOException e) {
        return null;
      }
    }
  }

  ReplaceableFile(Path path, Disk disk, Function<T, String> writer, TextFile.Reader<T> reader) {
    this.path = path;
    this.disk = disk;
    this.writer = writer;
    this.reader = reader;
  }

  Path path() {
    return path;
  }

  T read() throws StoreException {
    Attributes before = Attributes.of(path);
    byte[] bytes = TextFile.bytes(path);
    T read = TextFile.parse(path, bytes, reader);
    known = TextFile.digest(bytes);
    attributes = before;
    return read;
  }

  /**
   * Replaces the file.
   *
   * @throws ForeignChangeException if another program has changed it; it is then left as it is
   * @throws StoreException if it can't be written
   */
  void save(T content) throws StoreException {
    requireUnchanged();
    String text = TextFile.checked(path, () -> writer.apply(content), reader);
    byte[] digest = TextFile.digest(text.getBytes(StandardCharsets.UTF_8));
    uncertain = digest;
    TextFile.replace(disk, path, text);
    known = digest;
    attributes = Attributes.of(path);
    uncertain = null;
  }

  /**
   * Refuses a file that was read or written here and holds something else by now.
   *
   * @throws ForeignChangeException if it does, or is gone
   */
  void requireUnchanged() throws StoreException {
    if (known == null && uncertain == null) {
      return;
    }
    Attributes now = Attributes.of(path);
    if (uncertain == null && now != null && now.equals(attributes)) {
      return;
    }
    byte[] there = TextFile.digest(TextFile.bytesOrEmpty(path));
    boolean neverWritten = known == null && !Files.exists(path);
    if (!neverWritten && !Arrays.equals(there, known) && !Arrays.equals(there, uncertain)) {
      throw ForeignChangeException.of(path);
    }
    attributes = now;
  }

  /** Returns the digest of the content, lower-case hex; null where it was never read or written. */
  @Nullable String sha256() {
    return known == null ? null : HexFormat.of().formatHex(known);
  }

  /**
   * Returns whether the last replacement failed, perhaps only after the new content was in place.
   */
  boolean isUncertain() {
    return uncertain != null;
  }
}
