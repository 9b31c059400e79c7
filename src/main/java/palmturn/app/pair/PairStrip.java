package palmturn.app.pair;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;
import palmturn.chart.BeatStrip;
import palmturn.chart.Palette;
import palmturn.measure.TrialAlignment;
import palmturn.measure.TrialClock;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.TimeScale;

/**
 * The marks of both trials, one above the other, on the first trial's time axis; the other's times
 * are mapped onto it.
 *
 * @param meeting which moments are the same
 * @param oneAbove whether the first trial is the upper row
 */
record PairStrip(TrialAlignment meeting, boolean oneAbove) {
  private static final double AROUND_S = 0.35;
  private static final double EMPTY_S = 5;

  /** Few slaps are not drawn wider apart than this is wide. */
  private static final double LEAST_S = 3;

  /** The hand line of a row, from its top; its marks need as much again below. */
  static final double LINE = 74;

  static final double SPANS = 9;

  /** Height of a row. */
  static final double ROW = 140;

  TrialClock handClock(boolean above) {
    return above == oneAbove ? meeting.one() : meeting.other();
  }

  /** Returns where a row's media seconds lie on the axis. */
  DoubleUnaryOperator axis(boolean above) {
    if (above == oneAbove) {
      return meeting.one()::realS;
    }
    TrialAlignment inverse = meeting.inverse();
    return mediaS -> inverse.toOtherReal(meeting.other().realS(mediaS));
  }

  /** Returns the axis between two x, with all slaps of both on it. */
  BeatStrip.View view(double leftX, double rightX) {
    double from = Double.POSITIVE_INFINITY;
    double to = Double.NEGATIVE_INFINITY;
    for (boolean above : new boolean[] {true, false}) {
      for (Slap slap : handClock(above).slaps()) {
        double at = axis(above).applyAsDouble(slap.timeS());
        from = Math.min(from, at);
        to = Math.max(to, at);
      }
    }
    if (from > to) {
      from = 0;
      to = EMPTY_S;
    }
    from -= AROUND_S;
    to = Math.max(to + AROUND_S, from + LEAST_S);
    return new BeatStrip.View(leftX, rightX, from, (rightX - leftX) / (to - from));
  }

  /** Returns the marks of a row, its top at 0. */
  BeatStrip row(boolean above, BeatStrip.View view, Palette palette) {
    DoubleUnaryOperator axis = axis(above);
    TrialClock beats = handClock(above);
    List<Slap> marks = beats.marks().stream().map(mark -> moved(mark, axis)).toList();
    List<Span> spans = new ArrayList<>();
    for (Span span : beats.spans()) {
      double from = axis.applyAsDouble(span.startS());
      double to = axis.applyAsDouble(span.endS());
      if (to > from) {
        spans.add(new Span(span.kind(), from, to, span.note(), span.extra()));
      }
    }
    return new BeatStrip(
        marks,
        spans,
        null,
        TimeScale.REAL,
        window(above),
        view,
        BeatStrip.Lanes.plain(0, SPANS, LINE, ROW),
        palette,
        List.of(),
        false,
        null);
  }

  /** Returns the stretch from a row's first slap to its last; null without slaps. */
  BeatStrip.@Nullable Window window(boolean above) {
    List<Slap> slaps = handClock(above).slaps();
    DoubleUnaryOperator axis = axis(above);
    return slaps.isEmpty()
        ? null
        : new BeatStrip.Window(
            axis.applyAsDouble(slaps.get(0).timeS()),
            axis.applyAsDouble(slaps.get(slaps.size() - 1).timeS()));
  }

  /**
   * Returns the axis alone, from the top of all to the foot.
   *
   * @param nowS where the line stands
   */
  static BeatStrip axis(
      BeatStrip.View view, double topY, double axisY, Palette palette, double nowS, String flag) {
    return new BeatStrip(
        List.of(),
        List.of(),
        null,
        TimeScale.REAL,
        null,
        view,
        BeatStrip.Lanes.plain(topY, topY, axisY, axisY),
        palette,
        List.of(),
        true,
        new BeatStrip.Playhead(nowS, flag, -1));
  }

  private static Slap moved(Slap mark, DoubleUnaryOperator axis) {
    double at = axis.applyAsDouble(mark.timeS());
    return new Slap(
        mark.kind(),
        at,
        mark.side(),
        mark.zone(),
        mark.timedBy(),
        at - axis.applyAsDouble(mark.timeS() - mark.resolutionS()),
        null,
        null,
        mark.seen(),
        mark.note(),
        mark.extra());
  }
}
