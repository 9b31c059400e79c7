package palmturn.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** The layout of a session's folder, and the checks that a folder has it. */
final class Layout {
  static final String SESSION = "session.json";
  static final String TRIALS = "trials";
  static final String CLIPS = "clips";
  static final String REPORT = "report";

  /** Files that override a coach's defaults in one session. */
  static final List<String> OWN = List.of("drills.json", "limits.json");

  static final List<String> FOLDERS = List.of(TRIALS, CLIPS, REPORT);

  private Layout() {}

  /** Refuses a folder with anything in it but the remains of a failed creation. */
  static void requireVacant(Path folder) throws StoreException {
    if (Files.exists(folder.resolve(SESSION))) {
      throw new StoreException("%s: there is a session in it already".formatted(folder));
    }
    if (!Files.exists(folder)) {
      return;
    }
    Set<String> own =
        Set.of(WriterLock.FILE, Disk.tempFile(Path.of(SESSION)).toString(), TRIALS, CLIPS, REPORT);
    for (Path each : list(folder)) {
      boolean leftover =
          own.contains(each.getFileName().toString())
              && (!Files.isDirectory(each) || list(each).isEmpty());
      if (!leftover) {
        throw new StoreException(
            "%s: is not empty; choose a new folder for the session".formatted(folder));
      }
    }
  }

  static void requireSession(Path folder) throws StoreException {
    if (!Files.exists(folder)) {
      throw new StoreException("%s: there is no such folder".formatted(folder));
    }
    if (!Files.isRegularFile(folder.resolve(SESSION))) {
      throw new StoreException(
          "%s: is not a session's folder: there is no %s in it".formatted(folder, SESSION));
    }
  }

  /** Returns a path beside a file, with an ending and, where that is taken, a number. */
  static Path vacant(Path file, String ending) {
    Path free = file.resolveSibling(file.getFileName() + ending);
    for (int i = 2; Files.exists(free); i++) {
      free = file.resolveSibling(file.getFileName() + ending + "-" + i);
    }
    return free;
  }

  /** Returns a folder's entries, sorted by name. */
  static List<Path> list(Path folder) throws StoreException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.sorted().toList();
    } catch (IOException e) {
      throw new StoreException(
          "%s: can't be looked into: %s".formatted(folder, IoErrors.reason(e)), e);
    }
  }

  static void createFolder(Path folder, Disk disk) throws StoreException {
    try {
      disk.createFolders(folder);
    } catch (IOException e) {
      throw new StoreException("%s: can't be made: %s".formatted(folder, IoErrors.reason(e)), e);
    }
  }

  /** Deletes a session's own files, and its folder if nothing else is in it. */
  static void delete(Path folder, Disk disk) throws StoreException {
    try {
      disk.deleteIfExists(folder.resolve(SESSION));
      for (String own : OWN) {
        disk.deleteIfExists(folder.resolve(own));
      }
      for (String name : FOLDERS) {
        Path inside = folder.resolve(name);
        for (Path file : Files.isDirectory(inside) ? list(inside) : List.<Path>of()) {
          disk.deleteIfExists(file);
        }
        disk.deleteIfExists(inside);
      }
      disk.deleteIfExists(folder.resolve(WriterLock.FILE));
      if (list(folder).isEmpty()) {
        disk.deleteIfExists(folder);
      }
    } catch (IOException e) {
      throw new StoreException(
          "%s: can't be taken away: %s".formatted(folder, IoErrors.reason(e)), e);
    }
  }
}
