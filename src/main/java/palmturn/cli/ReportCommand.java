package palmturn.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import palmturn.store.SessionFolder;
import palmturn.work.Drills;
import palmturn.work.Reports;
import palmturn.work.Sessions;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(name = "report", description = "Writes the report of a session as one HTML file.")
final class ReportCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "SESSION", description = "The session's folder.")
  private Path session;

  @Option(
      names = "--reading",
      paramLabel = "NAME",
      description =
          "Whose, estimate or settled; if left out each trial's settled one if nothing is open in"
              + " it, else its first finished one.")
  private @Nullable String reading;

  @Override
  public Integer call() throws Exception {
    try (SessionFolder folder = Sessions.open(session);
        Bar bar = Bar.on(spec)) {
      folder.notices().forEach(notice -> Say.warn(spec, notice));
      Say.to(
          spec,
          "wrote %s",
          Reports.write(
              folder, reading, Drills.library(Home.settings(), session), Clocks.SYSTEM, bar));
    }
    return PalmturnCommand.DONE;
  }
}
