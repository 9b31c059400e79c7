package palmturn.lab;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** The circumstances of a measurement: command, commit, date, cores and load. */
final class MeasuredRun {
  private MeasuredRun() {}

  /**
   * Returns a line for the top of generated tables.
   *
   * @param home the checkout
   * @param command as a reader would type it
   * @param folders of the measured clips, said by their last names
   * @param load the system's load before the run, from {@link #load}
   */
  static String line(Path home, String command, List<Path> folders, String load, Clock clock)
      throws InterruptedException {
    return String.format(
        Locale.ROOT,
        "`%s`, commit %s, %s; clips of %s; %d cores%s.",
        command,
        commit(home),
        LocalDate.now(clock.withZone(ZoneOffset.UTC)),
        folders.stream()
            .map(folder -> "`" + folder.toAbsolutePath().normalize().getFileName() + "`")
            .collect(Collectors.joining(", ")),
        Runtime.getRuntime().availableProcessors(),
        load);
  }

  /** Returns the load average in words; empty where the system doesn't tell it. */
  static String load() {
    try {
      return "; load average before " + Files.readString(Path.of("/proc/loadavg")).split(" ", 2)[0];
    } catch (IOException e) {
      return "";
    }
  }

  /** Returns the short hash of the checkout's commit, "unknown" where there is none. */
  private static String commit(Path home) throws InterruptedException {
    try {
      Process git =
          new ProcessBuilder("git", "rev-parse", "--short", "HEAD")
              .directory(home.toFile())
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start();
      String printed =
          new String(git.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
      return git.waitFor() == 0 ? printed : "unknown";
    } catch (IOException e) {
      return "unknown";
    }
  }
}
