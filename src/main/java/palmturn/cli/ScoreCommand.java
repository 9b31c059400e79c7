package palmturn.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import palmturn.advise.Training;
import palmturn.measure.SessionScore;
import palmturn.settings.UserFolders;
import palmturn.store.SessionFolder;
import palmturn.trial.UserError;
import palmturn.work.score.Drills;
import palmturn.work.score.Scoring;
import palmturn.work.score.Standards;
import palmturn.work.session.Sessions;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
    name = "score",
    description = {
      "Turns the readings of sessions into figures.",
      "Several are scored one after the other; one that fails does not stop the others."
    })
final class ScoreCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(arity = "1..*", paramLabel = "SESSION", description = "The sessions' folders.")
  private List<Path> sessions;

  @Option(
      names = "--reading",
      paramLabel = "NAME",
      description =
          "Whose; estimate for what the program found, settled for what two readings came to. If left"
              + " out each trial's settled one if nothing is open in it, else its first finished"
              + " one.")
  private @Nullable String reading;

  @Option(names = "--json", description = "Print the figures as JSON; a line each for several.")
  private boolean json;

  @Mixin private OtherSessions others;

  @Override
  public Integer call() throws Exception {
    if (sessions.size() == 1) {
      score(sessions.get(0));
      return PalmturnCommand.DONE;
    }
    // A slip in the user's own files is said once, not for each session.
    Standards.of(UserFolders.settings(), null);
    int failed = 0;
    for (Path session : sessions) {
      try {
        score(session);
      } catch (UserError | RuntimeException e) {
        failed++;
        ((PalmturnCommand) spec.root().userObject()).report(e, spec.commandLine().getErr());
        if (json) {
          print(Scoring.jsonLine(session, e));
        }
      }
    }
    spec.commandLine()
        .getErr()
        .printf(Locale.ROOT, "palmturn: %d scored, %d failed%n", sessions.size() - failed, failed);
    return failed == 0 ? PalmturnCommand.DONE : PalmturnCommand.WRONG_DATA;
  }

  private void score(Path session) throws UserError {
    try (SessionFolder folder = Sessions.openReadOnly(session)) {
      folder.notices().forEach(notice -> Output.warn(spec, notice));
      Scoring.notes(folder, reading).forEach(note -> Output.warn(spec, note));
      Standards standards = Standards.of(UserFolders.settings(), session);
      SessionScore score = Scoring.score(folder, reading, standards.limits());
      Training training =
          Drills.training(score, standards, others.over(session, reading), Map.of());
      print(text(session, score, training));
    }
  }

  private String text(Path session, SessionScore score, Training training) {
    if (!json) {
      return ScoreText.of(score, training).replace('\u00A0', ' ')
          + (sessions.size() == 1 ? "" : "\n");
    }
    return sessions.size() == 1
        ? Scoring.json(score, training)
        : Scoring.jsonLine(session, score, training);
  }

  private void print(String text) {
    spec.commandLine().getOut().println(text);
    spec.commandLine().getOut().flush();
  }
}
