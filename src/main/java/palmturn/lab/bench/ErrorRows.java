package palmturn.lab.bench;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Stats;

/** A figure that every clip has: its largest error, the median one, and how many don't tell it. */
final class ErrorRows {
  /**
   * What one clip adds.
   *
   * @param clip its name
   * @param error of the figure, of either sign; null where the clip does not tell it
   */
  record Error(String clip, @Nullable Double error) {
    double size() {
      return Math.abs(Objects.requireNonNull(error, "it is not told"));
    }
  }

  private ErrorRows() {}

  static List<Row> of(
      String id, String what, String unit, List<Error> clips, @Nullable Double goal) {
    List<Error> told = clips.stream().filter(each -> each.error() != null).toList();
    double[] all = told.stream().mapToDouble(Error::size).toArray();
    Double largest = Stats.max(all);
    String worst =
        told.stream()
            .filter(each -> Objects.equals(each.size(), largest))
            .map(Error::clip)
            .findFirst()
            .orElse(null);
    String suffix = unit.equals("%") ? "Pct" : unit.equals("°") ? "Deg" : "Points";
    return List.of(
        new Row(
            id + "Error" + suffix,
            what + ", largest error, clips",
            unit,
            told.size(),
            largest,
            goal,
            false,
            worst,
            largest),
        new Row(
            id + "ErrorMedian" + suffix,
            what + ", median error, clips",
            unit,
            told.size(),
            Stats.median(all),
            null,
            false,
            worst,
            largest),
        new Row(
            id + "NotTold",
            what + " not told, clips",
            "clips",
            clips.size(),
            (double) (clips.size() - told.size()),
            null,
            false,
            null,
            null));
  }
}
