package palmturn.advise;

import palmturn.measure.Quality;
import palmturn.trial.Coded;

/** The aim of a drill: one of the qualities, or transfer to the racket. */
public enum DrillAim implements Coded {
  SPEED,
  ACCURACY,
  RHYTHM,
  ENDURANCE,
  DRIFT,
  TRANSFER;

  /** Returns the aim of training a quality. */
  public static DrillAim of(Quality quality) {
    return switch (quality) {
      case SPEED -> SPEED;
      case ACCURACY -> ACCURACY;
      case RHYTHM -> RHYTHM;
      case ENDURANCE -> ENDURANCE;
      case DRIFT -> DRIFT;
    };
  }
}
