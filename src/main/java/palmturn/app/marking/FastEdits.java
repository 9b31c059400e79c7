package palmturn.app.marking;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import palmturn.trial.Extra;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.TimedBy;
import palmturn.trial.Zone;
import palmturn.wording.MarkNames;

/** Edits of a reading made by fast marking, as pure functions. */
final class FastEdits {
  private FastEdits() {}

  /**
   * Adds a typed mark; its zone is unknown.
   *
   * @param halfS half the mark's width, media seconds
   */
  static Edits.Edit addTyped(
      Reading reading, double timeS, double halfS, Side side, boolean fault) {
    Slap made =
        new Slap(
            fault ? Slap.Kind.OTHER : Slap.Kind.SLAP,
            timeS,
            side,
            Zone.UNKNOWN,
            TimedBy.TYPED,
            halfS,
            null,
            null,
            true,
            "",
            Extra.NONE);
    return new Edits.Edit(
        reading.plus(made),
        made,
        null,
        String.format(Locale.ROOT, "typed %s at clip %.3f s", side.code(), timeS));
  }

  /** Replaces typed marks by snapped ones. */
  static Edits.Edit snap(Reading reading, Snapping settling) {
    Map<Slap, Slap> to = new HashMap<>();
    settling.moves().forEach(move -> to.put(move.from(), move.to()));
    List<Slap> slaps = new ArrayList<>(reading.slaps());
    slaps.replaceAll(slap -> to.getOrDefault(slap, slap));
    return new Edits.Edit(reading.withSlaps(slaps), null, null, summary(settling));
  }

  static String summary(Snapping settling) {
    int all = settling.moves().size();
    long lagMs = Math.round(1000 * Math.abs(settling.lagS()));
    return String.format(Locale.ROOT, "snapped %d of %d typed marks", settling.snapped(), all)
        + (lagMs == 0
            ? ""
            : String.format(
                Locale.ROOT, ", typed %d ms %s", lagMs, settling.lagS() > 0 ? "late" : "early"))
        + (settling.unmatched() == 0
            ? ""
            : String.format(
                Locale.ROOT,
                "; %d without evidence nearby: move %s to the frame of contact",
                settling.unmatched(),
                settling.unmatched() == 1 ? "it" : "them"));
  }

  /** Sets a mark's zone; the mark counts as seen. */
  static Edits.Edit setZone(Reading reading, Slap slap, Zone zone) {
    Slap made = slap.withSeen(true).withZone(zone);
    if (MarkNames.unnamed(slap)) {
      made = made.withKind(Slap.Kind.SLAP);
    }
    return replace(reading, slap, made, zone.code());
  }

  /** Sets a mark's kind; the mark counts as seen. */
  static Edits.Edit setKind(Reading reading, Slap slap, Slap.Kind kind) {
    Zone zone = slap.zone() == Zone.UNKNOWN ? Zone.CENTRE : slap.zone();
    Slap made =
        slap.withSeen(true).withKind(kind).withZone(kind == Slap.Kind.MISSED ? Zone.UNKNOWN : zone);
    return replace(reading, slap, made, Edits.words(kind));
  }

  /** Sets a mark's side; an unseen mark stays unseen. */
  static Edits.Edit setSide(Reading reading, Slap slap, Side side) {
    return replace(reading, slap, slap.withSide(side), side.code());
  }

  /** Sets whether a mark is a double. */
  static Edits.Edit setDouble(Reading reading, Slap slap, boolean isDouble) {
    Slap made = slap.withKind(isDouble ? Slap.Kind.DOUBLE : Slap.Kind.SLAP);
    return replace(reading, slap, made, isDouble ? "double" : "no double");
  }

  private static Edits.Edit replace(Reading reading, Slap old, Slap made, String what) {
    List<Slap> slaps = new ArrayList<>(reading.slaps());
    slaps.replaceAll(each -> each == old ? made : each);
    return new Edits.Edit(
        reading.withSlaps(slaps),
        made,
        null,
        String.format(Locale.ROOT, "%s at clip %.3f s", what, made.timeS()));
  }
}
