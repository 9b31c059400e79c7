package palmturn.measure;

import org.jspecify.annotations.Nullable;

/**
 * The limits that a trial is held against. None is a population norm: none was found for this
 * movement.
 *
 * @param cleanSharePct least share of clean slaps
 * @param steadyCvPct largest steady CV
 * @param slowDownPctPerS largest slow-down
 * @param elbowCm largest distance of the elbow from its place
 * @param minRateSlapsPerS least rate, if the coach has set one
 * @param margins differences too small to matter
 */
public record Limits(
    Limit cleanSharePct,
    Limit steadyCvPct,
    Limit slowDownPctPerS,
    Limit elbowCm,
    @Nullable Limit minRateSlapsPerS,
    Margins margins) {

  /** Returns the limit of a quality's headline measure; null where there is none. */
  public @Nullable Limit of(Quality quality) {
    return switch (quality) {
      case SPEED -> minRateSlapsPerS;
      case ACCURACY -> cleanSharePct;
      case RHYTHM -> steadyCvPct;
      case ENDURANCE -> slowDownPctPerS;
      case DRIFT -> elbowCm;
    };
  }

  /**
   * Differences between hands or blocks that are too small to matter.
   *
   * @param speedPct of the mean of both rates
   * @param cleanSharePoints percentage points of clean share
   * @param steadyCvPoints percentage points of steady CV
   * @param slowDownPctPerS per cent a second of slow-down
   */
  public record Margins(
      Limit speedPct, Limit cleanSharePoints, Limit steadyCvPoints, Limit slowDownPctPerS) {}
}
