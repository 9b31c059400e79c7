package palmturn.work;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A file or folder in the making, hidden beside its target. It is removed at every ending that Java
 * sees; what a killed process left is removed by the next that opens the session or works in the
 * same folder.
 */
public final class WorkFile implements AutoCloseable {
  private static final String GLOB = ".palmturn-*.part";
  private static final Pattern NAME = Pattern.compile("\\.palmturn-(\\d+)-(\\d+)-\\d+\\.part");

  /** Longer than a piece of work takes to notice that it is stopped. */
  private static final long PATIENCE_MS = 3_000;

  private static final long LOOK_EVERY_MS = 20;
  private static final Set<WorkFile> OPEN = ConcurrentHashMap.newKeySet();
  private static volatile boolean ending;

  static {
    Runtime.getRuntime().addShutdownHook(new Thread(WorkFile::end, "work files"));
  }

  private final Path path;

  private WorkFile(Path path) {
    this.path = path;
  }

  private interface Maker {
    void make(Path path) throws IOException;
  }

  /**
   * Creates an empty file.
   *
   * @param target it is to become
   * @throws IOException if none can be made beside it
   */
  public static WorkFile file(Path target) throws IOException {
    return beside(target, Files::createFile);
  }

  /**
   * Creates an empty folder.
   *
   * @param target it is to become, or beside which its content is to be worked on
   * @throws IOException if none can be made beside it
   */
  public static WorkFile folder(Path target) throws IOException {
    return beside(target, Files::createDirectory);
  }

  private static WorkFile beside(Path target, Maker maker) throws IOException {
    Path folder = target.toAbsolutePath().normalize().getParent();
    if (ending || folder == null) {
      throw new IOException(ending ? "the program is ending" : "it is no file");
    }
    sweep(folder);
    for (int number = 1; ; number++) {
      WorkFile made =
          new WorkFile(
              folder.resolve(
                  String.format(
                      Locale.ROOT,
                      ".palmturn-%d-%d-%d.part",
                      ProcessHandle.current().pid(),
                      began(ProcessHandle.current()),
                      number)));
      OPEN.add(made);
      try {
        maker.make(made.path);
        return made;
      } catch (FileAlreadyExistsException e) {
        OPEN.remove(made);
      } catch (IOException e) {
        OPEN.remove(made);
        throw e;
      }
    }
  }

  /** Returns when a process began, seconds; 0 where the system does not tell. */
  private static long began(ProcessHandle process) {
    return process.info().startInstant().map(at -> at.getEpochSecond()).orElse(0L);
  }

  /**
   * Removes what killed processes left in a folder; one that can't be looked into is left alone.
   */
  public static void sweep(Path folder) {
    try (DirectoryStream<Path> left = Files.newDirectoryStream(folder, GLOB)) {
      for (Path each : left) {
        Matcher name = NAME.matcher(String.valueOf(each.getFileName()));
        if (name.matches() && isDead(name.group(1), name.group(2))) {
          delete(each);
        }
      }
    } catch (IOException e) {
      // What lies there is not in anybody's way.
      return;
    }
  }

  private static boolean isDead(String pid, String began) {
    try {
      return ProcessHandle.of(Long.parseLong(pid))
          .filter(process -> Math.abs(began(process) - Long.parseLong(began)) <= 1)
          .isEmpty();
    } catch (NumberFormatException e) {
      return false;
    }
  }

  /** Returns whether the program is being ended, so that work is to stop. */
  public static boolean isEnding() {
    return ending;
  }

  /** Returns where it lies. */
  public Path path() {
    return path;
  }

  /** Moves it to its target in one step, in place of a file that is there. */
  public void moveTo(Path target) throws IOException {
    Files.move(path, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  /** Removes it where it was not moved. */
  @Override
  public void close() {
    delete(path);
    OPEN.remove(this);
  }

  /** Lets the work notice that it is stopped and tidy up, and then removes what is left. */
  private static void end() {
    ending = true;
    try {
      for (long waited = 0; waited < PATIENCE_MS && !OPEN.isEmpty(); waited += LOOK_EVERY_MS) {
        Thread.sleep(LOOK_EVERY_MS);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    OPEN.forEach(each -> delete(each.path));
  }

  private static void delete(Path path) {
    try (Stream<Path> all = Files.walk(path)) {
      for (Path each : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(each);
      }
    } catch (IOException | java.io.UncheckedIOException e) {
      // It is gone already, or held by another program; the next that works here tries again.
      return;
    }
  }
}
