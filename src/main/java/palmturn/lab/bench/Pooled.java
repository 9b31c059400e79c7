package palmturn.lab.bench;

import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Pools a share or a ratio over clips. */
final class Pooled {
  /**
   * What one clip adds.
   *
   * @param clip its name
   * @param part over the line
   * @param whole under the line; a clip without one is left out
   * @param counted how many it adds to those that the figure rests on
   */
  record Part(String clip, double part, double whole, int counted) {
    private double ratio() {
      return part / whole;
    }
  }

  private Pooled() {}

  /** Returns the sum of the parts over the sum of the wholes, and the clip that is worst alone. */
  static Row row(
      String id,
      String what,
      String unit,
      List<Part> parts,
      @Nullable Double goal,
      boolean higherIsBetter) {
    List<Part> used = parts.stream().filter(each -> each.whole() > 0).toList();
    double part = used.stream().mapToDouble(Part::part).sum();
    double whole = used.stream().mapToDouble(Part::whole).sum();
    Comparator<Part> order = Comparator.comparingDouble(Part::ratio);
    Part worst = used.stream().min(higherIsBetter ? order : order.reversed()).orElse(null);
    return new Row(
        id,
        what,
        unit,
        used.stream().mapToInt(Part::counted).sum(),
        whole > 0 ? part / whole : null,
        goal,
        higherIsBetter,
        worst == null ? null : worst.clip(),
        worst == null ? null : worst.ratio());
  }
}
