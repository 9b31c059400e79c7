package palmturn.advise;

import palmturn.measure.Quality;
import palmturn.trial.Coded;

/** The aim of a drill: one of the qualities, or transfer to the racket. */
public enum DrillAim implements Coded {
  SPEED("speed"),
  ACCURACY("accuracy"),
  RHYTHM("rhythm"),
  ENDURANCE("endurance"),
  DRIFT("drift"),
  TRANSFER("transfer");

  private final String code;

  DrillAim(String code) {
    this.code = code;
  }

  @Override
  public String code() {
    return code;
  }

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
