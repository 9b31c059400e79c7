package palmturn.trial;

/** The side of the moving hand that touched the target palm. */
public enum Side implements Coded {
  PALM,
  BACK,
  UNKNOWN
}
