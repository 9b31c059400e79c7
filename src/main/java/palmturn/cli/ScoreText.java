package palmturn.cli;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.advise.Training;
import palmturn.measure.CeilingScore;
import palmturn.measure.HandMeasure;
import palmturn.measure.Measures;
import palmturn.measure.Quality;
import palmturn.measure.SessionScore;
import palmturn.measure.SideScore;
import palmturn.measure.TrialScore;
import palmturn.numbers.Range;
import palmturn.wording.Figures;
import palmturn.wording.Names;
import palmturn.wording.VerdictLabel;

/** A session's figures as tables of plain text. */
final class ScoreText {
  private ScoreText() {}

  static String of(SessionScore score, Training training) {
    List<String> lines = new ArrayList<>();
    lines.add(score.athlete() + ", " + score.date());
    lines.add("");
    lines.addAll(TextTable.lines(trials(score.trials())));
    if (!score.sides().isEmpty()) {
      lines.add("");
      lines.addAll(TextTable.lines(sides(score.sides())));
    }
    if (!score.retest().isEmpty()) {
      lines.addAll(RetestText.lines(score.retest()));
    }
    if (!score.ceilings().isEmpty()) {
      lines.add("");
      lines.addAll(TextTable.lines(ceilings(score.ceilings())));
    }
    if (score.trials().stream().anyMatch(trial -> trial.paceSlapsPerS() != null)) {
      lines.add("");
      lines.add("Trials to a click track serve the clean ceiling and nothing else.");
    }
    if (score.trials().stream().anyMatch(trial -> Figures.atMost(Measures.STEADY_CV, trial))) {
      lines.add("");
      lines.add("CV with ≤: near the timing floor, so at most that.");
    }
    lines.add("");
    lines.addAll(TrainText.lines(training));
    lines.add("");
    lines.add("It measures a skill; it does not diagnose.");
    return String.join("\n", lines);
  }

  private static List<List<String>> trials(List<TrialScore> scores) {
    List<List<String>> rows = new ArrayList<>();
    rows.add(
        List.of(
            "trial",
            "reading",
            "slaps",
            "doubles",
            Names.headline(Quality.SPEED),
            Names.headline(Quality.ACCURACY),
            Names.headline(Quality.RHYTHM),
            Names.headline(Quality.ENDURANCE),
            "timed by"));
    for (TrialScore score : scores) {
      rows.add(
          List.of(
              name(score),
              score.reading(),
              String.valueOf(score.accuracy().slaps()),
              String.valueOf(score.accuracy().doubles()),
              Figures.of(Measures.RATE, score),
              Figures.of(Measures.CLEAN_SHARE, score),
              Figures.of(Measures.STEADY_CV, score),
              Figures.of(Measures.SLOW_DOWN, score),
              score.rhythm().timedBy() == null ? Figures.NONE : score.rhythm().timedBy().code()));
    }
    return rows;
  }

  private static String name(TrialScore score) {
    Double pace = score.paceSlapsPerS();
    return pace == null
        ? score.trial().name()
        : score.trial().name() + ", to a click at " + Figures.number(pace, 1);
  }

  private static List<List<String>> sides(List<SideScore> sides) {
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("block", "quality", "right", "left", "right − left", "95 %", "verdict"));
    for (SideScore side : sides) {
      rows.add(
          List.of(
              side.block(),
              Names.qualityWithUnit(side.quality()),
              Figures.of(side.measure(), side.right()),
              Figures.of(side.measure(), side.left()),
              Figures.difference(side.quality(), side.difference()),
              Figures.difference(side.quality(), side.difference95()),
              VerdictLabel.of(side.verdict()).words()));
    }
    return rows;
  }

  private static List<List<String>> ceilings(List<CeilingScore> scores) {
    HandMeasure measure = HandMeasure.CLEAN_CEILING;
    List<List<String>> rows = new ArrayList<>();
    rows.add(
        List.of(
            "hand",
            measure.name() + ", " + measure.unit(),
            "95 %",
            "rates filmed",
            "trials",
            "to a click",
            "verdict"));
    for (CeilingScore score : scores) {
      rows.add(
          List.of(
              score.hand().code(),
              ceiling(measure.value(score)),
              ceilingRange(score),
              score.filmedSlapsPerS() == null
                  ? Figures.NONE
                  : measure.form().text(score.filmedSlapsPerS()),
              String.valueOf(score.trials()),
              String.valueOf(score.paced()),
              score.outcome().code().replace('-', ' ')));
    }
    return rows;
  }

  /** An end that lies outside the rates filmed is left open. */
  private static String ceilingRange(CeilingScore score) {
    Double low = score.lowSlapsPerS();
    Double high = score.highSlapsPerS();
    if (low == null) {
      return high == null ? Figures.NONE : "up to " + ceiling(high);
    }
    return high == null
        ? "from " + ceiling(low)
        : HandMeasure.CLEAN_CEILING.form().text(new Range(low, high));
  }

  private static String ceiling(@Nullable Double slapsPerS) {
    return slapsPerS == null ? Figures.NONE : HandMeasure.CLEAN_CEILING.form().text(slapsPerS);
  }
}
