package palmturn.wording;

import palmturn.trial.Slap;
import palmturn.trial.Span;

/** Names of marks and spans for people. */
public final class MarkNames {
  private MarkNames() {}

  /** Returns the fault of a mark in one or two words; empty for a slap without one. */
  public static String fault(Slap slap) {
    return switch (slap.kind()) {
      case SLAP -> slap.zone().offCentre() ? slap.zone().code() : "";
      case DOUBLE -> "double";
      case PART_TURN -> "part turn";
      case MISSED -> "missed";
      case OTHER -> unnamed(slap) ? "fault" : "other";
    };
  }

  /** Returns what is wrong over a span in one or two words. */
  public static String fault(Span.SpanKind kind) {
    return switch (kind) {
      case BENT_WRIST -> "bent wrist";
      case ELBOW_OUT -> "elbow out";
      case TARGET_MOVED -> "target moved";
      case PAUSE -> "pause";
    };
  }

  /** Returns whether a mark says that something is wrong and not yet what. */
  public static boolean unnamed(Slap slap) {
    return slap.kind() == Slap.Kind.OTHER && slap.note().isBlank() && !slap.zone().offCentre();
  }
}
