package palmturn.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.json.LimitsJson;
import palmturn.trial.ClipRef;
import palmturn.trial.Extra;
import palmturn.trial.Hand;
import palmturn.trial.Mirrored;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.StartedFrom;
import palmturn.trial.TimeScale;
import palmturn.trial.TimedBy;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.trial.Zone;

/** Trials made for tests. */
final class Made {
  static final double FRAME_S = 1.0 / 60;

  /** The limits that the program ships. */
  static final Limits LIMITS = LimitsJson.standard();

  private Made() {}

  static Trial trial(TimeScale scale) {
    return trial(Hand.RIGHT, "baseline", 1, scale, null);
  }

  static Trial trial(
      Hand hand, String block, int repeat, TimeScale scale, @Nullable Double paceSlapsPerS) {
    return new Trial(
        new TrialId(hand, block, repeat),
        new ClipRef("clips/made.mp4", "0".repeat(64), FRAME_S, Extra.NONE),
        null,
        null,
        Mirrored.FALSE,
        null,
        scale,
        paceSlapsPerS,
        null,
        List.of(),
        null,
        Extra.NONE);
  }

  /** Slaps in the centre, palm first, at the ends of intervals laid one after the other. */
  static List<Slap> slaps(double firstS, double... intervals) {
    List<Slap> slaps = new ArrayList<>();
    double timeS = firstS;
    slaps.add(slap(timeS, Side.PALM));
    for (double interval : intervals) {
      timeS += interval;
      slaps.add(slap(timeS, slaps.size() % 2 == 0 ? Side.PALM : Side.BACK));
    }
    return slaps;
  }

  static Slap slap(double timeS, Side side) {
    return mark(Slap.Kind.SLAP, timeS, side, Zone.CENTRE);
  }

  static Slap mark(Slap.Kind kind, double timeS, Side side, Zone zone) {
    return Slap.onFrame(kind, timeS, FRAME_S, side, zone);
  }

  static Slap timed(Slap slap, TimedBy timedBy, double resolutionS, @Nullable Double soundS) {
    return new Slap(
        slap.kind(),
        slap.timeS(),
        slap.side(),
        slap.zone(),
        timedBy,
        resolutionS,
        timedBy == TimedBy.PICTURE ? slap.timeS() : null,
        soundS,
        true,
        "",
        Extra.NONE);
  }

  static Reading reading(List<Slap> slaps, Span... spans) {
    return new Reading("QM", true, StartedFrom.NOTHING, slaps, List.of(spans), Extra.NONE);
  }

  static Span span(Span.SpanKind kind, double startS, double endS) {
    return new Span(kind, startS, endS, "", Extra.NONE);
  }

  static TrialScore score(List<Slap> slaps, Span... spans) {
    return Scores.trial(trial(TimeScale.REAL), reading(slaps, spans), 5.0, LIMITS);
  }

  static double[] same(int count, double interval) {
    double[] all = new double[count];
    Arrays.fill(all, interval);
    return all;
  }
}
