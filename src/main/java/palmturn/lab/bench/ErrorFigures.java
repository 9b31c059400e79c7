package palmturn.lab.bench;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Stats;

/** A figure that every clip has: its largest error, the median one, and how many don't tell it. */
final class ErrorFigures {
  /**
   * The error of one clip.
   *
   * @param clip its name
   * @param error of the figure, of either sign; null where the clip does not tell it
   */
  record ClipError(String clip, @Nullable Double error) {
    double absolute() {
      return Math.abs(Objects.requireNonNull(error, "the error is unknown"));
    }
  }

  private ErrorFigures() {}

  static List<BenchFigure> of(
      String id, String what, String unit, List<ClipError> clips, @Nullable Double goal) {
    List<ClipError> told = clips.stream().filter(each -> each.error() != null).toList();
    double[] all = told.stream().mapToDouble(ClipError::absolute).toArray();
    Double largest = Stats.max(all);
    String worst =
        told.stream()
            .filter(each -> Objects.equals(each.absolute(), largest))
            .map(ClipError::clip)
            .findFirst()
            .orElse(null);
    String suffix = unit.equals("%") ? "Pct" : unit.equals("°") ? "Deg" : "Points";
    return List.of(
        new BenchFigure(
            id + "Error" + suffix,
            what + ", largest error, clips",
            unit,
            told.size(),
            largest,
            goal,
            false,
            worst,
            largest),
        new BenchFigure(
            id + "ErrorMedian" + suffix,
            what + ", median error, clips",
            unit,
            told.size(),
            Stats.median(all),
            null,
            false,
            worst,
            largest),
        new BenchFigure(
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
