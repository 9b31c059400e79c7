package palmturn.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import palmturn.trial.Curve;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Extra;
import palmturn.trial.Point;
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
            new Span(Span.SpanKind.BENT_WRIST, 2.1, 2.5, "", Extra.NONE),
            new Span(Span.SpanKind.ELBOW_OUT, 2.3, 2.9, "", Extra.NONE),
            new Span(Span.SpanKind.TARGET_MOVED, 3.9, 4.3, "", Extra.NONE),
            new Span(Span.SpanKind.PAUSE, 4.9, 5.3, "", Extra.NONE));
    return new Reading("B. Test", true, StartedFrom.NOTHING, slaps, spans, Extra.NONE);
  }

  /**
   * Returns an estimate of the same five seconds: most contacts are those of {@link #everyKind};
   * one is a double, one unsure, one off the centre, two lie after the last mark.
   */
  public static Estimate estimate() {
    List<EstimatedSlap> slaps = new ArrayList<>();
    double at = 0.8;
    for (int i = 0; i < 28; i++) {
      double moved = i == 11 ? 0.05 : 0;
      slaps.add(found(at + moved, i, Zone.UNKNOWN, false, i == 26 ? 0.3 : 0.9));
      at += 0.19 + 0.012 * Math.sin(i * 1.7) + 0.0004 * i;
    }
    slaps.add(24, found(slaps.get(23).timeS() + 0.07, 23, Zone.UNKNOWN, true, 0.8));
    List<Double> timesS = new ArrayList<>();
    List<Double> turn = new ArrayList<>();
    List<Double> sound = new ArrayList<>();
    for (double t = 0.5; t < 6.6; t += 1 / 120.0) {
      double onset = 0;
      double before = 0;
      double after = 7;
      int pose = 0;
      for (EstimatedSlap slap : slaps) {
        double since = t - slap.timeS();
        onset = Math.max(onset, since < 0 ? Math.exp(since / 0.004) : Math.exp(-since / 0.02));
        if (since >= 0) {
          before = slap.timeS();
          pose = slap.pose();
        } else {
          after = Math.min(after, slap.timeS());
        }
      }
      timesS.add(t);
      turn.add(pose * Math.tanh(4 * Math.cos(Math.PI * (t - before) / (after - before))));
      sound.add(onset);
    }
    return new Estimate(
        new Estimate.Basis(
            "0".repeat(64),
            Set.of(Estimate.Source.MOTION, Estimate.Source.SOUND, Estimate.Source.SHAPE),
            60,
            false,
            null),
        new Estimate.Findings(
            true,
            slaps,
            List.of(new Estimate.EstimatedSpan(Span.SpanKind.ELBOW_OUT, 3.2, 3.6, 0.7)),
            List.of(new Estimate.Stretch(0.8, slaps.get(slaps.size() - 1).timeS()))),
        new Estimate.Figures(5.1, 6.2, 1.9, new Estimate.Rotation(2.55, Curve.EMPTY, 2.54, 2.56)),
        new Estimate.Traces(
            new Curve(timesS, turn),
            new Curve(timesS, sound),
            -0.012,
            new Estimate.Region(430, 250, 210, 130)),
        new Estimate.Limbs(
            elbow(),
            new Estimate.Shape(
                Curve.EMPTY,
                new Estimate.TurnRange(
                    Curve.EMPTY, 171.6, new Estimate.TurnChange(175, 142.8, -38.2, -26.4)),
                null,
                new Estimate.ElbowInSpace(1.31, true, 6.1, 5.5, 7.0))),
        List.of("two contacts were seen and not heard"),
        Extra.NONE);
  }

  private static ElbowPath elbow() {
    List<ElbowPath.Sample> samples = new ArrayList<>();
    List<ElbowPath.GapEstimate> unseen = new ArrayList<>();
    for (double t = 0.5; t < 6.2; t += 1 / 60.0) {
      if (t > 4.4 && t < 4.8) {
        double across = (t - 4.4) / 0.4;
        unseen.add(
            new ElbowPath.GapEstimate(
                t, 4 + 14 * Math.sin(Math.PI * across), 2, 16 * Math.sqrt(across * (1 - across))));
        continue;
      }
      double out = 46 * Math.exp(-Math.pow((t - 3.4) / 0.3, 2));
      double x = -out + 4 * Math.sin(16 * t);
      double y = 0.3 * out + 3 * Math.cos(16 * t);
      samples.add(ElbowPath.Sample.of(t, x, y));
    }
    return new ElbowPath(
        4.8,
        null,
        new ElbowPath.PictureScale("given", 0.1, null),
        new Point(310, 240),
        samples,
        List.of(new Estimate.Stretch(4.4, 4.8)),
        unseen);
  }

  /** Returns one found contact, the palm's where {@code turn} is even. */
  public static EstimatedSlap found(
      double timeS, int turn, Zone zone, boolean isDouble, double confidence) {
    boolean heard = turn % 9 != 5;
    return new EstimatedSlap(
        new EstimatedSlap.Timing(
            timeS,
            heard ? TimedBy.SOUND : TimedBy.MOTION,
            heard ? 0.001 : 1 / 60.0,
            timeS,
            heard ? timeS - 0.012 : null),
        EstimatedSlap.EstimatedSide.of(turn % 2 == 0 ? 1 : -1, 0.9),
        new EstimatedSlap.EstimatedZone(zone, 0),
        isDouble,
        Set.of(Estimate.Source.MOTION),
        confidence,
        "");
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
