package palmturn.trial;

/**
 * The part of the moving hand that touched the target; all but centre and unknown are off-centre
 * faults.
 */
public enum Zone implements Coded {
  CENTRE("centre"),
  FINGERS("fingers"),
  WRIST("wrist"),
  EDGE("edge"),
  UNKNOWN("unknown");

  private final String code;

  Zone(String code) {
    this.code = code;
  }

  @Override
  public String code() {
    return code;
  }

  /** Returns whether this zone is a fault. */
  public boolean offCentre() {
    return this == FINGERS || this == WRIST || this == EDGE;
  }
}
