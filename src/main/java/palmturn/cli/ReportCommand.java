package palmturn.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import palmturn.report.Paper;
import palmturn.settings.UserFolders;
import palmturn.store.SessionFolder;
import palmturn.work.report.Reports;
import palmturn.work.score.Standards;
import palmturn.work.session.Sessions;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
    name = "report",
    description = "Writes the report of a session as one HTML file, and as PDF.")
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

  @Mixin private OtherSessions others;

  @Option(names = "--pdf", description = "Write it as PDF too.")
  private boolean pdf;

  @Option(
      names = "--paper",
      paramLabel = "SIZE",
      description = "What the PDF is laid out for: a4, which it is if left out, or letter.")
  private @Nullable Paper paper;

  @Override
  public Integer call() throws Exception {
    try (SessionFolder folder = Sessions.open(session);
        TerminalProgress bar = TerminalProgress.on(spec)) {
      folder.notices().forEach(notice -> Output.warn(spec, notice));
      Reports.Written written =
          Reports.write(
              folder,
              reading,
              Standards.of(UserFolders.settings(), session),
              others.over(session, reading),
              paper(),
              Clocks.SYSTEM,
              bar);
      written.files().forEach(file -> Output.print(spec, "wrote %s", file));
    }
    return PalmturnCommand.DONE;
  }

  /** A paper size asks for a PDF by itself. */
  private @Nullable Paper paper() {
    return paper == null && pdf ? Paper.A4 : paper;
  }
}
