package palmturn.chart;

import java.util.ArrayList;
import java.util.List;
import palmturn.trial.Extra;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.StartedFrom;
import palmturn.trial.TimedBy;
import palmturn.trial.Zone;

/** Invented marks that hold every kind there is. */
public final class Samples {
  private Samples() {}

  /** Returns a reading of about five seconds with every kind of mark, timing and span. */
  public static Reading everyKind() {
    List<Slap> slaps = new ArrayList<>();
    double at = 0.8;
    for (int i = 0; i < 26; i++) {
      Side side = i % 2 == 0 ? Side.PALM : Side.BACK;
      slaps.add(mark(Slap.Kind.SLAP, at, side, Zone.CENTRE, ""));
      at += 0.19 + 0.012 * Math.sin(i * 1.7) + 0.0004 * i;
    }
    replace(slaps, 4, slaps.get(4).withZone(Zone.FINGERS));
    replace(slaps, 7, slaps.get(7).withZone(Zone.WRIST));
    replace(slaps, 9, slaps.get(9).withZone(Zone.FINGERS));
    replace(slaps, 10, slaps.get(10).withZone(Zone.EDGE));
    replace(slaps, 12, slaps.get(12).withKind(Slap.Kind.PART_TURN));
    replace(slaps, 13, slaps.get(13).withKind(Slap.Kind.MISSED));
    replace(slaps, 15, slaps.get(15).withKind(Slap.Kind.OTHER).withNote("hit the sleeve"));
    replace(slaps, 16, slaps.get(16).withKind(Slap.Kind.OTHER));
    replace(slaps, 18, slaps.get(18).withSide(Side.UNKNOWN));
    replace(slaps, 20, timed(slaps.get(20), TimedBy.MOTION, 0.033));
    replace(slaps, 21, timed(slaps.get(21), TimedBy.TYPED, 0.06));
    replace(slaps, 22, timed(slaps.get(22), TimedBy.SOUND, 0.003));
    slaps.add(mark(Slap.Kind.DOUBLE, slaps.get(2).timeS() + 0.07, Side.PALM, Zone.CENTRE, ""));
    List<Span> spans =
        List.of(
            new Span(Span.Kind.BENT_WRIST, 2.1, 2.5, "", Extra.NONE),
            new Span(Span.Kind.ELBOW_OUT, 2.3, 2.9, "", Extra.NONE),
            new Span(Span.Kind.TARGET_MOVED, 3.9, 4.3, "", Extra.NONE),
            new Span(Span.Kind.PAUSE, 4.9, 5.3, "", Extra.NONE));
    return new Reading("B. Test", true, StartedFrom.NOTHING, slaps, spans, Extra.NONE);
  }

  private static void replace(List<Slap> slaps, int i, Slap by) {
    slaps.set(i, by);
  }

  private static Slap mark(Slap.Kind kind, double at, Side side, Zone zone, String note) {
    return Slap.onFrame(kind, at, 1 / 60.0, side, zone).withNote(note);
  }

  private static Slap timed(Slap s, TimedBy by, double resolutionS) {
    return new Slap(
        s.kind(), s.timeS(), s.side(), s.zone(), by, resolutionS, null, null, true, "", Extra.NONE);
  }
}
