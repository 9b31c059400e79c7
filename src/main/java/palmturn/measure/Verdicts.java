package palmturn.measure;

import java.util.EnumMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Range;

/** Holds the headline figures against their limits. */
final class Verdicts {
  private Verdicts() {}

  static Map<Quality, LimitVerdict> of(
      Speed speed,
      Accuracy accuracy,
      Rhythm rhythm,
      Endurance endurance,
      Drift drift,
      Limits limits) {
    Map<Quality, LimitVerdict> verdicts = new EnumMap<>(Quality.class);
    Limit minRate = limits.minRateSlapsPerS();
    verdicts.put(
        Quality.SPEED,
        minRate == null
            ? LimitVerdict.CANNOT_TELL
            : atLeast(point(speed.rateSlapsPerS()), minRate.value()));
    verdicts.put(
        Quality.ACCURACY, atLeast(accuracy.cleanShareRangePct(), limits.cleanSharePct().value()));
    verdicts.put(Quality.RHYTHM, steady(rhythm, limits.steadyCvPct().value()));
    verdicts.put(
        Quality.ENDURANCE,
        atMost(endurance.slowDownRangePctPerS(), limits.slowDownPctPerS().value()));
    verdicts.put(Quality.DRIFT, atMost(point(drift.elbowMaxCm()), limits.elbowCm().value()));
    return verdicts;
  }

  /**
   * A CV under twice its timing floor is known only as "at most": within is said where even that is
   * within; over needs what is left without the floor to be over.
   */
  private static LimitVerdict steady(Rhythm rhythm, double limit) {
    Double cv = rhythm.steadyCvPct();
    Range range = rhythm.steadyCvRangePct();
    Double floor = rhythm.timingFloorPct();
    if (cv == null || range == null || floor == null) {
      return LimitVerdict.CANNOT_TELL;
    }
    if (range.high() <= limit || !rhythm.resolves(cv) && cv <= limit) {
      return LimitVerdict.WITHIN;
    }
    double lowWithoutFloor = Math.sqrt(Math.max(0, range.low() * range.low() - floor * floor));
    return lowWithoutFloor > limit ? LimitVerdict.OVER : LimitVerdict.UNCLEAR;
  }

  private static LimitVerdict atMost(@Nullable Range range, double limit) {
    if (range == null) {
      return LimitVerdict.CANNOT_TELL;
    }
    if (range.high() <= limit) {
      return LimitVerdict.WITHIN;
    }
    return range.low() > limit ? LimitVerdict.OVER : LimitVerdict.UNCLEAR;
  }

  private static LimitVerdict atLeast(@Nullable Range range, double limit) {
    if (range == null) {
      return LimitVerdict.CANNOT_TELL;
    }
    if (range.low() >= limit) {
      return LimitVerdict.WITHIN;
    }
    return range.high() < limit ? LimitVerdict.OVER : LimitVerdict.UNCLEAR;
  }

  private static @Nullable Range point(@Nullable Double value) {
    return value == null ? null : new Range(value, value);
  }
}
