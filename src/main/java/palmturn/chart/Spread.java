package palmturn.chart;

import palmturn.trial.EstimatedSlap;
import palmturn.trial.Slap;
import palmturn.trial.TimedBy;

/**
 * The stretch of time in which a mark's contact lies, seconds to both sides of the mark.
 *
 * @param beforeS how much earlier it may have been
 * @param afterS how much later
 */
record Spread(double beforeS, double afterS) {
  /** Narrower stems are drawn as hairlines, pixels. */
  static final double HAIRLINE_UNDER = 1.5;

  /** Wider ones are drawn as a band with a hairline inside, pixels. */
  static final double BAND_OVER = 5;

  static Spread of(Slap slap) {
    return of(slap.timedBy(), slap.resolutionS());
  }

  static Spread of(EstimatedSlap slap) {
    return of(slap.timedBy(), slap.resolutionS());
  }

  private static Spread of(TimedBy timedBy, double resolutionS) {
    return switch (timedBy) {
      case PICTURE -> new Spread(resolutionS, 0);
      case MOTION -> new Spread(resolutionS / 2, resolutionS / 2);
      case SOUND, TYPED -> new Spread(resolutionS, resolutionS);
    };
  }

  double wholeS() {
    return beforeS + afterS;
  }
}
