package palmturn.chart;

import palmturn.trial.EstimatedSlap;
import palmturn.trial.Slap;
import palmturn.trial.TimedBy;

/**
 * The uncertainty of a mark's time, seconds to both sides of it.
 *
 * @param beforeS how much earlier it may have been
 * @param afterS how much later
 */
record TimeUncertainty(double beforeS, double afterS) {
  /** Narrower stems are drawn as hairlines, pixels. */
  static final double HAIRLINE_UNDER = 1.5;

  /** Wider ones are drawn as a band with a hairline inside, pixels. */
  static final double BAND_OVER = 5;

  static TimeUncertainty of(Slap slap) {
    return of(slap.timedBy(), slap.resolutionS());
  }

  static TimeUncertainty of(EstimatedSlap slap) {
    return of(slap.timedBy(), slap.resolutionS());
  }

  private static TimeUncertainty of(TimedBy timedBy, double resolutionS) {
    return switch (timedBy) {
      case PICTURE -> new TimeUncertainty(resolutionS, 0);
      case MOTION -> new TimeUncertainty(resolutionS / 2, resolutionS / 2);
      case SOUND, TYPED -> new TimeUncertainty(resolutionS, resolutionS);
    };
  }

  double wholeS() {
    return beforeS + afterS;
  }
}
