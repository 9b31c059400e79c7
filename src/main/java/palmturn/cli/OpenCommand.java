package palmturn.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import palmturn.trial.UserError;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

@Command(name = "open", description = "Opens a session in the app.")
final class OpenCommand implements Callable<Integer> {
  private final PalmturnCommand.AppStarter app;

  @Parameters(paramLabel = "SESSION", description = "The session's folder.")
  private Path session;

  OpenCommand(PalmturnCommand.AppStarter app) {
    this.app = app;
  }

  @Override
  public Integer call() throws UserError {
    app.start(session);
    return PalmturnCommand.DONE;
  }
}
