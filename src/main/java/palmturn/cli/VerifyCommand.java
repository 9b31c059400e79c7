package palmturn.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import palmturn.store.SessionFolder;
import palmturn.work.session.Sessions;
import palmturn.work.session.Verification;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
    name = "verify",
    description = "Checks that a session's files are whole and its clips unchanged.")
final class VerifyCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "SESSION", description = "The session's folder.")
  private Path session;

  @Override
  public Integer call() throws Exception {
    try (SessionFolder folder = Sessions.openReadOnly(session)) {
      folder.notices().forEach(notice -> Output.warn(spec, notice));
      List<String> problems = Verification.problems(folder);
      problems.forEach(problem -> spec.commandLine().getErr().println("palmturn: " + problem));
      if (problems.isEmpty()) {
        Output.print(spec, "%s: %d trials, all whole", session, folder.trials().size());
      }
      return problems.isEmpty() ? PalmturnCommand.DONE : PalmturnCommand.WRONG_DATA;
    }
  }
}
