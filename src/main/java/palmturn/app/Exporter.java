package palmturn.app;

import java.nio.file.Path;
import java.time.Clock;
import java.util.Locale;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import palmturn.app.desk.Desk;
import palmturn.app.tasks.LongTask;
import palmturn.clip.Progress;
import palmturn.report.Paper;
import palmturn.store.SessionFolder;
import palmturn.trial.Reading;
import palmturn.trial.TrialId;
import palmturn.work.UserError;
import palmturn.work.reel.Reels;
import palmturn.work.report.Reports;
import palmturn.work.score.AthleteProgress;
import palmturn.work.score.Standards;

/** Writes what is handed over, the report and a trial's reel, and shows it. */
final class Exporter {
  private final Desk desk;
  private final LongTask run;
  private final Clock clock;
  private final Consumer<Path> opener;

  /**
   * Writes nothing yet.
   *
   * @param opener shows a file by the program that the computer has for it
   */
  Exporter(Desk desk, LongTask run, Clock clock, Consumer<Path> opener) {
    this.desk = desk;
    this.run = run;
    this.clock = clock;
    this.opener = opener;
  }

  /** What is being written, how far it is, and the way to stop it. */
  LongTask run() {
    return run;
  }

  /** Writes the session's report as HTML and PDF, and opens the page. */
  void writeReport() {
    SessionFolder folder = desk.folderProperty().get();
    if (folder == null) {
      return;
    }
    if (desk.hasToReadBlind()) {
      desk.fail("the report shows others’ marks: finish the trials that you read blind first");
      return;
    }
    start("the report", progress -> writeReport(folder, progress));
  }

  private Path writeReport(SessionFolder folder, Progress progress) throws UserError {
    return Reports.write(
            folder,
            null,
            Standards.of(desk.settings(), folder.folder()),
            AthleteProgress.beside(desk.settings(), folder.folder(), Progress.NONE).score(),
            Paper.A4,
            clock,
            progress)
        .files()
        .get(0);
  }

  /** Writes the reel of the open trial by the marks that are shown, and plays it. */
  void writeReel() {
    SessionFolder folder = desk.folderProperty().get();
    TrialId trial = desk.trialProperty().get();
    Reading shown = desk.marking().readingProperty().get();
    if (folder == null || trial == null || shown == null) {
      desk.fail("a reel shows marks: choose a trial that is marked");
      return;
    }
    Reels.Request wanted =
        new Reels.Request(trial, shown.reader(), Reels.View.HANDS_IF_KNOWN, true);
    Path file = folder.folder().resolve("report").resolve(trial.name() + "-reel.mp4");
    start(
        "the reel",
        progress -> {
          Reels.write(folder, wanted, file, progress);
          return file;
        });
  }

  private void start(String what, LongTask.Work<Path> work) {
    run.start(
        share -> String.format(Locale.ROOT, "Writing %s, %.0f %%", what, Math.floor(share * 100)),
        work,
        () -> {},
        file -> {
          desk.fail("Written: " + file);
          opener.accept(file);
        },
        problem -> desk.fail(message(problem)));
  }

  private static String message(Exception problem) {
    @Nullable String message = problem.getMessage();
    return message == null ? "it could not be written" : message;
  }
}
