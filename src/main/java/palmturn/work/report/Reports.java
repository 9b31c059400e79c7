package palmturn.work.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.Progress;
import palmturn.measure.ProgressScore;
import palmturn.measure.SessionScore;
import palmturn.report.MarksCsv;
import palmturn.report.Paper;
import palmturn.report.Report;
import palmturn.report.ReportInput;
import palmturn.report.WebVtt;
import palmturn.store.SessionFolder;
import palmturn.trial.ClipFacts;
import palmturn.trial.Reading;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.trial.UserError;
import palmturn.work.WorkFile;
import palmturn.work.score.Drills;
import palmturn.work.score.LastSettled;
import palmturn.work.score.Scoring;
import palmturn.work.score.Standards;

/** The report of a session, and its files. */
public final class Reports {
  private Reports() {}

  /**
   * Where a report lies.
   *
   * @param page the HTML page
   * @param pdf the same as PDF, null where none was asked for
   */
  public record Written(Path page, @Nullable Path pdf) {
    /** Returns the files that are meant to be opened. */
    public List<Path> files() {
      return pdf == null ? List.of(page) : List.of(page, pdf);
    }
  }

  /**
   * Writes {@code report/report.html} into the session, {@code report/report.pdf} where it is asked
   * for, and each scored reading's marks beside them as CSV and as captions.
   *
   * @param reader as in {@link Scoring#score}
   * @param standards that hold for the session
   * @param over the athlete over several sessions, this one among them; null for this one alone
   * @param paper what to lay the PDF out for; null for no PDF
   */
  public static Written write(
      SessionFolder folder,
      @Nullable String reader,
      Standards standards,
      @Nullable ProgressScore over,
      @Nullable Paper paper,
      Clock clock,
      Progress progress)
      throws UserError {
    SessionScore score = Scoring.score(folder, reader, standards.limits());
    Path reports = folder.folder().resolve("report");
    Path page = reports.resolve("report.html");
    Path pdf = paper == null ? null : reports.resolve("report.pdf");
    try (ClipStills stills = new ClipStills()) {
      List<ReportInput.Filmed> filmed = filmed(folder, reader, stills, progress);
      refuseStopped(progress);
      progress.at(0.3, "pictures");
      Report report =
          Report.of(
              new ReportInput(
                  folder.session(),
                  filmed,
                  score,
                  standards.limits(),
                  Drills.training(score, standards, over, warnings(filmed)),
                  over,
                  stills,
                  clock.instant()));
      refuseStopped(progress);
      progress.at(0.6, "drawing");
      Files.createDirectories(reports);
      replace(page, report.html().getBytes(StandardCharsets.UTF_8));
      if (paper != null && pdf != null) {
        progress.at(0.7, "laying out the PDF");
        replace(pdf, report.pdf(paper));
      }
      for (ReportInput.Filmed each : filmed) {
        Reading reading = each.reading();
        if (reading != null) {
          String name = each.trial().id().name();
          replace(
              reports.resolve(name + ".csv"),
              MarksCsv.write(reading).getBytes(StandardCharsets.UTF_8));
          replace(
              reports.resolve(name + ".vtt"),
              WebVtt.write(name, reading).getBytes(StandardCharsets.UTF_8));
        }
      }
      progress.at(1, "done");
    } catch (IOException e) {
      throw new UserError(
          "%s can't be written (%s): is the folder read-only, or the disk full?"
              .formatted(reports, e.getMessage()),
          e);
    }
    return new Written(page, pdf);
  }

  private static void refuseStopped(Progress progress) throws UserError {
    if (progress.stopped()) {
      throw new UserError("stopped; no report was written");
    }
  }

  private static List<ReportInput.Filmed> filmed(
      SessionFolder folder, @Nullable String reader, ClipStills stills, Progress progress) {
    List<Trial> trials = folder.trials();
    List<ReportInput.Filmed> filmed = new ArrayList<>();
    for (Trial trial : trials) {
      progress.at(0.3 * filmed.size() / trials.size(), trial.id().name());
      ClipFacts facts = null;
      try {
        ClipFile clip = ClipFile.open(folder.clipPath(trial));
        facts = clip.facts();
        stills.add(trial.id(), clip);
      } catch (ClipException e) {
        // The page says that this clip can't be opened, and shows the figures all the same.
        facts = null;
      }
      filmed.add(
          new ReportInput.Filmed(
              trial, Scoring.choice(reader).of(trial), facts, LastSettled.orUnsettled(trial)));
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

  /** Writes beside and moves into place, so that a reader never sees half a page. */
  private static void replace(Path file, byte[] bytes) throws IOException {
    try (WorkFile part = WorkFile.file(file)) {
      Files.write(part.path(), bytes);
      part.moveTo(file);
    }
  }
}
