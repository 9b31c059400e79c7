package palmturn.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.clip.Progress;
import palmturn.measure.ProgressScore;
import palmturn.settings.UserFolders;
import palmturn.trial.UserError;
import palmturn.work.score.AthleteProgress;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Other sessions of the athlete, which a command takes into account. */
final class OtherSessions {
  @Spec(Spec.Target.MIXEE)
  private CommandSpec spec;

  @Option(
      names = "--with",
      arity = "1..*",
      paramLabel = "SESSION",
      description =
          "Other sessions of the athlete: their best rates count for what to train, and a report"
              + " shows the progress over all of them.")
  private List<Path> others = new ArrayList<>();

  /**
   * Returns the athlete over a session and the others; null where none is named.
   *
   * @throws UserError if they are of different athletes
   */
  @Nullable ProgressScore over(Path session, @Nullable String reading) throws UserError {
    if (others.isEmpty()) {
      return null;
    }
    List<Path> all = new ArrayList<>(others);
    all.add(session);
    AthleteProgress found = AthleteProgress.of(UserFolders.settings(), all, reading, Progress.NONE);
    found.unread().forEach(line -> Output.warn(spec, line));
    return found.score();
  }
}
