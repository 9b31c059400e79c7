package palmturn.cli;

import java.util.ArrayList;
import java.util.List;
import palmturn.advise.Training;
import palmturn.measure.CeilingScore;
import palmturn.measure.HandMeasure;
import palmturn.measure.SessionScore;
import palmturn.measure.SideScore;
import palmturn.measure.TrialScore;
import palmturn.numbers.Range;

/** A session's figures as tables of plain text. */
final class ScoreText {
  private static final String NONE = FigureText.NONE;
  private static final String AT_MOST = "≤ ";

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
    if (score.trials().stream().anyMatch(trial -> steady(trial).startsWith(AT_MOST))) {
      lines.add("");
      lines.add("CV with ≤: no finer than the marks' timing allows, so at most that.");
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
            "slaps/s",
            "clean %",
            "steady CV %",
            "slow-down %/s",
            "timed by"));
    for (TrialScore score : scores) {
      rows.add(
          List.of(
              name(score),
              score.reading(),
              String.valueOf(score.accuracy().slaps()),
              String.valueOf(score.accuracy().doubles()),
              FigureText.number(score.speed().rateSlapsPerS(), 2),
              FigureText.number(score.accuracy().cleanSharePct(), 0),
              steady(score),
              FigureText.number(score.endurance().slowDownPctPerS(), 1),
              score.rhythm().timedBy() == null ? NONE : score.rhythm().timedBy().code()));
    }
    return rows;
  }

  private static String name(TrialScore score) {
    Double pace = score.paceSlapsPerS();
    return pace == null
        ? score.trial().name()
        : score.trial().name() + ", to a click at " + FigureText.number(pace, 1);
  }

  private static String steady(TrialScore score) {
    Double cv = score.rhythm().steadyCvPct();
    return cv == null || score.rhythm().resolves(cv)
        ? FigureText.number(cv, 1)
        : AT_MOST + FigureText.number(cv, 1);
  }

  private static List<List<String>> sides(List<SideScore> sides) {
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("block", "quality", "right", "left", "right − left", "95 %", "verdict"));
    for (SideScore side : sides) {
      int digits = FigureText.digits(side.quality());
      rows.add(
          List.of(
              side.block(),
              FigureText.named(side.measure()),
              FigureText.number(side.right(), digits),
              FigureText.number(side.left(), digits),
              FigureText.number(side.difference(), digits),
              FigureText.range(side.difference95(), digits),
              side.verdict().code()));
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
              FigureText.number(measure.value(score), 1),
              ceilingRange(score),
              FigureText.range(score.filmedSlapsPerS(), 1),
              String.valueOf(score.trials()),
              String.valueOf(score.paced()),
              score.outcome().code()));
    }
    return rows;
  }

  /** An end that lies outside the rates filmed is left open. */
  private static String ceilingRange(CeilingScore score) {
    Double low = score.lowSlapsPerS();
    Double high = score.highSlapsPerS();
    if (low == null) {
      return high == null ? NONE : "up to " + FigureText.number(high, 1);
    }
    return high == null
        ? "from " + FigureText.number(low, 1)
        : FigureText.range(new Range(low, high), 1);
  }
}
