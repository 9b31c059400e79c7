package palmturn.chart;

import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Slap;
import palmturn.trial.Span;

/**
 * Two readings of one stretch of time, one above the other, and where they differ. Both strips have
 * the same view, scale, window and palette.
 *
 * @param upper the first reading; its lanes hold the curves and the axis too
 * @param lower the second reading
 * @param program whether the second is the program's estimate, drawn in its colour
 * @param curves the turn and the onsets of an estimate; null for none
 * @param ties marks of the two that are of one slap
 * @param focus the difference that is looked at; null for none
 */
public record Staves(
    BeatStrip upper,
    BeatStrip lower,
    boolean program,
    @Nullable EstimateOverlay curves,
    List<Tie> ties,
    @Nullable Focus focus) {

  /** Two marks of one slap, by their places among the strips' slaps. */
  public record Tie(int upper, int lower) {}

  /**
   * A difference; of the marks and stretches those that are there.
   *
   * @param fromS where it begins, media seconds
   * @param toS where it ends
   */
  public record Focus(
      double fromS,
      double toS,
      @Nullable Slap upper,
      @Nullable Slap lower,
      @Nullable Span upperSpan,
      @Nullable Span lowerSpan) {}

  public Staves {
    ties = List.copyOf(ties);
  }
}
