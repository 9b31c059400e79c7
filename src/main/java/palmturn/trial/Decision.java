package palmturn.trial;

import java.time.Instant;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A decision on one difference between two readings, with both marks as they were then, so that a
 * later change of either shows.
 *
 * @param <M> {@link Slap} or {@link Span}
 * @param choice which of the two stands
 * @param by who decided
 * @param at when
 * @param why in words, often empty
 * @param a the first reading's mark, null if it had none
 * @param b the second reading's mark, null if it had none
 * @param anew the mark made instead of both, only with {@link Choice#NEITHER}; null there for none
 * @param packedAt when the pack that brought it was made, as the pack says; null for one made here
 * @param extra unknown keys
 */
public record Decision<M>(
    Choice choice,
    String by,
    Instant at,
    String why,
    @Nullable M a,
    @Nullable M b,
    @Nullable M anew,
    @Nullable Instant packedAt,
    Extra extra) {

  /** A decision made here. */
  public Decision(
      Choice choice,
      String by,
      Instant at,
      String why,
      @Nullable M a,
      @Nullable M b,
      @Nullable M anew,
      Extra extra) {
    this(choice, by, at, why, a, b, anew, null, extra);
  }

  /** Returns whether another decision lets the same stand. */
  public boolean sameChoice(Decision<M> other) {
    return choice == other.choice && Objects.equals(anew, other.anew);
  }

  /** Returns this decision as one that a pack brought, or as one made here. */
  public Decision<M> withPackedAt(@Nullable Instant newPackedAt) {
    return new Decision<>(choice, by, at, why, a, b, anew, newPackedAt, extra);
  }

  /** The reading that a decision is for. */
  public enum Choice implements Coded {
    FIRST,
    SECOND,
    NEITHER,
    /** Looked at and left open, or opened again. */
    OPEN
  }

  public Decision {
    if (a == null && b == null) {
      throw new IllegalArgumentException("a decision needs what at least one of the two said");
    }
    if (anew != null && choice != Choice.NEITHER) {
      throw new IllegalArgumentException(
          "a mark made anew goes with neither, not " + choice.code());
    }
  }
}
