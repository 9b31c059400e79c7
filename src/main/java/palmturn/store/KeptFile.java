package palmturn.store;

import java.nio.file.Path;
import java.util.function.Function;

/** A file that is only ever replaced as a whole, and knows whether the last attempt was a doubt. */
final class KeptFile<T> {
  private final Path path;
  private final Disk disk;
  private final Function<T, String> writer;
  private final TextFile.Reader<T> reader;
  private boolean doubtful;

  KeptFile(Path path, Disk disk, Function<T, String> writer, TextFile.Reader<T> reader) {
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
    doubtful = true;
    TextFile.replace(disk, path, () -> writer.apply(content), reader);
    doubtful = false;
  }

  /** Returns whether the file may hold what an attempt that failed at its last step has written. */
  boolean doubtful() {
    return doubtful;
  }
}
