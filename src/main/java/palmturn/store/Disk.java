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

/** Every step that changes the disk, so that a test can let each of them fail. */
interface Disk {
  Disk REAL = new Disk() {};

  /** Opens the file that a lock is held on, making it where it is not there. */
  default FileChannel openLock(Path file) throws IOException {
    return FileChannel.open(file, StandardOpenOption.WRITE, StandardOpenOption.CREATE);
  }

  /** Writes a file that is not there yet and forces it to the disk. */
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

  /** Puts a file in the place of another in one step. */
  default void moveOver(Path from, Path to) throws IOException {
    Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  /** Writes a file's end from a byte on, whatever was there, and forces it to the disk. */
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

  /** Forces a folder's list of files to the disk, where the system lets a program do that. */
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

  default void deleteIfThere(Path file) throws IOException {
    Files.deleteIfExists(file);
  }

  /**
   * Replaces a file by new content, or leaves it exactly as it was.
   *
   * @throws IOException if any step fails
   */
  static void replace(Disk disk, Path file, InputStream content) throws IOException {
    Path fresh = fresh(file);
    disk.deleteIfThere(fresh);
    try {
      disk.writeNew(fresh, content);
      disk.moveOver(fresh, file);
    } catch (IOException e) {
      try {
        disk.deleteIfThere(fresh);
      } catch (IOException left) {
        e.addSuppressed(left);
      }
      throw e;
    }
    forceFolderOf(disk, file);
  }

  /** Returns the name under which a file's new content is written first. */
  static Path fresh(Path file) {
    return file.resolveSibling("." + file.getFileName() + ".new");
  }

  static void forceFolderOf(Disk disk, Path file) throws IOException {
    Path folder = file.toAbsolutePath().getParent();
    if (folder != null) {
      disk.forceFolder(folder);
    }
  }
}
