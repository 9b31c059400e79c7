package palmturn.app.marking;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import palmturn.chart.MarkWords;
import palmturn.clip.FrameTable;
import palmturn.trial.Extra;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.Zone;

/** What each key does to a reading, as pure functions. */
final class Edits {
  private Edits() {}

  /**
   * What an edit made.
   *
   * @param reading the marks after it
   * @param slap the mark it was about, if that is a slap
   * @param span the mark it was about, if that is a span
   * @param sentence what it did
   */
  record Edit(Reading reading, @Nullable Slap slap, @Nullable Span span, String sentence) {}

  /** Puts a slap on a frame; a mark that is on that frame already gets the side instead. */
  static Edit mark(Reading reading, FrameTable frames, int frame, Side side, boolean fault) {
    double timeS = frames.timeS(frame);
    Slap there = on(reading, frames, frame);
    Slap made =
        there != null
            ? there.withSide(side)
            : Slap.onFrame(Slap.Kind.SLAP, timeS, frames.resolutionS(frame), side, Zone.CENTRE);
    if (fault) {
      made = made.withKind(Slap.Kind.OTHER).withZone(Zone.UNKNOWN);
    }
    String what = fault ? " slap with a fault at " : " slap at ";
    return put(reading, there, made, side.code() + what + seconds(timeS));
  }

  /** Names the zone of a mark; the zone that it has already means back to the centre. */
  static Edit zone(Reading reading, Slap slap, Zone zone) {
    Zone next = slap.zone() == zone ? Zone.CENTRE : zone;
    Slap made = slap.withZone(next);
    if (MarkWords.unnamed(slap)) {
      made = made.withKind(Slap.Kind.SLAP);
    }
    return put(reading, slap, made, next.code() + " at " + seconds(slap.timeS()));
  }

  /** Names the kind of a mark; the kind that it has already means a plain slap again. */
  static Edit kind(Reading reading, Slap slap, Slap.Kind kind) {
    Slap.Kind next = slap.kind() == kind ? Slap.Kind.SLAP : kind;
    Slap made = slap.withKind(next);
    if (next == Slap.Kind.MISSED) {
      made = made.withZone(Zone.UNKNOWN);
    } else if (next != Slap.Kind.OTHER && made.zone() == Zone.UNKNOWN) {
      made = made.withZone(Zone.CENTRE);
    }
    return put(reading, slap, made, words(next) + " at " + seconds(slap.timeS()));
  }

  /** Says in words what is wrong with a mark. */
  static Edit other(Reading reading, Slap slap, String note) {
    Slap made = slap.withKind(Slap.Kind.OTHER).withNote(note);
    return put(reading, slap, made, "other fault at " + seconds(slap.timeS()) + ": " + note);
  }

  /** Moves a mark to a frame; where another mark is already, it stays. */
  static Edit move(Reading reading, FrameTable frames, Slap slap, int frame) {
    double timeS = frames.timeS(frame);
    Slap there = on(reading, frames, frame);
    if (there != null) {
      return new Edit(reading, slap, null, "");
    }
    Slap made = slap.movedToFrame(timeS, frames.resolutionS(frame));
    return put(
        reading,
        slap,
        made,
        "moved from %s to %s".formatted(seconds(slap.timeS()), seconds(timeS)));
  }

  /** Adds a fault over a stretch, given in either order. */
  static Edit span(Reading reading, Span.Kind kind, double oneS, double otherS) {
    Span made = new Span(kind, Math.min(oneS, otherS), Math.max(oneS, otherS), "", Extra.NONE);
    List<Span> spans = new ArrayList<>(reading.spans());
    spans.add(made);
    return new Edit(
        reading.withSpans(spans),
        null,
        made,
        "%s from %s to %s".formatted(words(kind), seconds(made.startS()), seconds(made.endS())));
  }

  /** Moves one end of a span to a moment; an end that would pass the other stays. */
  static Edit moveEnd(Reading reading, Span span, boolean start, double toS) {
    double startS = start ? toS : span.startS();
    double endS = start ? span.endS() : toS;
    if (!(endS > startS)) {
      return new Edit(reading, null, span, "");
    }
    Span made = new Span(span.kind(), startS, endS, span.note(), span.extra());
    List<Span> spans = new ArrayList<>(reading.spans());
    spans.replaceAll(each -> each == span ? made : each);
    return new Edit(
        reading.withSpans(spans), null, made, words(span.kind()) + " to " + seconds(toS));
  }

  /** Takes a slap away; the one before it is current then. */
  static Edit delete(Reading reading, Slap slap) {
    List<Slap> slaps = new ArrayList<>(reading.slaps());
    int at = slaps.indexOf(slap);
    slaps.remove(slap);
    Slap before = slaps.isEmpty() ? null : slaps.get(Math.max(0, at - 1));
    return new Edit(
        reading.withSlaps(slaps), before, null, "took away the mark at " + seconds(slap.timeS()));
  }

  /** Takes a span away. */
  static Edit delete(Reading reading, Span span) {
    List<Span> spans = new ArrayList<>(reading.spans());
    spans.remove(span);
    return new Edit(
        reading.withSpans(spans),
        null,
        null,
        "took away %s at %s".formatted(words(span.kind()), seconds(span.startS())));
  }

  /** Returns the mark that lies on a frame: one timed by sound lies on the nearest. */
  static @Nullable Slap on(Reading reading, FrameTable frames, int frame) {
    return reading.slaps().stream()
        .filter(slap -> frames.nearest(slap.timeS()) == frame)
        .findFirst()
        .orElse(null);
  }

  static String words(Slap.Kind kind) {
    return kind.code().replace('-', ' ');
  }

  static String words(Span.Kind kind) {
    return kind.code().replace('-', ' ');
  }

  private static Edit put(Reading reading, @Nullable Slap old, Slap made, String sentence) {
    List<Slap> slaps = new ArrayList<>(reading.slaps());
    if (old != null) {
      slaps.remove(old);
    }
    slaps.add(made);
    return new Edit(reading.withSlaps(slaps), made, null, sentence);
  }

  private static String seconds(double timeS) {
    return String.format(Locale.ROOT, "%.3f s", timeS);
  }
}
