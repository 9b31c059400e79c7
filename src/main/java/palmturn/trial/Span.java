package palmturn.trial;

/**
 * A fault over a stretch of time.
 *
 * @param kind what is wrong
 * @param startS first moment, media seconds
 * @param endS last moment, media seconds, after {@code startS}
 * @param note the reader's words, often empty
 * @param extra unknown keys
 */
public record Span(SpanKind kind, double startS, double endS, String note, Extra extra) {
  /** A kind of fault that lasts. */
  public enum SpanKind implements Coded {
    BENT_WRIST,
    ELBOW_OUT,
    TARGET_MOVED,
    PAUSE;

    /** Returns whether a slap inside such a span is not clean; a pause alone spoils none. */
    public boolean spoils() {
      return this != PAUSE;
    }
  }

  public Span {
    if (!(endS > startS)) {
      throw new IllegalArgumentException(
          "a span must end after it starts: %s s to %s s".formatted(startS, endS));
    }
  }

  /** Returns whether a moment lies inside, both ends included. */
  public boolean contains(double timeS) {
    return startS <= timeS && timeS <= endS;
  }
}
