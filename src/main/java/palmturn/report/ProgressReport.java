package palmturn.report;

import gg.jte.output.StringOutput;
import java.awt.geom.Rectangle2D;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import palmturn.advise.Caution;
import palmturn.chart.ProgressChart;
import palmturn.measure.Limit;
import palmturn.measure.Limits;
import palmturn.measure.ProgressScore;
import palmturn.measure.ProgressScore.Step;
import palmturn.measure.Quality;
import palmturn.trial.Drill;
import palmturn.trial.Hand;
import palmturn.wording.CourseSentences;
import palmturn.wording.Figures;
import palmturn.wording.Names;

/** Makes the page of one athlete's progress over sessions, which fetches nothing. */
public final class ProgressReport {
  private static final double WIDTH = 720;

  private ProgressReport() {}

  /**
   * Returns the page as HTML; the same input gives the same text.
   *
   * @param unread a line for each session that could not be followed
   */
  public static String html(
      ProgressScore score, List<String> unread, Limits limits, Instant madeAt) {
    StringOutput out = new StringOutput();
    Map<String, Object> params =
        Map.of("page", page(score, unread, limits, madeAt), "charts", (Chart.Markup) Chart::svg);
    Report.TEMPLATES.render("progress.jte", params, out);
    return out.toString();
  }

  private static ProgressPage page(
      ProgressScore score, List<String> unread, Limits limits, Instant madeAt) {
    return new ProgressPage(
        Style.screen(),
        score.athlete() + ", progress",
        intro(score),
        parts(score, limits),
        score.steps().stream().map(ProgressReport::drill).filter(Objects::nonNull).toList(),
        unread,
        CourseSentences.KEY,
        Caution.all(),
        "Made by Palmturn on " + Names.date(madeAt) + ".");
  }

  /** Returns a part for each quality that was told in any session. */
  static List<ProgressPage.Part> parts(ProgressScore score, Limits limits) {
    List<ProgressPage.Part> parts = new ArrayList<>();
    for (Quality quality : Quality.values()) {
      if (score.courses().stream().anyMatch(course -> course.quality() == quality)) {
        parts.add(part(score, quality, limits));
      }
    }
    return parts;
  }

  static String intro(ProgressScore score) {
    List<Step> steps = score.steps();
    String first = Names.date(steps.get(0).date());
    return score.sessions() == 1
        ? "One session, of %s: a change wants a second one.".formatted(first)
        : "%s, from %s to %s. Each change is from the first session’s first block to the last session’s."
            .formatted(
                Figures.count(score.sessions(), "session"),
                first,
                Names.date(steps.get(steps.size() - 1).date()));
  }

  private static ProgressPage.Part part(ProgressScore score, Quality quality, Limits limits) {
    List<String> sentences = new ArrayList<>();
    for (Hand hand : List.of(Hand.LEFT, Hand.RIGHT)) {
      score.course(hand, quality).ifPresent(course -> sentences.add(CourseSentences.of(course)));
    }
    Limit limit = limits.of(quality);
    Double value = limit == null ? null : limit.value();
    String name = quality.shownName();
    return new ProgressPage.Part(
        name,
        Names.headline(quality),
        sentences,
        new Chart(
            "progress-" + quality.code(),
            name + ". " + String.join(" ", sentences),
            WIDTH,
            ProgressChart.HEIGHT,
            (g, palette) ->
                ProgressChart.paint(
                    g,
                    new Rectangle2D.Double(0, 0, WIDTH, ProgressChart.HEIGHT),
                    score,
                    quality,
                    value,
                    palette)));
  }

  private static @Nullable String drill(Step step) {
    Drill drill = step.drill();
    if (drill == null) {
      return null;
    }
    String dose = drill.dose().isBlank() ? "" : " (" + drill.dose() + ")";
    return "%s, before %s: %s%s"
        .formatted(Names.date(step.date()), Names.block(step.block()), Names.drill(drill), dose);
  }
}
