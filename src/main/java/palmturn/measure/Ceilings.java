package palmturn.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.random.RandomGenerator;
import org.jspecify.annotations.Nullable;
import palmturn.measure.CeilingScore.CeilingOutcome;
import palmturn.numbers.Logistic;
import palmturn.numbers.Range;
import palmturn.trial.Hand;

/**
 * Finds the pace above which a hand is no longer clean: the logistic regression of fault on local
 * rate, read at one fault in ten. Its interval is a bootstrap of trials and, within each, of
 * attempts (a two-stage resampling, Davison and Hinkley 1997, section 3.8, from memory): with so
 * few trials, trials alone held the true ceiling in 80 to 93 % of simulated athletes only.
 */
final class Ceilings {
  private static final double FAULTY_SHARE = 0.1;
  private static final int LEAST_TRIALS = 3;
  private static final int RESAMPLES = 1000;

  /** Ends of the interval among the sorted resamples, 2.5 % from either side. */
  private static final int LOW = RESAMPLES / 40 - 1;

  private static final int HIGH = RESAMPLES - RESAMPLES / 40;

  private final List<List<TimedAttempt>> trials;
  private final double slowest;
  private final double fastest;

  private Ceilings(List<List<TimedAttempt>> trials, Range filmed) {
    this.trials = trials;
    this.slowest = filmed.low();
    this.fastest = filmed.high();
  }

  /** Returns the ceiling of a hand over all its trials, those to a click track too. */
  static CeilingScore of(Hand hand, List<TrialScore> scores, RandomGenerator random) {
    List<TrialScore> used = scores.stream().filter(each -> !each.attempts().isEmpty()).toList();
    List<List<TimedAttempt>> trials = used.stream().map(TrialScore::attempts).toList();
    List<TimedAttempt> all = trials.stream().flatMap(List::stream).toList();
    Range filmed = filmed(all);
    CeilingOutcome outcome = CeilingOutcome.CANNOT_TELL;
    double point = Double.NaN;
    double low = Double.NEGATIVE_INFINITY;
    double high = Double.POSITIVE_INFINITY;
    if (filmed != null && trials.size() >= LEAST_TRIALS) {
      Ceilings ceilings = new Ceilings(trials, filmed);
      point = ceilings.of(all);
      double[] lows = ceilings.resampled(random);
      double[] highs = lows.clone();
      // What can't be told is taken for the worst at either end.
      Arrays.setAll(lows, i -> Double.isNaN(lows[i]) ? Double.NEGATIVE_INFINITY : lows[i]);
      Arrays.setAll(highs, i -> Double.isNaN(highs[i]) ? Double.POSITIVE_INFINITY : highs[i]);
      Arrays.sort(lows);
      Arrays.sort(highs);
      low = lows[LOW];
      high = highs[HIGH];
      outcome = outcome(point, low, high);
    }
    return new CeilingScore(
        hand,
        outcome,
        outcome == CeilingOutcome.FOUND ? Double.valueOf(point) : null,
        outcome == CeilingOutcome.CANNOT_TELL || Double.isInfinite(low)
            ? null
            : Double.valueOf(low),
        outcome == CeilingOutcome.CANNOT_TELL || Double.isInfinite(high)
            ? null
            : Double.valueOf(high),
        filmed,
        trials.size(),
        (int) used.stream().filter(each -> each.paceSlapsPerS() != null).count(),
        all.size(),
        (int) all.stream().filter(TimedAttempt::faulty).count(),
        used.stream().map(TrialScore::reading).distinct().toList());
  }

  private static CeilingOutcome outcome(double point, double low, double high) {
    boolean lowOpen = low == Double.NEGATIVE_INFINITY;
    boolean highOpen = high == Double.POSITIVE_INFINITY;
    if (Double.isNaN(point) || lowOpen && highOpen) {
      return CeilingOutcome.CANNOT_TELL;
    }
    if (Double.isInfinite(point)) {
      return point > 0 ? CeilingOutcome.NOT_REACHED : CeilingOutcome.UNDER_FILMED;
    }
    return CeilingOutcome.FOUND;
  }

  private static @Nullable Range filmed(List<TimedAttempt> all) {
    if (all.isEmpty()) {
      return null;
    }
    double[] rates = all.stream().mapToDouble(TimedAttempt::slapsPerS).sorted().toArray();
    return new Range(rates[0], rates[rates.length - 1]);
  }

  private double[] resampled(RandomGenerator random) {
    double[] found = new double[RESAMPLES];
    for (int i = 0; i < RESAMPLES; i++) {
      List<TimedAttempt> drawn = new ArrayList<>();
      for (int k = 0; k < trials.size(); k++) {
        List<TimedAttempt> trial = trials.get(random.nextInt(trials.size()));
        for (int n = 0; n < trial.size(); n++) {
          drawn.add(trial.get(random.nextInt(trial.size())));
        }
      }
      found[i] = of(drawn);
    }
    return found;
  }

  /**
   * Returns the ceiling among the rates filmed, ∞ where it lies over them, −∞ where it lies under
   * them, NaN where faults get fewer as the pace rises.
   */
  private double of(List<TimedAttempt> attempts) {
    long faulty = attempts.stream().filter(TimedAttempt::faulty).count();
    if (faulty == 0) {
      return Double.POSITIVE_INFINITY;
    }
    if (faulty == attempts.size()) {
      return Double.NEGATIVE_INFINITY;
    }
    double[] rates = attempts.stream().mapToDouble(TimedAttempt::slapsPerS).toArray();
    boolean[] faults = new boolean[rates.length];
    for (int i = 0; i < faults.length; i++) {
      faults[i] = attempts.get(i).faulty();
    }
    Logistic fit = Logistic.fit(rates, faults);
    if (fit == null) {
      return Double.NaN;
    }
    boolean cleanSlow = fit.probability(slowest) <= FAULTY_SHARE;
    boolean cleanFast = fit.probability(fastest) <= FAULTY_SHARE;
    if (cleanSlow == cleanFast) {
      return cleanSlow ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
    }
    return cleanSlow ? Objects.requireNonNull(fit.quantile(FAULTY_SHARE)) : Double.NaN;
  }
}
