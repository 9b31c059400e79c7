package palmturn.cli;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.measure.ProgressScore;
import palmturn.measure.ProgressScore.Course;
import palmturn.measure.ProgressScore.Point;
import palmturn.measure.ProgressScore.Step;
import palmturn.measure.Quality;

/** One athlete's sessions as tables of plain text. */
final class ProgressText {
  private ProgressText() {}

  static String of(ProgressScore score) {
    List<String> lines = new ArrayList<>();
    lines.add(
        "%s, %d %s"
            .formatted(
                score.athlete(), score.sessions(), score.sessions() == 1 ? "session" : "sessions"));
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
      String unit = course.measure().unit();
      heading.add(
          "%s %s%s"
              .formatted(
                  course.hand().code(),
                  course.measure().name(),
                  unit.isEmpty() ? "" : ", " + unit));
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
                  step.drill() == null
                      ? FigureText.NONE
                      : step.drill().code() + ", " + step.drill().hand().code()));
      for (Course course : courses) {
        Point point = point(course, i);
        int digits = digits(course.quality());
        row.add(FigureText.number(point == null ? null : point.mean(), digits));
        row.add(
            point == null ? FigureText.NONE : range(point.noiseLow(), point.noiseHigh(), digits));
      }
      rows.add(row);
    }
    return rows;
  }

  private static List<List<String>> changes(ProgressScore score) {
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("quality", "hand", "change", "95 %", "typical error", "verdict"));
    for (Course course : score.courses()) {
      int digits = digits(course.quality());
      rows.add(
          List.of(
              course.quality().code(),
              course.hand().code(),
              FigureText.number(course.change(), digits),
              range(course.changeLow(), course.changeHigh(), digits),
              FigureText.number(course.typicalError(), digits),
              course.verdict().code()));
    }
    return rows;
  }

  private static @Nullable Point point(Course course, int step) {
    return course.points().stream().filter(each -> each.step() == step).findFirst().orElse(null);
  }

  private static int digits(Quality quality) {
    return quality == Quality.SPEED ? 2 : 1;
  }

  private static String range(@Nullable Double low, @Nullable Double high, int digits) {
    return low == null || high == null
        ? FigureText.NONE
        : FigureText.number(low, digits) + " to " + FigureText.number(high, digits);
  }
}
