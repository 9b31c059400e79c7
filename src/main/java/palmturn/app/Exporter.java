package palmturn.app;

import java.nio.file.Path;
import java.time.Clock;
import java.util.Locale;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import palmturn.app.desk.Notices;
import palmturn.app.desk.OpenSession;
import palmturn.app.marking.Marking;
import palmturn.app.tasks.LongTask;
import palmturn.clip.Progress;
import palmturn.report.Paper;
import palmturn.store.SessionFolder;
import palmturn.trial.Reading;
import palmturn.trial.TrialId;
import palmturn.trial.UserError;
import palmturn.work.reel.Reels;
import palmturn.work.report.Reports;
import palmturn.work.score.AthleteProgress;
import palmturn.work.score.Standards;

/**
 * Writes the session's report and a trial's reel, and shows them.
 *
 * @param settings the folder of the user's settings
 * @param opener shows a file by the program that the computer has for it
 */
record Exporter(
    Path settings,
    OpenSession session,
    Marking marking,
    Notices notices,
    LongTask run,
    Clock clock,
    Consumer<Path> opener) {
  /** Writes the session's report as HTML and PDF, and opens the page. */
  void writeReport() {
    SessionFolder folder = session.folder();
    if (folder == null) {
      return;
    }
    if (session.hasToReadBlind()) {
      notices.warn("the report shows others’ marks: finish the trials that you read blind first");
      return;
    }
    start("the report", progress -> writeReport(folder, progress));
  }

  private Path writeReport(SessionFolder folder, Progress progress) throws UserError {
    return Reports.write(
            folder,
            null,
            Standards.of(settings, folder.folder()),
            AthleteProgress.beside(settings, folder.folder(), Progress.NONE).score(),
            Paper.A4,
            clock,
            progress)
        .files()
        .get(0);
  }

  /** Writes the reel of the open trial by the marks that are shown, and plays it. */
  void writeReel() {
    SessionFolder folder = session.folder();
    TrialId trial = session.trialId();
    Reading shown = marking.readingProperty().get();
    if (folder == null || trial == null || shown == null) {
      notices.warn("a reel shows marks: choose a trial that is marked");
      return;
    }
    Reels.ReelRequest wanted =
        new Reels.ReelRequest(trial, shown.reader(), Reels.View.HANDS_IF_KNOWN, true);
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
          notices.confirm("Written: " + file);
          opener.accept(file);
        },
        problem -> notices.fail(message(problem)));
  }

  private static String message(Exception problem) {
    @Nullable String message = problem.getMessage();
    return message == null ? "it could not be written" : message;
  }
}
