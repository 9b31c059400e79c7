package palmturn.work;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import palmturn.advise.DrillLibrary;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFacts;
import palmturn.clip.ClipFile;
import palmturn.measure.SessionScore;
import palmturn.report.MarksCsv;
import palmturn.report.Report;
import palmturn.report.ReportInput;
import palmturn.report.WebVtt;
import palmturn.store.SessionFolder;
import palmturn.trial.Reading;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

/** Writes the report of a session. */
public final class Reports {
  private Reports() {}

  /**
   * Writes {@code report/report.html} into the session, and each scored reading's marks beside it
   * as CSV and as captions.
   *
   * @param reader as in {@link Scoring#score}
   * @param library the drills to choose from
   * @return where the page lies
   */
  public static Path write(
      SessionFolder folder,
      @Nullable String reader,
      DrillLibrary library,
      Clock clock,
      Progress progress)
      throws UserError {
    SessionScore score = Scoring.score(folder, reader);
    Path reports = folder.folder().resolve("report");
    Path page = reports.resolve("report.html");
    try (ClipStills stills = new ClipStills()) {
      List<ReportInput.Filmed> filmed = filmed(folder, reader, stills, progress);
      if (progress.stopped()) {
        throw new UserError("stopped; no report was written");
      }
      progress.at(0.5, "drawing");
      String html =
          Report.html(
              new ReportInput(
                  folder.session(),
                  filmed,
                  score,
                  Scoring.limits(),
                  Drills.training(score, library, warnings(filmed)),
                  stills,
                  clock.instant()));
      Files.createDirectories(reports);
      replace(page, html);
      for (ReportInput.Filmed each : filmed) {
        Reading reading = each.reading();
        if (reading != null) {
          String name = each.trial().id().name();
          replace(reports.resolve(name + ".csv"), MarksCsv.write(reading));
          replace(reports.resolve(name + ".vtt"), WebVtt.write(name, reading));
        }
      }
      progress.at(1, "done");
    } catch (IOException e) {
      throw new UserError(
          "%s can't be written (%s): is the folder read-only, or the disk full?"
              .formatted(page, e.getMessage()),
          e);
    }
    return page;
  }

  private static List<ReportInput.Filmed> filmed(
      SessionFolder folder, @Nullable String reader, ClipStills stills, Progress progress) {
    List<Trial> trials = folder.trials();
    List<ReportInput.Filmed> filmed = new ArrayList<>();
    for (Trial trial : trials) {
      progress.at(0.5 * filmed.size() / trials.size(), trial.id().name());
      ReportInput.Clip facts = null;
      try {
        ClipFile clip = ClipFile.open(folder.clipPath(trial));
        facts = form(clip.facts());
        stills.add(trial.id(), clip);
      } catch (ClipException e) {
        // The page says that this clip can't be opened, and shows the figures all the same.
        facts = null;
      }
      filmed.add(
          new ReportInput.Filmed(
              trial, Scoring.choice(reader).of(trial), facts, Settling.beside(trial)));
    }
    return filmed;
  }

  private static Map<TrialId, List<String>> warnings(List<ReportInput.Filmed> filmed) {
    Map<TrialId, List<String>> warnings = new HashMap<>();
    for (ReportInput.Filmed each : filmed) {
      if (each.clip() != null) {
        warnings.put(each.trial().id(), each.clip().warnings());
      }
    }
    return warnings;
  }

  private static ReportInput.Clip form(ClipFacts facts) {
    return new ReportInput.Clip(
        facts.width(),
        facts.height(),
        facts.durationS(),
        facts.meanFps(),
        facts.variableRate(),
        facts.captureFps(),
        facts.sound() != null,
        facts.warnings());
  }

  /** Writes beside and moves into place, so that a reader never sees half a page. */
  private static void replace(Path file, String text) throws IOException {
    Path part = file.resolveSibling(file.getFileName() + ".part");
    Files.writeString(part, text, StandardCharsets.UTF_8);
    Files.move(part, file, StandardCopyOption.REPLACE_EXISTING);
  }
}
