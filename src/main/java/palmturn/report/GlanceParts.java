package palmturn.report;

import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.measure.Measures;
import palmturn.measure.TrialScore;

/** The headline figures of every trial, one row each. */
final class GlanceParts {
  private GlanceParts() {}

  static List<Page.GlanceRow> of(ReportInput input) {
    Readers readers = new Readers(input);
    return input.score().trials().stream().map(score -> row(score, readers, input)).toList();
  }

  private static Page.GlanceRow row(TrialScore score, Readers readers, ReportInput input) {
    Double cv = score.rhythm().steadyCvPct();
    String atMost = MeasureSentences.atMost(Measures.STEADY_CV, score).isEmpty() ? "" : "≤\u00A0";
    String doubles =
        score.accuracy().doubles() == 0
            ? ""
            : " + " + Figures.count(score.accuracy().doubles(), "double", "doubles");
    return new Page.GlanceRow(
        score.trial().name(),
        Words.capital(Words.trial(score.trial())) + pace(score, input),
        readers.of(score.trial(), score.reading()),
        score.accuracy().slaps() + doubles,
        number(score.speed().rateSlapsPerS(), 2),
        number(score.accuracy().cleanSharePct(), 0),
        cv == null ? Figures.NONE : atMost + Figures.number(cv, 1),
        score.endurance().slowDownPctPerS() == null
            ? Figures.NONE
            : Figures.signed(score.endurance().slowDownPctPerS(), 1),
        number(score.drift().elbowMaxCm(), 1));
  }

  private static String pace(TrialScore score, ReportInput input) {
    return input.trials().stream()
            .filter(filmed -> filmed.trial().id().equals(score.trial()))
            .anyMatch(filmed -> filmed.trial().paceSlapsPerS() != null)
        ? ", paced"
        : "";
  }

  private static String number(@Nullable Double value, int decimals) {
    return value == null ? Figures.NONE : Figures.number(value, decimals);
  }
}
