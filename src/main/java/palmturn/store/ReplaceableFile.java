package palmturn.store;

import java.nio.file.Path;
import java.util.function.Function;

/**
 * A file that is only ever replaced as a whole, and knows whether the last replacement is
 * uncertain.
 */
final class ReplaceableFile<T> {
  private final Path path;
  private final Disk disk;
  private final Function<T, String> writer;
  private final TextFile.Reader<T> reader;
  private boolean isUncertain;

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
    return TextFile.read(path, reader);
  }

  void save(T content) throws StoreException {
    isUncertain = true;
    TextFile.replace(disk, path, () -> writer.apply(content), reader);
    isUncertain = false;
  }

  /**
   * Returns whether the last replacement failed, perhaps only after the new content was in place.
   */
  boolean isUncertain() {
    return isUncertain;
  }
}
