package palmturn.trial;

/** The mirroring of a file's picture, as some front cameras do it. */
public enum Mirrored implements Coded {
  TRUE,
  FALSE,
  UNKNOWN
}
