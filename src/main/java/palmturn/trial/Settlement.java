package palmturn.trial;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The settling of two readings: with them and this alone the settled reading can be rebuilt.
 *
 * @param first reader whose marks stand where both agree
 * @param second the other reader, or {@link #ESTIMATE}
 * @param toleranceS real seconds up to which marks are the same; null for the rule's own
 * @param removeOffset whether a constant between the two clocks is taken off the second's first
 * @param slaps decisions on marks at a moment: those made here, oldest first, of which a later one
 *     on the same overrules, then those that packs brought
 * @param spans the same on stretches
 * @param pack the earliest pack that brought it; null for one worked on here
 * @param extra unknown keys
 */
public record Settlement(
    String first,
    String second,
    @Nullable Double toleranceS,
    boolean removeOffset,
    List<Decision<Slap>> slaps,
    List<Decision<Span>> spans,
    @Nullable PackOrigin pack,
    Extra extra) {
  /** Stands for the program's own estimate where a reader's name is wanted. */
  public static final String ESTIMATE = "estimate";

  public Settlement {
    slaps = List.copyOf(slaps);
    spans = List.copyOf(spans);
  }

  /** Returns the settling of two readings before any decision. */
  public static Settlement begin(String first, String second) {
    return new Settlement(first, second, null, false, List.of(), List.of(), null, Extra.NONE);
  }

  /** Returns whether these are the two readings, in either order. */
  public boolean between(String one, String other) {
    return first.equals(one) && second.equals(other) || first.equals(other) && second.equals(one);
  }

  /** Returns this settlement with one decision on a mark more. */
  public Settlement plusSlap(Decision<Slap> decision) {
    List<Decision<Slap>> more = new ArrayList<>(slaps);
    more.add(decision);
    return new Settlement(first, second, toleranceS, removeOffset, more, spans, null, extra);
  }

  /** Returns this settlement with one decision on a stretch more. */
  public Settlement plusSpan(Decision<Span> decision) {
    List<Decision<Span>> more = new ArrayList<>(spans);
    more.add(decision);
    return new Settlement(first, second, toleranceS, removeOffset, slaps, more, null, extra);
  }

  /** Returns this settlement with another tolerance and handling of the clocks. */
  public Settlement withTerms(@Nullable Double newToleranceS, boolean newRemoveOffset) {
    return new Settlement(first, second, newToleranceS, newRemoveOffset, slaps, spans, null, extra);
  }
}
