package palmturn.report;

import java.util.List;
import palmturn.measure.Measures;
import palmturn.measure.Phrases;
import palmturn.measure.TrialScore;
import palmturn.wording.Figures;
import palmturn.wording.Names;

/** The headline figures of every trial, one row each. */
final class GlanceRows {
  private GlanceRows() {}

  static List<Page.GlanceRow> of(ReportInput input) {
    MarkOrigin readers = new MarkOrigin(input);
    return input.score().trials().stream().map(score -> row(score, readers, input)).toList();
  }

  private static Page.GlanceRow row(TrialScore score, MarkOrigin readers, ReportInput input) {
    int doubles = score.accuracy().doubles();
    return new Page.GlanceRow(
        score.trial().name(),
        Phrases.capital(Names.trial(score.trial())) + pace(score, input),
        readers.of(score.trial(), score.reading()),
        score.accuracy().slaps() + (doubles == 0 ? "" : " + " + Figures.count(doubles, "double")),
        Figures.of(Measures.RATE, score),
        Figures.of(Measures.CLEAN_SHARE, score),
        Figures.of(Measures.STEADY_CV, score),
        Figures.of(Measures.SLOW_DOWN, score),
        Figures.of(Measures.ELBOW_MAX, score));
  }

  private static String pace(TrialScore score, ReportInput input) {
    return input.trials().stream()
            .filter(filmed -> filmed.trial().id().equals(score.trial()))
            .anyMatch(filmed -> filmed.trial().paceSlapsPerS() != null)
        ? ", paced"
        : "";
  }
}
