package palmturn.advise;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import palmturn.measure.HandScore;
import palmturn.measure.Limit;
import palmturn.measure.Limits;
import palmturn.measure.Measures;
import palmturn.measure.Quality;
import palmturn.measure.TrialScore;
import palmturn.numbers.Confidence;
import palmturn.numbers.Range;
import palmturn.trial.Block;
import palmturn.trial.Hand;

/**
 * A hand's figures in its latest block, the only one that describes its present state.
 *
 * @param hand whose
 * @param block null where the hand has no trial to score
 * @param trials of that block, paced ones left out
 * @param headlines each quality's mean over them
 */
record HandFigures(
    Hand hand, @Nullable String block, List<TrialScore> trials, Map<Quality, HandScore> headlines) {

  /**
   * A mean judged by a limit.
   *
   * @param value the mean over the trials
   * @param range its 95 % interval; null where it is unknown
   * @param limit the limit
   * @param over whether the mean is on the bad side
   * @param sure whether the whole interval is on that side too
   * @param coarse whether it is over only because of the timing floor
   */
  record LimitCheck(
      double value,
      @Nullable Range range,
      double limit,
      boolean over,
      boolean sure,
      boolean coarse) {}

  static HandFigures of(Evidence evidence, Hand hand) {
    String block =
        evidence.score().hands().stream()
            .filter(score -> score.hand() == hand)
            .map(HandScore::block)
            .max(Comparator.comparingInt(Block::order))
            .orElse(null);
    Map<Quality, HandScore> headlines = new EnumMap<>(Quality.class);
    for (HandScore score : evidence.score().hands()) {
      if (score.hand() == hand && score.block().equals(block)) {
        headlines.put(score.quality(), score);
      }
    }
    return new HandFigures(
        hand,
        block,
        evidence.score().trials().stream()
            .filter(score -> score.trial().hand() == hand && score.trial().block().equals(block))
            .filter(score -> score.paceSlapsPerS() == null)
            .toList(),
        headlines);
  }

  /** Returns the mean of a quality's headline figure; null where it is unknown. */
  @Nullable Double mean(Quality quality) {
    HandScore score = headlines.get(quality);
    return score == null ? null : score.mean();
  }

  /** Checks a quality's mean against its limit; null without a figure or a limit. */
  @Nullable LimitCheck checkLimit(Quality quality, Limits limits) {
    Double mean = mean(quality);
    Limit limit = limits.of(quality);
    if (mean == null || limit == null) {
      return null;
    }
    return switch (quality) {
      case SPEED, ACCURACY -> atLeast(quality, mean, limit.value());
      case ENDURANCE, DRIFT -> atMost(quality, mean, limit.value());
      case RHYTHM -> steady(mean, limit.value());
    };
  }

  /** Checks a mean against a least value. */
  LimitCheck atLeast(Quality quality, double mean, double least) {
    Range range = interval(quality);
    boolean over = mean < least;
    return new LimitCheck(
        mean, range, least, over, over && range != null && range.high() < least, false);
  }

  private LimitCheck atMost(Quality quality, double mean, double most) {
    Range range = interval(quality);
    boolean over = mean > most;
    return new LimitCheck(
        mean, range, most, over, over && range != null && range.low() > most, false);
  }

  /**
   * A CV is over only by what is left of it without the timing floor, as for one trial: √(CV² −
   * floor²).
   */
  private LimitCheck steady(double mean, double most) {
    Range range = interval(Quality.RHYTHM);
    double left = 0;
    double floors = 0;
    int n = 0;
    for (TrialScore trial : trials) {
      Double cv = trial.rhythm().steadyCvPct();
      Double floor = trial.rhythm().timingFloorPct();
      if (cv != null && floor != null) {
        left += removeFloor(cv, floor);
        floors += floor;
        n++;
      }
    }
    boolean over = n > 0 && left / n > most;
    boolean sure = over && range != null && removeFloor(range.low(), floors / n) > most;
    return new LimitCheck(mean, range, most, over, sure, mean > most && !over);
  }

  private static double removeFloor(double cvPct, double floorPct) {
    return Math.sqrt(Math.max(0, cvPct * cvPct - floorPct * floorPct));
  }

  /**
   * The t-interval over the trials, or the one trial's own. For the clean share the wider of that
   * and Wilson's of all attempts together: slaps cluster in trials, and three trials that happen to
   * agree know no more than their slaps.
   */
  @Nullable Range interval(Quality quality) {
    HandScore score = headlines.get(quality);
    Range over = score == null ? null : score.mean95();
    if (quality == Quality.ACCURACY) {
      Range pooled = pooledInterval();
      return over == null || pooled != null && pooled.width() > over.width() ? pooled : over;
    }
    return over == null && trials.size() == 1
        ? Measures.headline(quality).interval95(trials.get(0))
        : over;
  }

  private @Nullable Range pooledInterval() {
    int clean = 0;
    int attempts = 0;
    for (TrialScore trial : trials) {
      Integer here = trial.accuracy().clean();
      if (here != null) {
        clean += here;
        attempts += trial.accuracy().attempts();
      }
    }
    Range share = Confidence.wilson(clean, attempts);
    return share == null ? null : share.times(100);
  }
}
