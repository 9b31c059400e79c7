package palmturn.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Set;

/**
 * The operations that change the disk, each on its own, so that a test can make any of them fail.
 */
interface Disk {
  Disk REAL = new Disk() {};

  /** Opens a lock file, creating it if it does not exist. */
  default FileChannel openLock(Path file) throws IOException {
    return FileChannel.open(file, StandardOpenOption.WRITE, StandardOpenOption.CREATE);
  }

  /** Writes a new file and forces it to the disk. */
  default void writeNew(Path file, InputStream content) throws IOException {
    try (FileChannel channel =
        FileChannel.open(
            file,
            Set.of(
                StandardOpenOption.WRITE,
                StandardOpenOption.CREATE_NEW,
                LinkOption.NOFOLLOW_LINKS))) {
      content.transferTo(Channels.newOutputStream(channel));
      channel.force(true);
    }
  }

  /** Moves a file over another atomically. */
  default void moveOver(Path from, Path to) throws IOException {
    Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  /** Truncates a file at a byte, appends content and forces it to the disk. */
  default void writeFrom(Path file, long at, byte[] content) throws IOException {
    try (FileChannel channel =
        FileChannel.open(file, StandardOpenOption.WRITE, StandardOpenOption.CREATE)) {
      channel.truncate(at);
      ByteBuffer rest = ByteBuffer.wrap(content);
      for (long next = at; rest.hasRemaining(); ) {
        next += channel.write(rest, next);
      }
      channel.force(true);
    }
  }

  /** Forces a folder's entries to the disk, where the system allows that. */
  default void forceFolder(Path folder) throws IOException {
    FileChannel channel;
    try {
      channel = FileChannel.open(folder, StandardOpenOption.READ);
    } catch (IOException e) {
      // Windows opens no folder; there the move itself is on the disk when it returns.
      return;
    }
    try (channel) {
      channel.force(true);
    }
  }

  default void createFolders(Path folder) throws IOException {
    Files.createDirectories(folder);
  }

  default void deleteIfExists(Path file) throws IOException {
    Files.deleteIfExists(file);
  }

  /**
   * Replaces a file atomically. Readers see the old content or the new, never a part.
   *
   * <ol>
   *   <li>Delete the temporary file that an earlier failure may have left in the same folder.
   *   <li>Write the new content to the temporary file and force it to the disk.
   *   <li>Move it over the old file in one atomic step.
   *   <li>Force the folder's entries to the disk, so that the move survives a loss of power.
   * </ol>
   *
   * <p>If step 1, 2 or 3 fails, the file is exactly as it was, and the temporary file is deleted
   * where possible. If step 4 fails, the new content is in place but may not survive a loss of
   * power.
   *
   * @throws IOException if any step fails
   */
  static void replace(Disk disk, Path file, InputStream content) throws IOException {
    Path fresh = tempFile(file);
    disk.deleteIfExists(fresh);
    try {
      disk.writeNew(fresh, content);
      disk.moveOver(fresh, file);
    } catch (IOException e) {
      try {
        disk.deleteIfExists(fresh);
      } catch (IOException left) {
        e.addSuppressed(left);
      }
      throw e;
    }
    forceFolderOf(disk, file);
  }

  /** Returns the temporary file of a replacement. */
  static Path tempFile(Path file) {
    return file.resolveSibling("." + file.getFileName() + ".new");
  }

  static void forceFolderOf(Disk disk, Path file) throws IOException {
    Path folder = file.toAbsolutePath().getParent();
    if (folder != null) {
      disk.forceFolder(folder);
    }
  }
}
