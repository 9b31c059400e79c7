package palmturn.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Confidence;
import palmturn.numbers.Stats;
import palmturn.trial.Block;
import palmturn.trial.Hand;
import palmturn.trial.Reading;
import palmturn.trial.Session;
import palmturn.trial.Trial;

/** Turns readings into figures. */
public final class Scores {
  private Scores() {}

  /** Returns the figures of a reading, the elbow's from the trial's estimate if it has one. */
  public static TrialScore trial(Trial trial, Reading reading, double windowS, Limits limits) {
    return trial(trial, reading, windowS, limits, ElbowSeries.of(trial.estimate()));
  }

  /**
   * Returns the figures of a reading.
   *
   * @param windowS the protocol's seconds, real time
   * @param elbow where the elbow was, if it was tracked
   */
  public static TrialScore trial(
      Trial trial, Reading reading, double windowS, Limits limits, @Nullable ElbowSeries elbow) {
    Window window = Window.of(trial, reading, windowS);
    Series series = Series.of(trial, window);
    Accuracy accuracy = Accuracy.of(window);
    Speed speed = Speed.of(window, accuracy.cleanSharePct());
    Rhythm rhythm = Rhythm.of(window, series);
    Endurance endurance = Endurance.of(window, series);
    Drift drift = Drift.of(window, elbow, limits.elbowCm().value());
    return new TrialScore(
        trial.id(),
        reading.reader(),
        reading.independent(),
        trial.paceSlapsPerS(),
        speed,
        accuracy,
        rhythm,
        endurance,
        drift,
        series.intervals(),
        TimedAttempt.of(window, series),
        Verdicts.of(speed, accuracy, rhythm, endurance, drift, limits),
        trial.timeScale().refusedWhy());
  }

  /**
   * Returns the figures of a session: of each trial that has a reading to score, of each hand, of
   * the hands side by side, and of each block against the block before. A paced trial is scored by
   * itself and serves the clean ceiling, which is not worked out here, and nothing else.
   */
  public static SessionScore session(
      Session session, List<Trial> trials, ReadingChoice choice, Limits limits) {
    List<TrialScore> all = new ArrayList<>();
    List<TrialScore> free = new ArrayList<>();
    for (Trial trial : trials) {
      Reading reading = choice.of(trial);
      if (reading != null) {
        TrialScore score = trial(trial, reading, session.windowS(), limits);
        all.add(score);
        if (trial.paceSlapsPerS() == null) {
          free.add(score);
        }
      }
    }
    List<HandScore> hands = new ArrayList<>();
    List<SideScore> sides = new ArrayList<>();
    for (String block : blocks(free)) {
      List<TrialScore> right = of(free, block, Hand.RIGHT);
      List<TrialScore> left = of(free, block, Hand.LEFT);
      for (Quality quality : Quality.values()) {
        addHand(hands, Hand.RIGHT, block, quality, right, free);
        addHand(hands, Hand.LEFT, block, quality, left, free);
      }
      if (!right.isEmpty() && !left.isEmpty()) {
        for (Quality quality : Contrast.COMPARED) {
          sides.add(Sides.of(block, quality, right, left, limits.margins()));
        }
      }
    }
    return new SessionScore(
        session.athlete(),
        session.date(),
        all,
        hands,
        sides,
        Retests.of(session, free, limits.margins()),
        List.of());
  }

  private static List<String> blocks(List<TrialScore> scores) {
    return scores.stream()
        .map(score -> score.trial().block())
        .distinct()
        .sorted(Comparator.comparingInt(Block::order))
        .toList();
  }

  private static List<TrialScore> of(List<TrialScore> scores, String block, Hand hand) {
    return scores.stream()
        .filter(score -> score.trial().hand() == hand && score.trial().block().equals(block))
        .toList();
  }

  private static void addHand(
      List<HandScore> hands,
      Hand hand,
      String block,
      Quality quality,
      List<TrialScore> here,
      List<TrialScore> all) {
    Measure measure = Measures.headline(quality);
    double[] values = Contrast.values(measure, here);
    boolean untracked = quality == Quality.DRIFT && values.length == 0;
    if (here.isEmpty() || untracked) {
      return;
    }
    double[][] byBlock =
        blocks(all).stream()
            .map(each -> Contrast.values(measure, of(all, each, hand)))
            .toArray(double[][]::new);
    hands.add(
        new HandScore(
            hand,
            block,
            quality,
            measure,
            values.length,
            Stats.mean(values),
            Stats.sd(values),
            measure.better() == Measure.Better.HIGHER ? Stats.max(values) : Stats.min(values),
            Stats.pooledSd(byBlock),
            quality.possible(Confidence.mean(values)),
            Contrast.readings(measure, here)));
  }
}
