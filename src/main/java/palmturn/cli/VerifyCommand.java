package palmturn.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import palmturn.store.SessionFolder;
import palmturn.work.session.Sessions;
import palmturn.work.session.Verification;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
    name = "verify",
    description = "Checks that a session's files are whole and its clips unchanged.")
final class VerifyCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "SESSION", description = "The session's folder.")
  private Path session;

  @Option(
      names = "--recover",
      description =
          "Writes back what can be read of damaged trials; their damaged files are kept beside.")
  private boolean recover;

  @Override
  public Integer call() throws Exception {
    if (recover) {
      try (SessionFolder folder = Sessions.open(session)) {
        List<String> written = Verification.recover(folder);
        written.forEach(line -> Output.print(spec, "%s", line));
        if (written.isEmpty()) {
          Output.print(spec, "%s: nothing is damaged that could be read back", session);
        }
      }
    }
    try (SessionFolder folder = Sessions.openReadOnly(session)) {
      List<String> problems = Verification.problems(folder);
      folder.notices().stream()
          .filter(notice -> problems.stream().noneMatch(notice::startsWith))
          .forEach(notice -> Output.warn(spec, notice));
      problems.forEach(problem -> spec.commandLine().getErr().println("palmturn: " + problem));
      Verification.recoverable(folder)
          .forEach(
              line ->
                  spec.commandLine()
                      .getErr()
                      .println("palmturn: %s (verify --recover writes it)".formatted(line)));
      if (problems.isEmpty()) {
        Output.print(spec, "%s: %d trials, all whole", session, folder.trials().size());
      }
      return problems.isEmpty() ? PalmturnCommand.DONE : PalmturnCommand.WRONG_DATA;
    }
  }
}
