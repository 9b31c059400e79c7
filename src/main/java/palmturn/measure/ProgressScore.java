package palmturn.measure;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Drill;
import palmturn.trial.Hand;

/**
 * One athlete over all sessions: each quality of both hands, block after block.
 *
 * @param athlete the athlete's code
 * @param steps every block that has a figure, in order of time
 * @param courses each quality and hand that has a figure, qualities in order, right before left
 */
public record ProgressScore(String athlete, List<Step> steps, List<Course> courses) {
  public ProgressScore {
    steps = List.copyOf(steps);
    courses = List.copyOf(courses);
  }

  /**
   * A block of a session.
   *
   * @param session which session, 0 for the first
   * @param date the day of filming
   * @param block {@code baseline} or {@code after-N}
   * @param drill what was done since the block before it in that session; null where nothing was
   */
  public record Step(int session, LocalDate date, String block, @Nullable Drill drill) {}

  /**
   * One quality of one hand, by the quality's headline measure. The change is from the first
   * session's first block to the last session's first block.
   *
   * @param hand the moving hand
   * @param quality what is judged
   * @param measure the headline measure
   * @param typicalError SD within blocks, pooled over all blocks of all sessions; null where no
   *     block has two trials
   * @param points one for each block that has the figure
   * @param change last − first; null with one session only
   * @param changeLow lower end of its 95 % interval, from the typical error
   * @param changeHigh upper end of it
   * @param margin a change too small to matter; null where there is none
   * @param verdict what may be said of the change, practice and the day included
   */
  public record Course(
      Hand hand,
      Quality quality,
      Measure measure,
      @Nullable Double typicalError,
      List<Point> points,
      @Nullable Double change,
      @Nullable Double changeLow,
      @Nullable Double changeHigh,
      @Nullable Double margin,
      RetestScore.ChangeVerdict verdict) {
    public Course {
      points = List.copyOf(points);
    }
  }

  /**
   * The figure of one block.
   *
   * @param step its place among the steps
   * @param mean over its trials
   * @param trials each trial's own
   * @param noiseLow from where the mean would lie in 95 of 100 blocks of as many trials if nothing
   *     had changed since the first; null for the first one, and without a typical error
   * @param noiseHigh up to where
   */
  public record Point(
      int step,
      double mean,
      List<Double> trials,
      @Nullable Double noiseLow,
      @Nullable Double noiseHigh) {
    public Point {
      trials = List.copyOf(trials);
    }
  }

  /** Returns each hand's highest rate in a single trial, slaps/s. */
  public Map<Hand, Double> bestRates() {
    Map<Hand, Double> best = new EnumMap<>(Hand.class);
    for (Course course : courses) {
      if (course.quality() == Quality.SPEED) {
        course.points().stream()
            .flatMap(point -> point.trials().stream())
            .max(Double::compare)
            .ifPresent(rate -> best.put(course.hand(), rate));
      }
    }
    return best;
  }

  /** Returns how many sessions have a figure. */
  public int sessions() {
    return (int) steps.stream().map(Step::session).distinct().count();
  }

  /** Returns the course of a hand in a quality, if it has a figure. */
  public Optional<Course> course(Hand hand, Quality quality) {
    return courses.stream()
        .filter(each -> each.hand() == hand && each.quality() == quality)
        .findFirst();
  }
}
