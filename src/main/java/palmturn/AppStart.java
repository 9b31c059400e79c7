package palmturn;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import palmturn.app.PalmturnApp;
import palmturn.trial.UserError;

/** Opens the app where it can be opened, and says in a line why where it can't. */
final class AppStart {
  private static final String GTK = "libgtk-3.so.0";

  private AppStart() {}

  static void run(@Nullable Path session) throws UserError {
    String why = missing(System.getProperty("os.name"), System.getenv(), AppStart::onThisComputer);
    if (why != null) {
      throw new UserError(why);
    }
    try {
      PalmturnApp.launch(session);
    } catch (UnsupportedOperationException e) {
      // What the window's toolkit says where the display that is named does not answer.
      throw new UserError(
          "the app can't open the display %s; all commands work without one"
              .formatted(System.getenv("DISPLAY")),
          e);
    }
  }

  /** Returns what the app lacks on a system, or null. */
  static @Nullable String missing(String system, Map<String, String> environment, Library library) {
    if (!system.toLowerCase(Locale.ROOT).contains("linux")) {
      return null;
    }
    if (environment.getOrDefault("DISPLAY", "").isEmpty()) {
      return "the app needs a display, and DISPLAY names none; all commands work without one";
    }
    if (!library.there(GTK)) {
      return "the app needs GTK 3, which is not installed: install it (on Debian and Ubuntu the"
          + " package libgtk-3-0, on Fedora gtk3); all commands work without it";
    }
    return null;
  }

  /** Tells whether a shared library is installed. */
  @FunctionalInterface
  interface Library {
    boolean there(String name);
  }

  private static boolean onThisComputer(String name) {
    Stream<Path> wellKnown =
        Stream.of("/usr/lib", "/usr/lib64", "/lib", "/lib64", "/usr/local/lib").map(Path::of);
    Stream<Path> named =
        Stream.of(System.getenv().getOrDefault("LD_LIBRARY_PATH", "").split(":"))
            .filter(part -> !part.isEmpty())
            .map(Path::of);
    List<Path> folders = Stream.concat(wellKnown, named).toList();
    String triple =
        System.getProperty("os.arch").equals("aarch64") ? "aarch64-linux-gnu" : "x86_64-linux-gnu";
    return folders.stream()
        .anyMatch(
            folder ->
                Files.exists(folder.resolve(name))
                    || Files.exists(folder.resolve(triple).resolve(name)));
  }
}
