package palmturn.settle;

import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.BlandAltman;
import palmturn.numbers.Reliability;

/**
 * The agreement of two readers over many trials. All but {@code trials} uses only trials in which
 * both readings are independent.
 *
 * @param trials each by itself
 * @param pooled counts of the independent ones added up; null without one
 * @param curve F of the independent ones against tolerance; empty without one
 * @param measure which figure of a trial is compared
 * @param figures trials in which both readings have that figure
 * @param limits limits of agreement of the figure, second minus first; null under two trials
 * @param reliability mean squares of trials and readers; null under two trials
 */
public record PooledAgreement(
    List<TrialAgreement> trials,
    @Nullable Agreement pooled,
    List<Agreement.CurvePoint> curve,
    String measure,
    int figures,
    @Nullable BlandAltman limits,
    @Nullable Reliability reliability) {
  private static final double[] TOLERANCES_S = {0.005, 0.01, 0.015, 0.02, 0.025, 0.03, 0.04, 0.05};

  public PooledAgreement {
    trials = List.copyOf(trials);
    curve = List.copyOf(curve);
  }

  /**
   * Returns the agreement over trials.
   *
   * @param measure name of the figure that each trial brings
   */
  public static PooledAgreement of(String measure, List<TrialAgreement> trials) {
    List<TrialAgreement> counted =
        trials.stream().filter(each -> each.agreement().independent()).toList();
    double[][] figures =
        counted.stream()
            .map(PooledAgreement::figures)
            .filter(each -> each.length == 2)
            .toArray(double[][]::new);
    double[] differences = new double[figures.length];
    for (int i = 0; i < figures.length; i++) {
      differences[i] = figures[i][1] - figures[i][0];
    }
    return new PooledAgreement(
        trials,
        Agreement.pooled(counted.stream().map(TrialAgreement::agreement).toList()),
        counted.isEmpty()
            ? List.of()
            : Agreement.curve(
                counted.stream().map(TrialAgreement::comparison).toList(), TOLERANCES_S),
        measure,
        figures.length,
        BlandAltman.of(differences),
        Reliability.of(figures));
  }

  /** Returns ICC(2,1); null under two trials or where nothing varies. */
  public Reliability.@Nullable Icc icc21() {
    return reliability == null ? null : reliability.single(Reliability.Form.AGREEMENT);
  }

  private static double[] figures(TrialAgreement trial) {
    Double first = trial.first();
    Double second = trial.second();
    return first == null || second == null ? new double[0] : new double[] {first, second};
  }
}
