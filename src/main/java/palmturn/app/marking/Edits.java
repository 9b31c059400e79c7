package palmturn.app.marking;

import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import palmturn.clip.FrameTable;
import palmturn.trial.Estimate;
import palmturn.trial.Extra;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.StartedFrom;
import palmturn.trial.Zone;
import palmturn.wording.MarkNames;

/** Edits of a reading, as pure functions. */
final class Edits {
  private Edits() {}

  /**
   * The result of an edit.
   *
   * @param reading the marks after it
   * @param slap the mark it was about, if that is a slap
   * @param span the mark it was about, if that is a span
   * @param sentence what it did
   */
  record Edit(Reading reading, @Nullable Slap slap, @Nullable Span span, String sentence) {}

  /** Adds a slap on a frame; a mark already there gets the side instead. */
  static Edit markSlap(Reading reading, FrameTable frames, int frame, Side side, boolean fault) {
    double timeS = frames.timeS(frame);
    Slap there = slapOn(reading, frames, frame);
    Slap made =
        there != null
            ? there.withSide(side)
            : Slap.onFrame(Slap.Kind.SLAP, timeS, frames.resolutionS(frame), side, Zone.CENTRE);
    if (fault) {
      made = made.withKind(Slap.Kind.OTHER).withZone(Zone.UNKNOWN);
    }
    String what = fault ? " slap with a fault at " : " slap at ";
    return replace(reading, there, made, side.code() + what + seconds(timeS));
  }

  /** Sets the zone of a mark; the same zone again resets it to the centre. */
  static Edit toggleZone(Reading reading, Slap slap, Zone zone) {
    Zone next = slap.zone() == zone ? Zone.CENTRE : zone;
    Slap made = slap.withZone(next);
    if (MarkNames.unnamed(slap)) {
      made = made.withKind(Slap.Kind.SLAP);
    }
    return replace(reading, slap, made, next.code() + " at " + seconds(slap.timeS()));
  }

  /** Sets the kind of a mark; the same kind again resets it to a slap. */
  static Edit toggleKind(Reading reading, Slap slap, Slap.Kind kind) {
    Slap.Kind next = slap.kind() == kind ? Slap.Kind.SLAP : kind;
    Slap made = slap.withKind(next);
    if (next == Slap.Kind.MISSED) {
      made = made.withZone(Zone.UNKNOWN);
    } else if (next != Slap.Kind.OTHER && made.zone() == Zone.UNKNOWN) {
      made = made.withZone(Zone.CENTRE);
    }
    return replace(reading, slap, made, words(next) + " at " + seconds(slap.timeS()));
  }

  /** Describes a fault in words. */
  static Edit describeFault(Reading reading, Slap slap, String note) {
    Slap made = slap.withKind(Slap.Kind.OTHER).withNote(note);
    return replace(reading, slap, made, "other fault at " + seconds(slap.timeS()) + ": " + note);
  }

  /** Moves a mark to a frame, unless another mark is there. */
  static Edit moveSlap(Reading reading, FrameTable frames, Slap slap, int frame) {
    double timeS = frames.timeS(frame);
    Slap there = slapOn(reading, frames, frame);
    if (there != null) {
      return new Edit(reading, slap, null, "");
    }
    Slap made = slap.movedToFrame(timeS, frames.resolutionS(frame));
    return replace(
        reading,
        slap,
        made,
        "moved from %s to %s".formatted(seconds(slap.timeS()), seconds(timeS)));
  }

  /** Adds a span between two times, given in either order. */
  static Edit addSpan(Reading reading, Span.SpanKind kind, double oneS, double otherS) {
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
  static Edit moveSpanEnd(Reading reading, Span span, boolean start, double toS) {
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

  /** Deletes a slap; the one before it becomes current. */
  static Edit delete(Reading reading, Slap slap) {
    List<Slap> slaps = new ArrayList<>(reading.slaps());
    int at = slaps.indexOf(slap);
    slaps.remove(slap);
    Slap before = slaps.isEmpty() ? null : slaps.get(Math.max(0, at - 1));
    return new Edit(
        reading.withSlaps(slaps), before, null, "deleted the mark at " + seconds(slap.timeS()));
  }

  /** Deletes a span. */
  static Edit delete(Reading reading, Span span) {
    List<Span> spans = new ArrayList<>(reading.spans());
    spans.remove(span);
    return new Edit(
        reading.withSpans(spans),
        null,
        null,
        "deleted %s at %s".formatted(words(span.kind()), seconds(span.startS())));
  }

  /**
   * Copies an estimate's slaps into a reading in place of what it had, all of them unseen. A span
   * can't be unseen, so that those found are left for the reader to mark.
   */
  static Edit copyEstimate(Reading reading, Estimate estimate) {
    Reading copied = estimate.toReading(reading.reader());
    int marks = copied.slaps().size();
    return new Edit(
        new Reading(
            reading.reader(),
            false,
            copied.startedFrom(),
            true,
            reading.reopenedAt(),
            reading.received(),
            copied.slaps(),
            List.of(),
            reading.extra()),
        null,
        null,
        String.format(
            Locale.ROOT,
            "started from the estimate: %d %s to check",
            marks,
            marks == 1 ? "mark" : "marks"));
  }

  /**
   * Infers the unknown sides of copied marks once the side of one is set.
   *
   * @param edit that set it
   */
  static Edit inferSides(Reading before, Edit edit, Estimate estimate) {
    Slap named = edit.slap();
    if (named == null
        || named.side() == Side.UNKNOWN
        || before.startedFrom().source() != StartedFrom.Origin.ESTIMATE) {
      return edit;
    }
    Map<Double, Side> sides = new HashMap<>();
    estimate
        .withKnownSide(named.timeS(), named.side())
        .slaps()
        .forEach(found -> sides.put(found.timeS(), found.side()));
    if (sides.get(named.timeS()) != named.side()) {
      return edit;
    }
    List<Slap> slaps = new ArrayList<>(edit.reading().slaps());
    slaps.replaceAll(
        slap ->
            slap.side() == Side.UNKNOWN
                ? slap.withSide(sides.getOrDefault(slap.timeS(), Side.UNKNOWN))
                : slap);
    Reading after = edit.reading().withSlaps(slaps);
    return after.equals(edit.reading())
        ? edit
        : new Edit(after, named, null, edit.sentence() + ", and inferred the other sides");
  }

  /** Marks the slaps on a frame as seen. */
  static Reading markSeen(Reading reading, FrameTable frames, int frame) {
    List<Slap> slaps = new ArrayList<>(reading.slaps());
    slaps.replaceAll(
        slap -> !slap.seen() && frames.nearest(slap.timeS()) == frame ? withSeen(slap) : slap);
    return reading.withSlaps(slaps);
  }

  /** Keeps marks seen that an undone state has as unseen. */
  static Reading keepSeen(Reading travelled, Reading before) {
    List<Slap> slaps = new ArrayList<>(travelled.slaps());
    slaps.replaceAll(
        slap -> !slap.seen() && before.slaps().contains(withSeen(slap)) ? withSeen(slap) : slap);
    return travelled
        .withSlaps(slaps)
        .withEstimateSeen(travelled.estimateSeen() || before.estimateSeen());
  }

  /** Records when a reading is reopened, after earlier records. */
  static Reading noteReopening(Reading after, Reading before, InstantSource clock) {
    List<Instant> moments = new ArrayList<>(before.reopenedAt());
    if (before.finished() && !after.finished()) {
      moments.add(clock.instant().truncatedTo(ChronoUnit.SECONDS));
    }
    return after.withReopenedAt(moments);
  }

  /** A slap that was looked at and given no fault touched the centre. */
  private static Slap withSeen(Slap slap) {
    boolean open = slap.zone() == Zone.UNKNOWN && !slap.faulty() || slap.kind() == Slap.Kind.DOUBLE;
    return slap.withSeen(true).withZone(open ? Zone.CENTRE : slap.zone());
  }

  /** Returns how many marks the reader has not stopped on yet. */
  static int countUnseen(Reading reading) {
    return (int) reading.slaps().stream().filter(slap -> !slap.seen()).count();
  }

  /** Returns the mark that lies on a frame: one timed by sound lies on the nearest. */
  static @Nullable Slap slapOn(Reading reading, FrameTable frames, int frame) {
    return reading.slaps().stream()
        .filter(slap -> frames.nearest(slap.timeS()) == frame)
        .findFirst()
        .orElse(null);
  }

  static String words(Slap.Kind kind) {
    return kind.code().replace('-', ' ');
  }

  static String words(Span.SpanKind kind) {
    return kind.code().replace('-', ' ');
  }

  private static Edit replace(Reading reading, @Nullable Slap old, Slap edited, String sentence) {
    // A mark that is changed has been seen.
    Slap made = edited.seen() ? edited : withSeen(edited);
    List<Slap> slaps = new ArrayList<>(reading.slaps());
    if (old != null) {
      slaps.remove(old);
    }
    slaps.add(made);
    return new Edit(reading.withSlaps(slaps), made, null, sentence);
  }

  private static String seconds(double timeS) {
    return String.format(Locale.ROOT, "clip %.3f s", timeS);
  }
}
