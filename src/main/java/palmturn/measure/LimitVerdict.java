package palmturn.measure;

/** The verdict on a figure against its limit, its interval taken into account. */
public enum LimitVerdict {
  /** The whole interval is on the good side. */
  WITHIN,
  /** The whole interval is on the bad side. */
  OVER,
  /** The limit lies inside the interval. */
  UNCLEAR,
  /** There is no figure, or no limit. */
  CANNOT_TELL
}
