package palmturn.numbers;

import org.jspecify.annotations.Nullable;

/**
 * The reliability of raters, or of repeats: the mean squares of a table of targets by raters and
 * the intraclass correlations that rest on them (Shrout and Fleiss 1979, Psychol Bull 86:420-428).
 *
 * @param targets rows, 2 or more
 * @param raters columns, 2 or more
 * @param betweenTargets mean square between targets, n−1 degrees of freedom
 * @param betweenRaters mean square between raters, k−1
 * @param error residual mean square, (n−1)(k−1)
 * @param within mean square within targets, n(k−1)
 */
public record Reliability(
    int targets,
    int raters,
    double betweenTargets,
    double betweenRaters,
    double error,
    double within) {

  /** A form of the intraclass correlation, by the disagreement that it counts. */
  public enum Form {
    /** (1,·): each target had raters of its own. */
    ONE_WAY,
    /** (2,·): the same raters throughout; a constant between them counts. */
    AGREEMENT,
    /** (3,·): the same raters throughout; a constant between them doesn't count. */
    CONSISTENCY
  }

  /**
   * An intraclass correlation.
   *
   * @param value 1 for full agreement
   * @param range95 95 % interval
   */
  public record Icc(double value, Range range95) {
    /** Returns the same for the mean of k raters (Spearman 1910, Brown 1910). */
    Icc ofMean(int k) {
      return new Icc(
          stepped(value, k), new Range(stepped(range95.low(), k), stepped(range95.high(), k)));
    }

    private static double stepped(double r, int k) {
      return k * r / (1 + (k - 1) * r);
    }
  }

  /**
   * Returns the mean squares of a table; null under two targets or two raters.
   *
   * @param byTarget one row for each target, all as long as there are raters
   */
  public static @Nullable Reliability of(double[][] byTarget) {
    int n = byTarget.length;
    if (n < 2 || byTarget[0].length < 2) {
      return null;
    }
    int k = byTarget[0].length;
    double[] rows = new double[n];
    double[] columns = new double[k];
    double grand = 0;
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < k; j++) {
        rows[i] += byTarget[i][j] / k;
        columns[j] += byTarget[i][j] / n;
        grand += byTarget[i][j] / (n * k);
      }
    }
    double targets = 0;
    double raters = 0;
    double error = 0;
    double within = 0;
    for (int i = 0; i < n; i++) {
      targets += k * square(rows[i] - grand);
      for (int j = 0; j < k; j++) {
        error += square(byTarget[i][j] - rows[i] - columns[j] + grand);
        within += square(byTarget[i][j] - rows[i]);
      }
    }
    for (double column : columns) {
      raters += n * square(column - grand);
    }
    return new Reliability(
        n,
        k,
        targets / (n - 1),
        raters / (k - 1),
        error / ((n - 1) * (k - 1)),
        within / (n * (k - 1)));
  }

  /** Returns the correlation for one rater; null where nothing varies. */
  public @Nullable Icc single(Form form) {
    if (betweenTargets + within <= 0) {
      return null;
    }
    return switch (form) {
      case ONE_WAY -> byRatio(within, targets * (raters - 1.0));
      case AGREEMENT -> agreement();
      case CONSISTENCY -> byRatio(error, (targets - 1.0) * (raters - 1));
    };
  }

  /**
   * Returns the correlation for the mean of all raters; null where nothing varies, or where its
   * interval has no end because raters disagree more than the targets differ.
   */
  public @Nullable Icc average(Form form) {
    Icc single = single(form);
    return single == null || single.range95().low() <= -1.0 / (raters - 1)
        ? null
        : single.ofMean(raters);
  }

  /**
   * Returns the typical error of one measurement, √(error mean square): for two repeats the SD of
   * their differences over √2 (Weir 2005, J Strength Cond Res 19:231-240; Hopkins 2000).
   */
  public double typicalError() {
    return Math.sqrt(error);
  }

  /**
   * Returns the smallest detectable change between two single measurements, 1.96·√2·the typical
   * error (Weir 2005).
   */
  public double smallestDetectableChange() {
    return Quantiles.Z_975 * Math.sqrt(2) * typicalError();
  }

  private @Nullable Icc byRatio(double residual, double freedom) {
    double spread = betweenTargets + (raters - 1) * residual;
    if (spread <= 0) {
      return null;
    }
    double value = (betweenTargets - residual) / spread;
    if (residual == 0) {
      return new Icc(value, new Range(value, value));
    }
    double f = betweenTargets / residual;
    double low = f / Quantiles.f(0.975, targets - 1.0, freedom);
    double high = f * Quantiles.f(0.975, freedom, targets - 1.0);
    return new Icc(
        value, new Range((low - 1) / (low + raters - 1), (high - 1) / (high + raters - 1)));
  }

  private @Nullable Icc agreement() {
    double n = targets;
    double k = raters;
    double spread = betweenTargets + (k - 1) * error + k * (betweenRaters - error) / n;
    if (spread <= 0) {
      return null;
    }
    double value = (betweenTargets - error) / spread;
    if (value >= 1) {
      return new Icc(1, new Range(1, 1));
    }
    double a = k * value / (n * (1 - value)) * betweenRaters;
    double b = (1 + k * value * (n - 1) / (n * (1 - value))) * error;
    double freedom = square(a + b) / (square(a) / (k - 1) + square(b) / ((n - 1) * (k - 1)));
    if (!(freedom > 0)) {
      return null;
    }
    double lowF = Quantiles.f(0.975, n - 1, freedom);
    double highF = Quantiles.f(0.975, freedom, n - 1);
    double others = k * betweenRaters + (k * n - k - n) * error;
    double low = n * (betweenTargets - lowF * error) / (lowF * others + n * betweenTargets);
    double high = n * (highF * betweenTargets - error) / (others + n * highF * betweenTargets);
    return new Icc(value, new Range(low, high));
  }

  private static double square(double x) {
    return x * x;
  }
}
