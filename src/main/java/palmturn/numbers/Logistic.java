package palmturn.numbers;

import org.jspecify.annotations.Nullable;

/**
 * A logistic regression of a binary outcome on one variable, with Firth's correction (Firth 1993,
 * Biometrika 80:27-38; for this use Heinze and Schemper 2002, Stat Med 21:2409-2419): it is finite
 * under complete separation too, and the correction vanishes as the data grow.
 *
 * @param intercept log odds of yes at x = 0
 * @param slope how much the log odds rise for one of x
 */
public record Logistic(double intercept, double slope) {
  private static final int MOST_STEPS = 100;
  private static final int MOST_HALVINGS = 40;
  private static final double LARGEST_STEP = 5;
  private static final double CLOSE = 1e-9;

  /**
   * Fits by Newton's steps on the score with the correction, U + Σ h(½ − p)x, each halved until the
   * likelihood times the square root of the information grows.
   *
   * @param x as many as {@code yes}
   * @return null under two points, where all x are equal, or without convergence
   */
  public static @Nullable Logistic fit(double[] x, boolean[] yes) {
    Double mean = Stats.mean(x);
    Double sd = Stats.sd(x);
    if (mean == null || sd == null || sd == 0) {
      return null;
    }
    double[] z = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      z[i] = (x[i] - mean) / sd;
    }
    Step at = Step.at(0, 0, z, yes);
    for (int i = 0; i < MOST_STEPS; i++) {
      double length = Math.max(Math.abs(at.downA), Math.abs(at.downB));
      double share = Math.min(1, LARGEST_STEP / length);
      Step next = Step.at(at.a + share * at.downA, at.b + share * at.downB, z, yes);
      double least = at.likelihood - CLOSE * (1 + Math.abs(at.likelihood));
      for (int k = 0; k < MOST_HALVINGS && !(next.likelihood >= least); k++) {
        share /= 2;
        next = Step.at(at.a + share * at.downA, at.b + share * at.downB, z, yes);
      }
      at = next;
      if (length < CLOSE) {
        return new Logistic(at.a - at.b * mean / sd, at.b / sd);
      }
    }
    return null;
  }

  /** Returns the probability of yes at x. */
  public double probability(double x) {
    return 1 / (1 + Math.exp(-intercept - slope * x));
  }

  /** Returns the x of a probability, above 0 and under 1; null without a slope. */
  public @Nullable Double quantile(double probability) {
    return slope == 0 ? null : (Math.log(probability / (1 - probability)) - intercept) / slope;
  }

  /** A state of the search, and Newton's step from it. */
  private record Step(double a, double b, double likelihood, double downA, double downB) {

    static Step at(double a, double b, double[] z, boolean[] yes) {
      double aa = 0;
      double ab = 0;
      double bb = 0;
      double likelihood = 0;
      double[] p = new double[z.length];
      for (int i = 0; i < z.length; i++) {
        double logOdds = a + b * z[i];
        p[i] = 1 / (1 + Math.exp(-logOdds));
        double w = p[i] * (1 - p[i]);
        aa += w;
        ab += w * z[i];
        bb += w * z[i] * z[i];
        likelihood -= Math.log1p(Math.exp(yes[i] ? -logOdds : logOdds));
      }
      double determinant = aa * bb - ab * ab;
      double scoreA = 0;
      double scoreB = 0;
      for (int i = 0; i < z.length; i++) {
        double w = p[i] * (1 - p[i]);
        double leverage = w * (bb - 2 * z[i] * ab + z[i] * z[i] * aa) / determinant;
        double rest = (yes[i] ? 1 : 0) - p[i] + leverage * (0.5 - p[i]);
        scoreA += rest;
        scoreB += rest * z[i];
      }
      return new Step(
          a,
          b,
          likelihood + 0.5 * Math.log(determinant),
          (bb * scoreA - ab * scoreB) / determinant,
          (aa * scoreB - ab * scoreA) / determinant);
    }
  }
}
