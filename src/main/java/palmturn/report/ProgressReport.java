package palmturn.report;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.awt.geom.Rectangle2D;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import palmturn.advise.Caution;
import palmturn.chart.ProgressCaption;
import palmturn.chart.ProgressChart;
import palmturn.measure.Limit;
import palmturn.measure.Limits;
import palmturn.measure.Measures;
import palmturn.measure.ProgressScore;
import palmturn.measure.ProgressScore.Step;
import palmturn.measure.Quality;
import palmturn.trial.Drill;
import palmturn.trial.Hand;

/** Makes the page of one athlete's progress over sessions, which fetches nothing. */
public final class ProgressReport {
  private static final TemplateEngine TEMPLATES =
      TemplateEngine.createPrecompiled(
          null, ContentType.Html, ProgressReport.class.getClassLoader(), "palmturn.report.pages");
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
    TEMPLATES.render("progress.jte", params, out);
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
        ProgressCaption.KEY,
        Caution.all(),
        "Made by Palmturn on " + Words.date(madeAt) + ".");
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
    String first = Words.date(steps.get(0).date());
    return score.sessions() == 1
        ? "One session, of %s: a change wants a second one.".formatted(first)
        : "%s, from %s to %s. Each change is from the first session’s first block to the last session’s."
            .formatted(
                Figures.count(score.sessions(), "session", "sessions"),
                first,
                Words.date(steps.get(steps.size() - 1).date()));
  }

  private static ProgressPage.Part part(ProgressScore score, Quality quality, Limits limits) {
    List<String> sentences = new ArrayList<>();
    for (Hand hand : List.of(Hand.LEFT, Hand.RIGHT)) {
      score
          .course(hand, quality)
          .ifPresent(course -> sentences.add(ProgressCaption.describeChange(course)));
    }
    Limit limit = limits.of(quality);
    Double value = limit == null ? null : limit.value();
    String name = Words.quality(quality);
    return new ProgressPage.Part(
        name,
        Measures.headline(quality).name() + ", " + Measures.headline(quality).unit(),
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
    String hand =
        switch (drill.hand()) {
          case LEFT -> ", left hand";
          case RIGHT -> ", right hand";
          case BOTH -> ", both hands";
          case NONE -> "";
        };
    String dose = drill.dose().isBlank() ? "" : " (" + drill.dose() + ")";
    return "%s, before %s: %s%s%s"
        .formatted(
            Words.date(step.date()),
            Words.block(step.block()),
            drill.code().replace('-', ' '),
            hand,
            dose);
  }
}
