package palmturn.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import palmturn.settings.UserFolders;
import palmturn.trial.UserError;
import palmturn.work.score.AthleteProgress;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(name = "progress", description = "Follows one athlete over sessions.")
final class ProgressCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(
      arity = "1..*",
      paramLabel = "SESSION",
      description = "The sessions' folders, all of one athlete, in any order.")
  private List<Path> sessions;

  @Option(
      names = "--reading",
      paramLabel = "NAME",
      description = "Whose, estimate or settled; if left out as in score.")
  private @Nullable String reading;

  @Option(names = "--json", description = "Print the figures as JSON.")
  private boolean json;

  @Option(
      names = "--html",
      paramLabel = "FILE",
      description = "Write a page with charts to this file too.")
  private @Nullable Path html;

  @Option(names = "--force", description = "Replace a page that is there.")
  private boolean force;

  @Override
  public Integer call() throws Exception {
    AthleteProgress found;
    try (TerminalProgress bar = TerminalProgress.on(spec)) {
      found = AthleteProgress.of(UserFolders.settings(), sessions, reading, bar);
    }
    found.unread().forEach(line -> spec.commandLine().getErr().println("palmturn: " + line));
    if (json) {
      spec.commandLine().getOut().println(found.json());
    } else if (found.score() != null) {
      Output.printText(spec, ProgressText.of(found.score()));
    } else {
      throw new UserError("none of these sessions has figures yet");
    }
    if (html != null) {
      found.write(html, force, Clocks.SYSTEM);
      if (!json) {
        Output.print(spec, "wrote %s", html);
      }
    }
    return found.unread().isEmpty() ? PalmturnCommand.DONE : PalmturnCommand.WRONG_DATA;
  }
}
