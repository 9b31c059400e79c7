package palmturn.numbers;

import org.jspecify.annotations.Nullable;

/**
 * Cohen's kappa: chance-corrected agreement of two raters on labels (Cohen 1960, Educ Psychol Meas
 * 20:37-46).
 *
 * @param kappa 1 for full agreement, 0 for that of chance
 * @param se standard error of {@code kappa} (Fleiss, Cohen and Everitt 1969, Psychol Bull
 *     72:323-327)
 * @param seByChance standard error if there were no agreement beyond chance (the same source)
 * @param range95 {@code kappa} ± 1.96·{@code se}, inside −1 to 1
 * @param observed share of cases labelled alike
 * @param expected the same by chance
 * @param n cases
 */
public record Kappa(
    double kappa,
    double se,
    double seByChance,
    Range range95,
    double observed,
    double expected,
    int n) {

  /**
   * Returns kappa of a square table; null where either rater used one label only, since agreement
   * then can't be told from chance.
   *
   * @param counts cases by the first rater's label (rows) and the second's (columns)
   */
  public static @Nullable Kappa of(int[][] counts) {
    int size = counts.length;
    int[] rows = new int[size];
    int[] columns = new int[size];
    int n = 0;
    for (int i = 0; i < size; i++) {
      for (int j = 0; j < size; j++) {
        rows[i] += counts[i][j];
        columns[j] += counts[i][j];
        n += counts[i][j];
      }
    }
    if (used(rows) < 2 || used(columns) < 2) {
      return null;
    }
    double observed = 0;
    double expected = 0;
    double byChance = 0;
    for (int i = 0; i < size; i++) {
      double row = (double) rows[i] / n;
      double column = (double) columns[i] / n;
      observed += (double) counts[i][i] / n;
      expected += row * column;
      byChance += row * column * (row + column);
    }
    double spread = 0;
    for (int i = 0; i < size; i++) {
      for (int j = 0; j < size; j++) {
        double marginals = (double) (columns[i] + rows[j]) / n;
        double part = (i == j ? 1 - expected : 0) - marginals * (1 - observed);
        spread += (double) counts[i][j] / n * part * part;
      }
    }
    double centre = observed * expected - 2 * expected + observed;
    double beyond = 1 - expected;
    double kappa = (observed - expected) / beyond;
    double se = root((spread - centre * centre) / n) / (beyond * beyond);
    double seByChance = root((expected + expected * expected - byChance) / n) / beyond;
    double half = Quantiles.Z_975 * se;
    Range range = new Range(Math.max(-1, kappa - half), Math.min(1, kappa + half));
    return new Kappa(kappa, se, seByChance, range, observed, expected, n);
  }

  /** Rounding may leave a little less than nothing. */
  private static double root(double variance) {
    return Math.sqrt(Math.max(0, variance));
  }

  private static int used(int[] marginals) {
    int used = 0;
    for (int marginal : marginals) {
      used += marginal > 0 ? 1 : 0;
    }
    return used;
  }
}
