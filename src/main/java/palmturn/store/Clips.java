package palmturn.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import palmturn.clip.ClipHash;
import palmturn.trial.ClipRef;
import palmturn.trial.Trial;

/** A session's clip files: copying in, and checking against their digests. */
final class Clips {
  private Clips() {}

  /** Copies a file in, unless an identical one is there. */
  static String copyIn(Path session, String into, Path source, Disk disk) throws StoreException {
    if (!Files.isRegularFile(source) || source.getFileName() == null) {
      throw new StoreException("%s: there is no such file".formatted(source));
    }
    Path clips = session.resolve(into);
    try {
      disk.createFolders(clips);
      String wanted = SessionPaths.safeName(source.getFileName().toString());
      String name = wanted;
      for (int i = 2; Files.exists(clips.resolve(name)); i++) {
        if (same(source, clips.resolve(name))) {
          return into + "/" + name;
        }
        name = SessionPaths.numberedName(wanted, i);
      }
      try (InputStream content = Files.newInputStream(source)) {
        Disk.replace(disk, clips.resolve(name), content);
      }
      return into + "/" + name;
    } catch (IOException e) {
      throw new StoreException(
          "%s: can't be copied into %s: %s".formatted(source, clips, IoErrors.reason(e)), e);
    }
  }

  private static boolean same(Path source, Path clip) throws IOException {
    return Files.isSameFile(source, clip)
        || (Files.isRegularFile(clip) && Files.mismatch(source, clip) < 0);
  }

  /** Returns a line for each clip that is missing or changed. */
  static List<String> problems(Path session, Collection<Trial> trials) {
    Map<String, List<Trial>> byPath = new TreeMap<>();
    for (Trial trial : trials) {
      byPath.computeIfAbsent(trial.clip().path(), path -> new ArrayList<>()).add(trial);
    }
    List<String> problems = new ArrayList<>();
    for (List<Trial> sharing : byPath.values()) {
      for (Trial trial : sharing) {
        try {
          check(session, trial);
        } catch (StoreException e) {
          problems.add(e.getMessage());
        }
      }
    }
    return problems;
  }

  /** Refuses a trial whose clip is missing or changed. */
  static void check(Path session, Trial trial) throws StoreException {
    ClipRef clip = trial.clip();
    Path file = session.resolve(clip.path());
    if (!Files.isRegularFile(file)) {
      throw new StoreException(
          "%s: the clip of %s is not there; put it back, or add it again"
              .formatted(file, trial.id().name()));
    }
    try {
      if (!ClipHash.sha256(file).equals(clip.sha256())) {
        throw new StoreException(
            "%s: the clip of %s has changed since it was added; put the old file back, or add this one as a trial of its own"
                .formatted(file, trial.id().name()));
      }
    } catch (IOException e) {
      throw new StoreException("%s: can't be read: %s".formatted(file, IoErrors.reason(e)), e);
    }
  }
}
