package palmturn.measure;

import palmturn.trial.Coded;

/** What a trial is judged by; each has one headline measure. */
public enum Quality implements Coded {
  SPEED("speed"),
  ACCURACY("accuracy"),
  RHYTHM("rhythm"),
  ENDURANCE("endurance"),
  DRIFT("drift");

  private final String code;

  Quality(String code) {
    this.code = code;
  }

  @Override
  public String code() {
    return code;
  }
}
