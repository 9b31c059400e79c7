package palmturn.lab.bench;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * One figure to reach.
 *
 * @param id short name for scripts
 * @param description in words
 * @param unit of the figure
 * @param n what it rests on: contacts, double taps, frames or clips, as {@code description} says
 * @param value pooled over all clips; null where none serves
 * @param goal what to reach; null where there is none
 * @param higherIsBetter which side of the goal is good
 * @param worstClip the clip that is worst; null where none serves
 * @param worstValue its figure
 */
public record BenchFigure(
    String id,
    String description,
    String unit,
    int n,
    @Nullable Double value,
    @Nullable Double goal,
    boolean higherIsBetter,
    @Nullable String worstClip,
    @Nullable Double worstValue) {

  /** Returns whether the goal is reached; null where there is no figure or no goal. */
  public @Nullable Boolean reached() {
    if (value == null || goal == null) {
      return null;
    }
    return higherIsBetter ? value >= goal : value <= goal;
  }

  /** Returns a figure of this row's unit as text, a dash where there is none. */
  public String format(@Nullable Double figure) {
    if (figure == null) {
      return "–";
    }
    int digits =
        switch (unit) {
          case "" -> 3;
          case "slaps", "clips" -> 0;
          default -> 2;
        };
    return String.format(Locale.ROOT, "%." + digits + "f", figure);
  }
}
