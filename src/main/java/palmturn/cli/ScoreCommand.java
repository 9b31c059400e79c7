package palmturn.cli;

import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import palmturn.advise.Training;
import palmturn.measure.SessionScore;
import palmturn.store.SessionFolder;
import palmturn.work.Drills;
import palmturn.work.Scoring;
import palmturn.work.Sessions;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(name = "score", description = "Turns the readings of a session into figures.")
final class ScoreCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "SESSION", description = "The session's folder.")
  private Path session;

  @Option(
      names = "--reading",
      paramLabel = "NAME",
      description =
          "Whose; estimate for what the program found, settled for what two readings came to. If left"
              + " out each trial's settled one if nothing is open in it, else its first finished"
              + " one.")
  private @Nullable String reading;

  @Option(names = "--json", description = "Print the figures as JSON.")
  private boolean json;

  @Override
  public Integer call() throws Exception {
    try (SessionFolder folder = Sessions.openReadOnly(session)) {
      folder.notices().forEach(notice -> Say.warn(spec, notice));
      Scoring.notes(folder, reading).forEach(note -> Say.warn(spec, note));
      SessionScore score = Scoring.score(folder, reading);
      Training training =
          Drills.training(
              score, Scoring.limits(folder), Drills.library(Home.settings(), session), Map.of());
      spec.commandLine()
          .getOut()
          .println(json ? Scoring.json(score, training) : ScoreText.of(score, training));
    }
    return PalmturnCommand.DONE;
  }
}
