package palmturn.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.FileChannel;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** A disk on which a chosen step fails, as a full or write-protected one does. */
final class FailingDisk implements Disk {
  /** A step that can fail. */
  enum Step {
    LOCK,
    WRITE_NEW,
    MOVE,
    WRITE_FROM,
    FORCE_FOLDER,
    CREATE_FOLDERS,
    DELETE
  }

  private @Nullable Step failing;
  private @Nullable IOException failure;
  private int left;

  /** Lets a step fail from its {@code nth} time on, 1 for the next. */
  void fail(Step step, int nth, IOException why) {
    failing = step;
    failure = why;
    left = nth;
  }

  void fail(Step step) {
    fail(step, 1, new FileSystemException("x", null, "No space left on device"));
  }

  void mend() {
    failing = null;
  }

  private boolean fails(Step step) {
    return step == failing && --left <= 0;
  }

  private void step(Step step) throws IOException {
    if (fails(step) && failure != null) {
      throw failure;
    }
  }

  @Override
  public FileChannel openLock(Path file) throws IOException {
    step(Step.LOCK);
    return Disk.super.openLock(file);
  }

  @Override
  public void writeNew(Path file, InputStream content) throws IOException {
    if (fails(Step.WRITE_NEW) && failure != null) {
      byte[] all = content.readAllBytes();
      Files.write(file, Arrays.copyOf(all, all.length / 2));
      throw failure;
    }
    Disk.super.writeNew(file, content);
  }

  @Override
  public void moveOver(Path from, Path to) throws IOException {
    step(Step.MOVE);
    Disk.super.moveOver(from, to);
  }

  @Override
  public void writeFrom(Path file, long at, byte[] content) throws IOException {
    if (fails(Step.WRITE_FROM) && failure != null) {
      Disk.super.writeFrom(file, at, Arrays.copyOf(content, content.length / 2));
      throw failure;
    }
    Disk.super.writeFrom(file, at, content);
  }

  @Override
  public void forceFolder(Path folder) throws IOException {
    step(Step.FORCE_FOLDER);
    Disk.super.forceFolder(folder);
  }

  @Override
  public void createFolders(Path folder) throws IOException {
    step(Step.CREATE_FOLDERS);
    Disk.super.createFolders(folder);
  }

  @Override
  public void deleteIfExists(Path file) throws IOException {
    step(Step.DELETE);
    Disk.super.deleteIfExists(file);
  }
}
