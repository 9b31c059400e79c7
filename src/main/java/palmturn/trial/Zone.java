package palmturn.trial;

/**
 * The part of the moving hand that touched the target; all but centre and unknown are off-centre
 * faults.
 */
public enum Zone implements Coded {
  CENTRE,
  FINGERS,
  WRIST,
  EDGE,
  UNKNOWN;

  /** Returns whether this zone is a fault. */
  public boolean offCentre() {
    return this == FINGERS || this == WRIST || this == EDGE;
  }
}
