package palmturn.measure;

import palmturn.trial.Coded;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.Zone;

/** A kind of fault of an attempt; one attempt may have several. */
public enum FaultKind implements Coded {
  FINGERS,
  WRIST,
  EDGE,
  DOUBLE,
  PART_TURN,
  MISSED,
  OTHER,
  BENT_WRIST,
  ELBOW_OUT,
  TARGET_MOVED;

  /** Returns whether a mark has this fault by itself, spans left aside. */
  boolean isOf(Slap mark) {
    return switch (this) {
      case FINGERS -> mark.zone() == Zone.FINGERS;
      case WRIST -> mark.zone() == Zone.WRIST;
      case EDGE -> mark.zone() == Zone.EDGE;
      case DOUBLE -> mark.kind() == Slap.Kind.DOUBLE;
      case PART_TURN -> mark.kind() == Slap.Kind.PART_TURN;
      case MISSED -> mark.kind() == Slap.Kind.MISSED;
      case OTHER -> mark.kind() == Slap.Kind.OTHER;
      case BENT_WRIST, ELBOW_OUT, TARGET_MOVED -> false;
    };
  }

  /** Returns whether a span puts this fault on the attempts inside it. */
  boolean isOf(Span span) {
    return span.kind().spoils() && span.kind().code().equals(code());
  }
}
