package palmturn.lab.bench;

import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Pools a share or a ratio over clips. */
final class PooledRatio {
  /**
   * The contribution of one clip.
   *
   * @param clip its name
   * @param numerator of its own ratio
   * @param denominator of its own ratio; a clip with 0 is left out
   * @param count its contribution to the sample size of the figure
   */
  record ClipRatio(String clip, double numerator, double denominator, int count) {
    private double ratio() {
      return numerator / denominator;
    }
  }

  private PooledRatio() {}

  /** Returns the sum of the parts over the sum of the wholes, and the clip that is worst alone. */
  static BenchFigure figure(
      String id,
      String what,
      String unit,
      List<ClipRatio> parts,
      @Nullable Double goal,
      boolean higherIsBetter) {
    List<ClipRatio> used = parts.stream().filter(each -> each.denominator() > 0).toList();
    double part = used.stream().mapToDouble(ClipRatio::numerator).sum();
    double whole = used.stream().mapToDouble(ClipRatio::denominator).sum();
    Comparator<ClipRatio> order = Comparator.comparingDouble(ClipRatio::ratio);
    ClipRatio worst = used.stream().min(higherIsBetter ? order : order.reversed()).orElse(null);
    return new BenchFigure(
        id,
        what,
        unit,
        used.stream().mapToInt(ClipRatio::count).sum(),
        whole > 0 ? part / whole : null,
        goal,
        higherIsBetter,
        worst == null ? null : worst.clip(),
        worst == null ? null : worst.ratio());
  }
}
