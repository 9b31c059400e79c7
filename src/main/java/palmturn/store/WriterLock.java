package palmturn.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.ReadOnlyFileSystemException;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.HashSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The lock on a session's folder: one writer at a time; others may read. */
final class WriterLock implements AutoCloseable {
  static final String FILE = ".lock";

  /** Closing a second channel on the file would drop this program's own lock on some systems. */
  private static final Set<Path> HELD_HERE = new HashSet<>();

  private final Path folder;
  private FileChannel channel;

  /** The identity of the file that is locked, where the system has one. */
  private @Nullable Object identity;

  private WriterLock(Path folder, FileChannel channel) {
    this.folder = folder;
    this.channel = channel;
    identity = identity(folder);
  }

  private static @Nullable Object identity(Path folder) {
    try {
      return Files.readAttributes(folder.resolve(FILE), BasicFileAttributes.class).fileKey();
    } catch (IOException e) {
      return null;
    }
  }

  /**
   * Locks the folder again if its lock file was deleted or replaced, which lets another program in.
   *
   * @throws StoreException if another program has locked it by now
   */
  void renew(Disk disk) throws StoreException {
    Object there = identity(folder);
    if (there == null ? Files.exists(folder.resolve(FILE)) : there.equals(identity)) {
      return;
    }
    FileChannel again = lock(folder, folder, disk);
    try {
      channel.close();
    } catch (IOException e) {
      // The lock of a file that is gone keeps nobody out.
    }
    channel = again;
    identity = identity(folder);
  }

  static WriterLock acquire(Path folder, Disk disk) throws StoreException {
    synchronized (HELD_HERE) {
      Path real;
      try {
        real = folder.toRealPath();
      } catch (IOException e) {
        throw new StoreException(
            "%s: can't be reached: %s".formatted(folder, IoErrors.reason(e)), e);
      }
      if (HELD_HERE.contains(real)) {
        throw alreadyOpen(folder);
      }
      FileChannel channel = lock(folder, real, disk);
      HELD_HERE.add(real);
      return new WriterLock(real, channel);
    }
  }

  // The channel must stay open as long as the lock is to be held.
  @SuppressWarnings("MustBeClosedChecker")
  private static FileChannel lock(Path folder, Path real, Disk disk) throws StoreException {
    FileChannel channel;
    try {
      channel = disk.openLock(real.resolve(FILE));
    } catch (AccessDeniedException | ReadOnlyFileSystemException e) {
      throw protectedFolder(folder, e);
    } catch (IOException e) {
      // A whole disk that is read-only answers with words of the system's own.
      throw Files.isWritable(real)
          ? new StoreException("%s: can't be locked: %s".formatted(folder, IoErrors.reason(e)), e)
          : protectedFolder(folder, e);
    }
    try {
      FileLock lock = channel.tryLock();
      if (lock != null) {
        return channel;
      }
      channel.close();
    } catch (IOException e) {
      throw new StoreException("%s: can't be locked: %s".formatted(folder, IoErrors.reason(e)), e);
    }
    throw alreadyOpen(folder);
  }

  private static StoreException protectedFolder(Path folder, Exception why) {
    return new StoreException(
        "%s: the folder can't be written to; this session can only be looked at".formatted(folder),
        why);
  }

  private static StoreException alreadyOpen(Path folder) {
    return new StoreException(
        "%s is open in another Palmturn; this one is read-only".formatted(folder));
  }

  @Override
  public void close() throws IOException {
    synchronized (HELD_HERE) {
      channel.close();
      HELD_HERE.remove(folder);
    }
  }
}
