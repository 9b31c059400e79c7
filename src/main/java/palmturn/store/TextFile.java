package palmturn.store;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.function.Supplier;
import palmturn.clip.ClipHash;
import palmturn.json.JsonException;

/** UTF-8 text files, read and replaced as a whole. */
final class TextFile {
  private static final long MOST_BYTES = 64L * 1024 * 1024;

  /** A parser of the text. */
  interface Reader<T> {
    T read(String text) throws JsonException;
  }

  private TextFile() {}

  /** Returns a file's bytes, none where it does not exist. */
  static byte[] bytesOrEmpty(Path file) throws StoreException {
    try {
      return readAll(file);
    } catch (NoSuchFileException e) {
      return new byte[0];
    } catch (IOException e) {
      throw unreadable(file, e);
    }
  }

  /** Returns a file's bytes. */
  static byte[] bytes(Path file) throws StoreException {
    try {
      return readAll(file);
    } catch (IOException e) {
      throw unreadable(file, e);
    }
  }

  private static byte[] readAll(Path file) throws StoreException, IOException {
    long size = Files.size(file);
    if (size > MOST_BYTES) {
      throw new StoreException(
          String.format(
              Locale.ROOT, "%s: too large to be one of Palmturn's files: %d bytes", file, size));
    }
    return Files.readAllBytes(file);
  }

  private static StoreException unreadable(Path file, IOException e) {
    return new StoreException("%s: can't be read: %s".formatted(file, IoErrors.reason(e)), e);
  }

  /** Parses a file's bytes. */
  static <T> T parse(Path file, byte[] bytes, Reader<T> reader) throws StoreException {
    try {
      return reader.read(
          StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString());
    } catch (CharacterCodingException e) {
      throw new StoreException("%s: damaged: it is not UTF-8 text".formatted(file), e);
    } catch (JsonException e) {
      throw new StoreException("%s: %s".formatted(file, e.getMessage()), e);
    }
  }

  /** Returns the digest that tells whether a file holds what it held. */
  static byte[] digest(byte[] bytes) {
    return ClipHash.digest().digest(bytes);
  }

  /**
   * Serialises a file's content and parses the text again: a text that can't be read back is never
   * written.
   *
   * @throws StoreException if it can't be read back
   */
  static String checked(Path file, Supplier<String> writer, Reader<?> reader)
      throws StoreException {
    try {
      String text = writer.get();
      reader.read(text);
      return text;
    } catch (IllegalArgumentException | JsonException e) {
      throw new StoreException("%s: not written: %s".formatted(file, e.getMessage()), e);
    }
  }

  /**
   * Replaces a file's text as {@link Disk#replace} does; a failure leaves the old file whole.
   *
   * @throws StoreException if it can't be written
   */
  static void replace(Disk disk, Path file, String text) throws StoreException {
    try {
      Disk.replace(disk, file, new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
    } catch (IOException e) {
      throw new StoreException(
          "%s: can't be written: %s; what was saved before is untouched"
              .formatted(file, IoErrors.reason(e)),
          e);
    }
  }
}
