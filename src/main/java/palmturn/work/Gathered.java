package palmturn.work;

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

/**
 * What is meant by files and folders that were named: each session's folder, each clip, and all
 * clips of any other folder. What is named as a clip is taken for one, whatever it is called.
 *
 * @param sessions the folders of sessions
 * @param clips the clips outside sessions
 * @param errors a folder each that has nothing in it, or can't be looked into
 */
public record Gathered(List<Path> sessions, List<Path> clips, List<UserError> errors) {
  /** How the names of clips end, which are looked for in a folder. */
  private static final Set<String> ENDINGS =
      Set.of("mp4", "m4v", "mov", "3gp", "mkv", "webm", "avi", "mts", "m2ts", "mpg", "mpeg", "wmv");

  public Gathered {
    sessions = List.copyOf(sessions);
    clips = List.copyOf(clips);
    errors = List.copyOf(errors);
  }

  /**
   * Looks what lies there, each thing once.
   *
   * @param recursive whether folders in folders are looked into; sessions among them are taken as
   *     sessions
   */
  public static Gathered of(Collection<Path> named, boolean recursive) {
    List<Path> sessions = new ArrayList<>();
    List<Path> clips = new ArrayList<>();
    List<UserError> errors = new ArrayList<>();
    for (Path each : named) {
      if (!Files.isDirectory(each)) {
        clips.add(each);
      } else if (Sessions.isSession(each)) {
        sessions.add(each);
      } else {
        Looking looking = new Looking(each);
        try {
          Files.walkFileTree(each, Set.of(), recursive ? Integer.MAX_VALUE : 1, looking);
        } catch (IOException e) {
          errors.add(new UserError(each + " can't be looked into", e));
        }
        sessions.addAll(looking.sessions);
        clips.addAll(looking.clips);
        errors.addAll(looking.errors);
        if (looking.sessions.isEmpty() && looking.clips.isEmpty() && looking.errors.isEmpty()) {
          errors.add(new UserError(nothing(each, recursive)));
        }
      }
    }
    return new Gathered(
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

  private static final class Looking extends SimpleFileVisitor<Path> {
    private final Path top;
    private final Set<Path> sessions = new TreeSet<>();
    private final Set<Path> clips = new TreeSet<>();
    private final List<UserError> errors = new ArrayList<>();

    Looking(Path top) {
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
      errors.add(new UserError(path + " can't be looked into", why));
      return FileVisitResult.CONTINUE;
    }
  }
}
