package palmturn.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import palmturn.measure.ProgressScore.Course;
import palmturn.measure.ProgressScore.Point;
import palmturn.measure.ProgressScore.Step;
import palmturn.numbers.Quantiles;
import palmturn.numbers.Range;
import palmturn.numbers.Stats;
import palmturn.trial.Block;
import palmturn.trial.Hand;
import palmturn.trial.Session;

/** Follows one athlete over sessions, with all history's typical error for the noise. */
public final class Courses {
  private final Limits.Margins margins;
  private final List<Step> steps = new ArrayList<>();

  /** The free trials of each step. */
  private final List<List<TrialScore>> scores = new ArrayList<>();

  /** A session and its figures. */
  public record Scored(Session session, SessionScore score) {}

  private Courses(List<Scored> sessions, Limits.Margins margins) {
    this.margins = margins;
    List<Scored> inOrder =
        sessions.stream().sorted(Comparator.comparing(each -> each.session().date())).toList();
    for (int i = 0; i < inOrder.size(); i++) {
      add(i, inOrder.get(i));
    }
  }

  /**
   * Returns one athlete's progress, trials to a click track left out.
   *
   * @param sessions all of one athlete, in any order; those of one day stay as they are given
   * @throws IllegalArgumentException if they are of several athletes
   */
  public static ProgressScore of(List<Scored> sessions, Limits.Margins margins) {
    List<String> athletes =
        sessions.stream().map(each -> each.session().athlete()).distinct().toList();
    if (athletes.size() != 1) {
      throw new IllegalArgumentException("progress is of one athlete, not of " + athletes);
    }
    Courses all = new Courses(sessions, margins);
    List<Course> courses = new ArrayList<>();
    for (Quality quality : Quality.values()) {
      for (Hand hand : List.of(Hand.RIGHT, Hand.LEFT)) {
        Course course = all.course(hand, quality);
        if (course != null) {
          courses.add(course);
        }
      }
    }
    return new ProgressScore(athletes.get(0), all.steps, courses);
  }

  private void add(int index, Scored scored) {
    List<TrialScore> free =
        scored.score().trials().stream().filter(each -> each.paceSlapsPerS() == null).toList();
    free.stream()
        .map(each -> each.trial().block())
        .distinct()
        .sorted(Comparator.comparingInt(Block::order))
        .forEach(
            block -> {
              Session session = scored.session();
              steps.add(
                  new Step(
                      index,
                      session.date(),
                      block,
                      session.block(block).map(Block::drill).orElse(null)));
              scores.add(free.stream().filter(each -> each.trial().block().equals(block)).toList());
            });
  }

  private @Nullable Course course(Hand hand, Quality quality) {
    Measure measure = Measures.headline(quality);
    List<List<TrialScore>> trials =
        scores.stream()
            .map(all -> all.stream().filter(each -> each.trial().hand() == hand).toList())
            .toList();
    double[][] values =
        trials.stream().map(each -> Contrast.values(measure, each)).toArray(double[][]::new);
    int[] filled = IntStream.range(0, values.length).filter(i -> values[i].length > 0).toArray();
    if (filled.length == 0) {
      return null;
    }
    int first = filled[0];
    int lastSession = steps.get(filled[filled.length - 1]).session();
    int last =
        IntStream.of(filled).filter(i -> steps.get(i).session() == lastSession).min().orElseThrow();
    Noise noise = Noise.of(values);
    List<Point> points = new ArrayList<>();
    for (int i : filled) {
      Range range = i == first ? null : noise.about(values[first], values[first], values[i]);
      points.add(
          new Point(
              i,
              Objects.requireNonNull(Stats.mean(values[i])),
              DoubleStream.of(values[i]).boxed().toList(),
              range == null ? null : range.low(),
              range == null ? null : range.high()));
    }
    List<Contrast.Group> groups =
        List.of(new Contrast.Group(1, trials.get(last)), new Contrast.Group(-1, trials.get(first)));
    boolean change =
        steps.get(first).session() != lastSession && Contrast.COMPARED.contains(quality);
    Contrast contrast =
        change
            ? Contrast.of(quality, margins, groups, noise.difference(values[last], values[first]))
            : Contrast.CANNOT_TELL;
    Range range = contrast.range95();
    return new Course(
        hand,
        quality,
        measure,
        noise.typicalError(),
        points,
        contrast.value(),
        range == null ? null : range.low(),
        range == null ? null : range.high(),
        contrast.margin(),
        Retests.verdict(contrast.outcome()));
  }

  /**
   * The spread of the trials of one block.
   *
   * @param typicalError their SD, pooled over all blocks; null where no block has two trials
   * @param freedom degrees of freedom behind it
   */
  private record Noise(@Nullable Double typicalError, int freedom) {
    static Noise of(double[][] blocks) {
      int freedom = 0;
      for (double[] block : blocks) {
        freedom += Math.max(0, block.length - 1);
      }
      return new Noise(Stats.pooledSd(blocks), freedom);
    }

    /** Mean of the centre ± t·typical error·√(1/n + 1/m). */
    @Nullable Range about(double[] centre, double[] a, double[] b) {
      if (typicalError == null) {
        return null;
      }
      double mean = Objects.requireNonNull(Stats.mean(centre));
      double half =
          Quantiles.t(0.975, freedom) * typicalError * Math.sqrt(1.0 / a.length + 1.0 / b.length);
      return new Range(mean - half, mean + half);
    }

    @Nullable Range difference(double[] last, double[] first) {
      Range about = about(last, last, first);
      double from = Objects.requireNonNull(Stats.mean(first));
      return about == null ? null : new Range(about.low() - from, about.high() - from);
    }
  }
}
