package palmturn.trial;

/**
 * Where on the moving hand the target was touched; all but centre and unknown are off-centre
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
