package palmturn.store;

import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.Locale;
import java.util.Set;

/** Relative paths and file names that stay inside the session's folder. */
final class SessionPaths {
  private static final int MOST_OF_A_NAME = 100;

  /** Systems allow 255 bytes, and the temporary name is longer. */
  private static final int MOST_BYTES_OF_A_NAME = 200;

  /** Device names of Windows, reserved with any extension. */
  private static final Set<String> DEVICES =
      Set.of(
          "con", "prn", "aux", "nul", "com1", "com2", "com3", "com4", "com5", "com6", "com7",
          "com8", "com9", "lpt1", "lpt2", "lpt3", "lpt4", "lpt5", "lpt6", "lpt7", "lpt8", "lpt9");

  private SessionPaths() {}

  /** Returns whether a path is relative, has forward slashes only and never climbs. */
  static boolean isInside(String relative) {
    if (relative.isEmpty()
        || relative.startsWith("/")
        || relative.indexOf('\\') >= 0
        || relative.indexOf(':') >= 0
        || relative.chars().anyMatch(Character::isISOControl)) {
      return false;
    }
    for (String part : relative.split("/", -1)) {
      if (part.isEmpty() || part.equals(".") || part.equals("..")) {
        return false;
      }
    }
    try {
      return !Path.of(relative).isAbsolute();
    } catch (InvalidPathException e) {
      return false;
    }
  }

  /** Returns a file name valid on every system, as close to the given one as possible. */
  static String safeName(String name) {
    String kept =
        Normalizer.normalize(name, Normalizer.Form.NFC)
            .replaceAll("[^\\p{L}\\p{M}\\p{N}._-]+", "-")
            .replaceAll("\\.{2,}", ".")
            .replaceAll("^[.-]+|[.-]+$", "");
    kept = shortened(kept);
    if (kept.isEmpty()) {
      return "clip";
    }
    String beforeDots = kept.split("\\.", 2)[0].toLowerCase(Locale.ROOT);
    return DEVICES.contains(beforeDots) ? "clip-" + kept : kept;
  }

  private static String shortened(String name) {
    String ending = extension(name);
    String stem = name.substring(0, name.length() - ending.length());
    while (stem.length() + ending.length() > MOST_OF_A_NAME
        || (stem + ending).getBytes(StandardCharsets.UTF_8).length > MOST_BYTES_OF_A_NAME) {
      stem = stem.substring(0, stem.offsetByCodePoints(stem.length(), -1));
    }
    return stem + ending;
  }

  /** Returns a name with a number before its extension. */
  static String numberedName(String name, int number) {
    String ending = extension(name);
    return name.substring(0, name.length() - ending.length()) + "-" + number + ending;
  }

  private static String extension(String name) {
    int dot = name.lastIndexOf('.');
    return dot < 0 || name.length() - dot > 10 ? "" : name.substring(dot);
  }
}
