package palmturn.lab.draw;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;

/**
 * The measures of a drawn clip's contacts in its window, worked out here by plain arithmetic so
 * that they can check the program's. Names and units as in {@code score --json}; null where a
 * figure can't be told from so few contacts.
 */
public record RealisedMeasures(
    int slaps,
    int doubles,
    int pauses,
    @Nullable Double rateSlapsPerS,
    @Nullable Double cycleRateHz,
    @Nullable Double tenCycleS,
    boolean tenCycleExtrapolated,
    @Nullable Double bestTwoSecondsSlapsPerS,
    @Nullable Double cleanSharePct,
    @Nullable Double cleanShareLowPct,
    @Nullable Double cleanShareHighPct,
    @Nullable Double cleanRateSlapsPerS,
    @Nullable Double intervalCvPct,
    @Nullable Double steadyCvPct,
    @Nullable Double turnBiasPct,
    @Nullable Double sameTurnCvPct,
    @Nullable Double npvi,
    @Nullable Double slowDownPctPerS) {

  /** The session's standard window. */
  private static final double WINDOW_S = 5.0;

  /** A longer interval, in medians, is a pause, as the score defines it. */
  private static final double PAUSE_MEDIANS = 2.2;

  /** Intervals in ten cycles: a cycle takes two slaps. */
  private static final int TEN_CYCLES = 20;

  /** Two-sided 95 % point of the normal distribution. */
  private static final double Z = 1.959963984540054;

  /** An interval between slaps: when its middle is, how long it is, and +1 for palm to back. */
  private record Interval(double middleS, double lengthS, int turn) {}

  static RealisedMeasures of(List<Contact> contacts, List<Span> spans) {
    double first =
        contacts.stream()
            .filter(RealisedMeasures::counts)
            .mapToDouble(Contact::timeS)
            .min()
            .orElse(0);
    List<Contact> inside =
        contacts.stream().filter(c -> c.timeS() >= first && c.timeS() <= first + WINDOW_S).toList();
    List<Contact> counted = inside.stream().filter(RealisedMeasures::counts).toList();
    int n = counted.size();
    double[] t = counted.stream().mapToDouble(Contact::timeS).toArray();
    Double rate = n < 2 ? null : (n - 1) / (t[n - 1] - t[0]);
    double clean = inside.stream().filter(c -> clean(c, spans)).count();
    Double share = inside.isEmpty() ? null : clean / inside.size();
    double[] wilson = share == null ? null : wilson(share, inside.size());
    List<Interval> all = intervals(counted);
    List<Interval> kept = withoutPauses(all);
    boolean ten = n > TEN_CYCLES;
    Double tenCycle = rate == null ? null : ten ? t[TEN_CYCLES] - t[0] : TEN_CYCLES / rate;
    return new RealisedMeasures(
        n,
        (int) inside.stream().filter(c -> c.kind() == Slap.Kind.DOUBLE).count(),
        all.size() - kept.size(),
        rate,
        rate == null ? null : rate / 2,
        tenCycle,
        !ten,
        best(t),
        share == null ? null : 100 * share,
        wilson == null ? null : 100 * wilson[0],
        wilson == null ? null : 100 * wilson[1],
        rate == null || share == null ? null : rate * share,
        intervalCv(kept),
        steadyCv(kept),
        turnBias(kept),
        sameTurnCv(kept),
        npvi(kept),
        slowDown(kept));
  }

  private static boolean counts(Contact c) {
    return c.kind() != Slap.Kind.DOUBLE && c.kind() != Slap.Kind.MISSED;
  }

  private static boolean clean(Contact c, List<Span> spans) {
    return c.kind() == Slap.Kind.SLAP
        && !c.zone().offCentre()
        && spans.stream().noneMatch(s -> s.kind().spoils() && s.contains(c.timeS()));
  }

  /** Wilson's score interval of a share. */
  private static double[] wilson(double p, int n) {
    double z2 = Z * Z;
    double middle = (p + z2 / (2 * n)) / (1 + z2 / n);
    double half = Z * Math.sqrt(p * (1 - p) / n + z2 / (4.0 * n * n)) / (1 + z2 / n);
    return new double[] {middle - half, middle + half};
  }

  private static List<Interval> intervals(List<Contact> counted) {
    List<Interval> out = new ArrayList<>();
    for (int i = 0; i + 1 < counted.size(); i++) {
      Contact a = counted.get(i);
      Contact b = counted.get(i + 1);
      int turn = a.side() == b.side() ? 0 : a.side() == Side.PALM ? 1 : -1;
      out.add(new Interval((a.timeS() + b.timeS()) / 2, b.timeS() - a.timeS(), turn));
    }
    return out;
  }

  private static List<Interval> withoutPauses(List<Interval> all) {
    double[] sorted = all.stream().mapToDouble(Interval::lengthS).sorted().toArray();
    int n = sorted.length;
    if (n == 0) {
      return all;
    }
    double median = n % 2 == 1 ? sorted[n / 2] : (sorted[n / 2 - 1] + sorted[n / 2]) / 2;
    return all.stream().filter(d -> d.lengthS() <= PAUSE_MEDIANS * median).toList();
  }

  private static @Nullable Double best(double[] t) {
    Double best = null;
    for (int i = 0; i < t.length; i++) {
      int j = i;
      while (j + 1 < t.length && t[j + 1] <= t[i] + 2) {
        j++;
      }
      double length = t[j] - t[i];
      if (length >= 1.5 && (best == null || (j - i) / length > best)) {
        best = (j - i) / length;
      }
    }
    return best;
  }

  private static double mean(List<Interval> d) {
    return d.stream().mapToDouble(Interval::lengthS).average().orElse(Double.NaN);
  }

  private static @Nullable Double intervalCv(List<Interval> d) {
    if (d.size() < 2) {
      return null;
    }
    return 100 * Math.sqrt(squares(d) / (d.size() - 1)) / mean(d);
  }

  private static double squares(List<Interval> d) {
    double mean = mean(d);
    return d.stream().mapToDouble(x -> (x.lengthS() - mean) * (x.lengthS() - mean)).sum();
  }

  /** Residual SD of d on 1, the interval's middle and ±½ by turn, by the normal equations. */
  private static @Nullable Double steadyCv(List<Interval> d) {
    if (d.size() < 5) {
      return null;
    }
    double middle = d.stream().mapToDouble(Interval::middleS).average().orElse(0);
    double[][] m = new double[3][4];
    for (Interval x : d) {
      double[] row = {1, x.middleS() - middle, x.turn() / 2.0};
      for (int i = 0; i < 3; i++) {
        for (int j = 0; j < 3; j++) {
          m[i][j] += row[i] * row[j];
        }
        m[i][3] += row[i] * x.lengthS();
      }
    }
    double[] b = solve(m);
    double residual = 0;
    for (Interval x : d) {
      double r = x.lengthS() - b[0] - b[1] * (x.middleS() - middle) - b[2] * x.turn() / 2.0;
      residual += r * r;
    }
    return 100 * Math.sqrt(residual / (d.size() - 3)) / mean(d);
  }

  private static double[] solve(double[][] m) {
    for (int i = 0; i < 3; i++) {
      for (int k = 0; k < 3; k++) {
        double factor = k == i ? 0 : m[k][i] / m[i][i];
        for (int j = i; j < 4; j++) {
          m[k][j] -= factor * m[i][j];
        }
      }
    }
    return new double[] {m[0][3] / m[0][0], m[1][3] / m[1][1], m[2][3] / m[2][2]};
  }

  private static List<Interval> ofTurn(List<Interval> d, int turn) {
    return d.stream().filter(x -> x.turn() == turn).toList();
  }

  private static @Nullable Double turnBias(List<Interval> d) {
    List<Interval> there = ofTurn(d, 1);
    List<Interval> back = ofTurn(d, -1);
    if (there.isEmpty() || back.isEmpty()) {
      return null;
    }
    return 100 * (mean(there) - mean(back)) / mean(d);
  }

  private static @Nullable Double sameTurnCv(List<Interval> d) {
    List<Interval> there = ofTurn(d, 1);
    List<Interval> back = ofTurn(d, -1);
    int free = there.size() + back.size() - 2;
    if (there.isEmpty() || back.isEmpty() || free < 1) {
      return null;
    }
    return 100 * Math.sqrt((squares(there) + squares(back)) / free) / mean(d);
  }

  private static @Nullable Double npvi(List<Interval> d) {
    if (d.size() < 2) {
      return null;
    }
    double sum = 0;
    for (int i = 0; i + 1 < d.size(); i++) {
      double a = d.get(i).lengthS();
      double b = d.get(i + 1).lengthS();
      sum += Math.abs(a - b) / ((a + b) / 2);
    }
    return 100 * sum / (d.size() - 1);
  }

  /** Least squares slope of ln d on the interval's middle, as growth a second. */
  private static @Nullable Double slowDown(List<Interval> d) {
    if (d.size() < 3) {
      return null;
    }
    double[] x = d.stream().mapToDouble(Interval::middleS).toArray();
    double[] y = d.stream().mapToDouble(i -> Math.log(i.lengthS())).toArray();
    double mx = Arrays.stream(x).average().orElse(0);
    double my = Arrays.stream(y).average().orElse(0);
    double xy = 0;
    double xx = 0;
    for (int i = 0; i < x.length; i++) {
      xy += (x[i] - mx) * (y[i] - my);
      xx += (x[i] - mx) * (x[i] - mx);
    }
    return 100 * Math.expm1(xy / xx);
  }
}
