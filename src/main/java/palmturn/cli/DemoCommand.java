package palmturn.cli;

import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.Callable;
import palmturn.measure.SessionScore;
import palmturn.report.Paper;
import palmturn.settings.UserFolders;
import palmturn.store.SessionFolder;
import palmturn.trial.UserError;
import palmturn.work.Demo;
import palmturn.work.report.Reports;
import palmturn.work.score.Drills;
import palmturn.work.score.Scoring;
import palmturn.work.score.Standards;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

@Command(
    name = "demo",
    description = "Runs the whole job on the bundled drawn clips: session, marks, scores, report.")
final class DemoCommand implements Callable<Integer> {
  private final PalmturnCommand.AppStarter app;

  @Spec private CommandSpec spec;

  @Option(
      names = "--dir",
      paramLabel = "DIR",
      defaultValue = "palmturn-demo",
      description = "The session folder to make: ${DEFAULT-VALUE} if left out.")
  private Path dir;

  @Option(names = "--no-app", description = "Do not open the app on it.")
  private boolean noApp;

  DemoCommand(PalmturnCommand.AppStarter app) {
    this.app = app;
  }

  @Override
  public Integer call() throws Exception {
    try (TerminalProgress bar = TerminalProgress.on(spec);
        SessionFolder folder = Demo.make(dir, Demo.bundledClips(Home.folder()), bar)) {
      Standards standards = Standards.of(UserFolders.settings(), dir);
      SessionScore score = Scoring.score(folder, null, standards.limits());
      spec.commandLine()
          .getOut()
          .println(ScoreText.of(score, Drills.training(score, standards, null, Map.of())));
      Reports.Written report =
          Reports.write(folder, null, standards, null, Paper.A4, Clocks.SYSTEM, bar);
      Output.print(spec, "%nSession and report of an invented athlete: %s", dir);
      report.files().forEach(file -> Output.print(spec, "%s", file));
    }
    if (!noApp) {
      openApp();
    }
    return PalmturnCommand.DONE;
  }

  private void openApp() {
    try {
      app.start(dir);
    } catch (UserError e) {
      Output.warn(spec, String.valueOf(e.getMessage()));
    }
  }
}
