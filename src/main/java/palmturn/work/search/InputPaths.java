package palmturn.work.search;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import palmturn.trial.UserError;
import palmturn.work.session.Sessions;

/**
 * The sessions and clips meant by the paths that a user named: a session's folder is a session, any
 * other folder stands for the clips in it, and a file counts as a clip whatever it is called.
 *
 * @param sessions the folders of sessions
 * @param clips the clips outside sessions
 * @param errors a folder each that has nothing in it, or can't be looked into
 */
public record InputPaths(List<Path> sessions, List<Path> clips, List<UserError> errors) {
  /** File name extensions taken for clips in a folder. */
  private static final Set<String> ENDINGS =
      Set.of("mp4", "m4v", "mov", "3gp", "mkv", "webm", "avi", "mts", "m2ts", "mpg", "mpeg", "wmv");

  public InputPaths {
    sessions = List.copyOf(sessions);
    clips = List.copyOf(clips);
    errors = List.copyOf(errors);
  }

  /**
   * Resolves named paths; each session and clip is listed once.
   *
   * @param recursive whether folders in folders are looked into; sessions among them are taken as
   *     sessions
   */
  public static InputPaths of(Collection<Path> named, boolean recursive) {
    List<Path> sessions = new ArrayList<>();
    List<Path> clips = new ArrayList<>();
    List<UserError> errors = new ArrayList<>();
    for (Path each : named) {
      if (!Files.isDirectory(each)) {
        clips.add(each);
      } else if (Sessions.isSession(each)) {
        sessions.add(each);
      } else {
        FolderScan scan = new FolderScan(each);
        try {
          Files.walkFileTree(each, Set.of(), recursive ? Integer.MAX_VALUE : 1, scan);
        } catch (IOException e) {
          errors.add(new UserError(each + " can't be read: may you open it?", e));
        }
        sessions.addAll(scan.sessions);
        clips.addAll(scan.clips);
        errors.addAll(scan.errors);
        if (scan.sessions.isEmpty() && scan.clips.isEmpty() && scan.errors.isEmpty()) {
          errors.add(new UserError(nothing(each, recursive)));
        }
      }
    }
    return new InputPaths(
        sessions.stream().distinct().toList(), clips.stream().distinct().toList(), errors);
  }

  private static String nothing(Path folder, boolean recursive) {
    return recursive
        ? folder + " has neither a session nor a clip in it"
        : folder + " is no session and has no clip in it; --recursive looks into its folders";
  }

  private static boolean hidden(Path path) {
    return String.valueOf(path.getFileName()).startsWith(".");
  }

  private static boolean isClip(Path file) {
    String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
    // Some systems keep a file's extras beside it in ._NAME, which is no clip.
    return !hidden(file)
        && ENDINGS.contains(name.substring(name.lastIndexOf('.') + 1))
        && Files.isRegularFile(file);
  }

  private static final class FolderScan extends SimpleFileVisitor<Path> {
    private final Path top;
    private final Set<Path> sessions = new TreeSet<>();
    private final Set<Path> clips = new TreeSet<>();
    private final List<UserError> errors = new ArrayList<>();

    FolderScan(Path top) {
      this.top = top;
    }

    @Override
    public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
      if (folder.equals(top)) {
        return FileVisitResult.CONTINUE;
      }
      if (Sessions.isSession(folder)) {
        sessions.add(folder);
        return FileVisitResult.SKIP_SUBTREE;
      }
      return hidden(folder) ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
      if (isClip(file)) {
        clips.add(file);
      }
      return FileVisitResult.CONTINUE;
    }

    @Override
    public FileVisitResult visitFileFailed(Path path, IOException why) {
      errors.add(new UserError(path + " can't be read: may you open it?", why));
      return FileVisitResult.CONTINUE;
    }
  }
}
