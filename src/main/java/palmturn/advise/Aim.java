package palmturn.advise;

import palmturn.measure.Quality;
import palmturn.trial.Coded;

/** What a drill is for: one of the qualities, or carrying the hand's control over to the racket. */
public enum Aim implements Coded {
  SPEED("speed"),
  ACCURACY("accuracy"),
  RHYTHM("rhythm"),
  ENDURANCE("endurance"),
  DRIFT("drift"),
  TRANSFER("transfer");

  private final String code;

  Aim(String code) {
    this.code = code;
  }

  @Override
  public String code() {
    return code;
  }

  /** Returns the aim of training a quality. */
  public static Aim of(Quality quality) {
    return switch (quality) {
      case SPEED -> SPEED;
      case ACCURACY -> ACCURACY;
      case RHYTHM -> RHYTHM;
      case ENDURANCE -> ENDURANCE;
      case DRIFT -> DRIFT;
    };
  }
}
