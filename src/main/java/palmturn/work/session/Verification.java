package palmturn.work.session;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import palmturn.report.MarksCsv;
import palmturn.store.Recoverable;
import palmturn.store.SessionFolder;
import palmturn.trial.Reading;
import palmturn.trial.Session;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.trial.UserError;
import palmturn.work.NewFile;

/** The check of a session as a whole. */
public final class Verification {
  private Verification() {}

  /** Returns a line for each damaged trial that says what can be read back of it. */
  public static List<String> recoverable(SessionFolder folder) {
    return folder.recoverable().stream().map(Verification::words).toList();
  }

  private static String words(Recoverable damaged) {
    String readings =
        damaged.readings().isEmpty()
            ? "no marks"
            : damaged.readings().stream()
                .map(
                    each ->
                        String.format(Locale.ROOT, "%d by %s", each.slaps().size(), each.reader()))
                .collect(Collectors.joining(", ", "marks: ", ""));
    return damaged.trial() == null
        ? "%s: its clip can't be read back; %s".formatted(damaged.id().name(), readings)
        : "%s: can be read back without its estimate; %s".formatted(damaged.id().name(), readings);
  }

  /**
   * Writes back what can be read of damaged trials: the trial itself, or, where its clip is not
   * known any more, its marks as CSV in the folder {@code recovered}.
   *
   * @return a line for each thing written
   */
  public static List<String> recover(SessionFolder folder) throws UserError {
    List<String> written = new ArrayList<>();
    for (Recoverable damaged : folder.recoverable()) {
      if (damaged.trial() != null) {
        folder.recover(damaged);
        written.add(damaged.id().name() + ": read back; its damaged files are kept beside it");
        continue;
      }
      for (Reading reading : damaged.readings()) {
        String name =
            "%s-%s.csv".formatted(damaged.id().name(), reading.reader().replaceAll("[^\\w-]", "_"));
        Path file = Sessions.createFolder(folder.folder().resolve("recovered")).resolve(name);
        NewFile.write(file, true, MarksCsv.write(reading).getBytes(StandardCharsets.UTF_8));
        written.add("%s: marks by %s in %s".formatted(damaged.id().name(), reading.reader(), file));
      }
    }
    return written;
  }

  /** Returns the problems of a session's files, a line each; empty if there are none. */
  public static List<String> problems(SessionFolder folder) {
    List<String> problems = new ArrayList<>(folder.damaged().values());
    problems.addAll(folder.checkClips());
    Session session = folder.session();
    List<TrialId> there = folder.trials().stream().map(Trial::id).toList();
    for (TrialId id : session.filmed()) {
      if (!there.contains(id) && !folder.damaged().containsKey(id)) {
        problems.add("session.json names %s, but it has no file".formatted(id.name()));
      }
    }
    for (TrialId id : there) {
      if (session.block(id.block()).isEmpty()) {
        problems.add(
            "%s belongs to block %s, which session.json does not have"
                .formatted(id.name(), id.block()));
      }
    }
    return problems;
  }
}
