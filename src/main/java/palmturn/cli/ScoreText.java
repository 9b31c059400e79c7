package palmturn.cli;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.measure.CeilingScore;
import palmturn.measure.HandMeasure;
import palmturn.measure.Measure;
import palmturn.measure.Quality;
import palmturn.measure.RetestScore;
import palmturn.measure.SessionScore;
import palmturn.measure.SideScore;
import palmturn.measure.TrialScore;
import palmturn.numbers.Range;

/** A session's figures as tables of plain text. */
final class ScoreText {
  private static final String NONE = FigureText.NONE;
  private static final String AT_MOST = "≤ ";

  private ScoreText() {}

  static String of(SessionScore score) {
    List<String> lines = new ArrayList<>();
    lines.add(score.athlete() + ", " + score.date());
    lines.add("");
    lines.addAll(TextTable.lines(trials(score.trials())));
    if (!score.sides().isEmpty()) {
      lines.add("");
      lines.addAll(TextTable.lines(sides(score.sides())));
    }
    if (!score.retest().isEmpty()) {
      lines.add("");
      lines.addAll(TextTable.lines(retest(score.retest())));
      lines.add("Practice alone improves scores: only the net change may be the drill's.");
    }
    if (!score.ceilings().isEmpty()) {
      lines.add("");
      lines.addAll(TextTable.lines(ceilings(score.ceilings())));
    }
    lines.add("");
    if (score.trials().stream().anyMatch(trial -> trial.paceSlapsPerS() != null)) {
      lines.add("Trials to a click track serve the clean ceiling and nothing else.");
    }
    if (score.trials().stream().anyMatch(trial -> steady(trial).startsWith(AT_MOST))) {
      lines.add("CV with ≤: no finer than the marks' timing allows, so at most that.");
    }
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
      int digits = digits(side.quality());
      rows.add(
          List.of(
              side.block(),
              named(side.measure()),
              FigureText.number(side.right(), digits),
              FigureText.number(side.left(), digits),
              FigureText.number(side.difference(), digits),
              range(side.difference95(), digits),
              side.verdict().code()));
    }
    return rows;
  }

  private static List<List<String>> retest(List<RetestScore> changes) {
    List<List<String>> rows = new ArrayList<>();
    rows.add(
        List.of(
            "block",
            "hand",
            "quality",
            "before",
            "after",
            "change",
            "95 %",
            "verdict",
            "drill",
            "against",
            "net change",
            "95 %",
            "drill's verdict"));
    for (RetestScore change : changes) {
      int digits = digits(change.quality());
      boolean controlled = change.control() != RetestScore.Control.NONE;
      rows.add(
          List.of(
              change.block(),
              change.hand().code(),
              named(change.measure()),
              FigureText.number(change.before(), digits),
              FigureText.number(change.after(), digits),
              FigureText.number(change.difference(), digits),
              range(change.difference95(), digits),
              change.verdict().code(),
              change.drill() == null ? NONE : change.drill(),
              controlled ? change.control().code() : "no control",
              FigureText.number(change.netDifference(), digits),
              range(change.net95(), digits),
              controlled ? change.netVerdict().code() : NONE));
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
              range(score.filmedSlapsPerS(), 1),
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
    return high == null ? "from " + FigureText.number(low, 1) : range(new Range(low, high), 1);
  }

  private static String named(Measure measure) {
    return measure.name() + (measure.unit().isEmpty() ? "" : ", " + measure.unit());
  }

  private static int digits(Quality quality) {
    return quality == Quality.SPEED ? 2 : 1;
  }

  private static String range(@Nullable Range range, int digits) {
    return range == null
        ? NONE
        : FigureText.number(range.low(), digits) + " to " + FigureText.number(range.high(), digits);
  }
}
