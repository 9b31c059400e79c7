package palmturn.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import palmturn.store.SessionFolder;
import palmturn.trial.TrialId;
import palmturn.trial.UserError;
import palmturn.work.session.Notes;
import palmturn.work.session.Sessions;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(name = "note", description = "Adds a message to a session.")
final class NoteCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(index = "0", paramLabel = "SESSION", description = "The session's folder.")
  private Path session;

  @Parameters(index = "1", paramLabel = "TEXT", description = "What to say.")
  private String text;

  @Option(names = "--trial", paramLabel = "T", description = "A trial, such as right-baseline-1.")
  private @Nullable String trial;

  @Option(names = "--at", paramLabel = "S", description = "A moment in the trial's clip, seconds.")
  private @Nullable Double at;

  @Option(
      names = "--from",
      paramLabel = "WHO",
      defaultValue = "coach",
      description = "Who says it: ${DEFAULT-VALUE} if left out.")
  private String from;

  @Override
  public Integer call() throws Exception {
    TrialId id = null;
    if (trial != null) {
      try {
        id = TrialId.parse(trial);
      } catch (IllegalArgumentException e) {
        throw new UserError(String.valueOf(e.getMessage()), e);
      }
    }
    try (SessionFolder folder = Sessions.open(session)) {
      folder.notices().forEach(notice -> Output.warn(spec, notice));
      Notes.message(folder, from, text, id, at, Clocks.SYSTEM);
    }
    Output.print(spec, "noted");
    return PalmturnCommand.DONE;
  }
}
