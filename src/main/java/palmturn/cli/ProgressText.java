package palmturn.cli;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.measure.ProgressScore;
import palmturn.measure.ProgressScore.Course;
import palmturn.measure.ProgressScore.Point;
import palmturn.measure.ProgressScore.Step;
import palmturn.measure.Quality;
import palmturn.numbers.Range;
import palmturn.wording.Figures;
import palmturn.wording.Names;
import palmturn.wording.VerdictLabel;

/** One athlete's sessions as tables of plain text. */
final class ProgressText {
  private ProgressText() {}

  static String of(ProgressScore score) {
    List<String> lines = new ArrayList<>();
    lines.add(score.athlete() + ", " + Figures.count(score.sessions(), "session"));
    for (Quality quality : Quality.values()) {
      List<Course> courses =
          score.courses().stream().filter(each -> each.quality() == quality).toList();
      if (!courses.isEmpty()) {
        lines.add("");
        lines.addAll(TextTable.lines(blocks(score, courses)));
      }
    }
    if (score.sessions() > 1) {
      lines.add("");
      lines.addAll(TextTable.lines(changes(score)));
      lines.add(
          "From the first session's first block to the last session's. Practice is in it, and");
      lines.add("the day: the noise is only how trials of one block differ.");
    } else {
      lines.add("");
      lines.add("One session only: a change wants a second one.");
    }
    lines.add("");
    lines.add("It measures a skill; it does not diagnose.");
    return String.join("\n", lines);
  }

  private static List<List<String>> blocks(ProgressScore score, List<Course> courses) {
    List<List<String>> rows = new ArrayList<>();
    List<String> heading = new ArrayList<>(List.of("date", "block", "drill before"));
    for (Course course : courses) {
      heading.add(course.hand().code() + " " + Names.measure(course.measure()));
      heading.add("noise");
    }
    rows.add(heading);
    for (int i = 0; i < score.steps().size(); i++) {
      Step step = score.steps().get(i);
      List<String> row =
          new ArrayList<>(
              List.of(
                  step.date().toString(),
                  step.block(),
                  step.drill() == null ? Figures.NONE : Names.drill(step.drill())));
      for (Course course : courses) {
        Point point = point(course, i);
        row.add(Figures.of(course.measure(), point == null ? null : Double.valueOf(point.mean())));
        row.add(
            Figures.of(
                course.measure(),
                point == null ? null : range(point.noiseLow(), point.noiseHigh())));
      }
      rows.add(row);
    }
    return rows;
  }

  private static List<List<String>> changes(ProgressScore score) {
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("quality", "hand", "change", "95 %", "typical error", "verdict"));
    for (Course course : score.courses()) {
      Quality quality = course.quality();
      rows.add(
          List.of(
              Names.qualityWithUnit(quality),
              course.hand().code(),
              Figures.difference(quality, course.change()),
              Figures.difference(quality, range(course.changeLow(), course.changeHigh())),
              course.typicalError() == null
                  ? Figures.NONE
                  : course.measure().form().size(course.typicalError()),
              VerdictLabel.of(course.verdict()).words()));
    }
    return rows;
  }

  private static @Nullable Range range(@Nullable Double low, @Nullable Double high) {
    return low == null || high == null ? null : new Range(low, high);
  }

  private static @Nullable Point point(Course course, int step) {
    return course.points().stream().filter(each -> each.step() == step).findFirst().orElse(null);
  }
}
