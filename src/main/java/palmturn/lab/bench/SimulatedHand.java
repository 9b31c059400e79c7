package palmturn.lab.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;
import palmturn.trial.ClipRef;
import palmturn.trial.Extra;
import palmturn.trial.Mirrored;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.StartedFrom;
import palmturn.trial.TimeScale;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.trial.Zone;

/**
 * A hand whose trials are drawn: marks by picture at 60 frames a second, with faults that come in
 * runs and in spans, and trials that differ from one another more than their slaps alone would. The
 * spreads are examples and not norms.
 *
 * @param rateSlapsPerS over many trials
 * @param faultyShare of slaps before spans and doubles, over many trials
 * @param scatterPct of the intervals about their course
 * @param slowDownPctPerS over many trials
 */
record SimulatedHand(
    double rateSlapsPerS, double faultyShare, double scatterPct, double slowDownPctPerS) {
  /** Standard deviations from one trial to the next. */
  static final double RATE_SD_PCT = 3;

  static final double LOG_ODDS_SD = 0.3;
  private static final double SCATTER_SD_PCT = 0.7;
  private static final double SLOW_DOWN_SD = 1;

  /** 60 frames a second, five seconds, and a slightly uneven turn, as usual for a trial. */
  private static final double FRAME_S = 1.0 / 60;

  private static final double LENGTH_S = 5;
  private static final double TURN_BIAS = 0.03;

  /** The probability that a slap repeats the one before it, whatever its own odds: faults run. */
  private static final double RUN_PROBABILITY = 0.15;

  /** Share of trials with a span of bent wrist, and its length. */
  private static final double SPAN_SHARE = 0.15;

  private static final double SPAN_S = 0.6;

  /** Share of slaps followed by a double tap, and its usual delay. */
  private static final double DOUBLE_SHARE = 0.015;

  private static final double DOUBLE_AFTER_S = 0.075;

  /** Returns a trial at full speed, or to a click track. */
  Trial trial(TrialId id, @Nullable Double paceSlapsPerS, Random random) {
    double odds = Math.log(faultyShare / (1 - faultyShare)) + LOG_ODDS_SD * random.nextGaussian();
    return trial(id, paceSlapsPerS, rate -> odds, true, random);
  }

  /**
   * Returns a trial whose faults depend on its pace from slap to slap.
   *
   * @param logOdds of a fault, of the local rate
   */
  Trial trial(
      TrialId id, @Nullable Double paceSlapsPerS, DoubleUnaryOperator logOdds, Random random) {
    return trial(id, paceSlapsPerS, logOdds, false, random);
  }

  private Trial trial(
      TrialId id,
      @Nullable Double paceSlapsPerS,
      DoubleUnaryOperator logOdds,
      boolean spoilt,
      Random random) {
    double[] timesS = times(paceSlapsPerS, random);
    List<Slap> slaps = new ArrayList<>();
    boolean faulty = false;
    for (int i = 0; i < timesS.length; i++) {
      double localRate =
          i == 0 || i + 1 == timesS.length ? rateSlapsPerS : 2 / (timesS[i + 1] - timesS[i - 1]);
      boolean again = i > 0 && random.nextDouble() < RUN_PROBABILITY;
      if (!again) {
        faulty = random.nextDouble() < 1 / (1 + Math.exp(-logOdds.applyAsDouble(localRate)));
      }
      Side side = i % 2 == 0 ? Side.PALM : Side.BACK;
      slaps.add(mark(Slap.Kind.SLAP, timesS[i], side, faulty ? Zone.EDGE : Zone.CENTRE));
      if (spoilt && random.nextDouble() < DOUBLE_SHARE) {
        slaps.add(mark(Slap.Kind.DOUBLE, timesS[i] + DOUBLE_AFTER_S, side, Zone.CENTRE));
      }
    }
    List<Span> spans = new ArrayList<>();
    if (spoilt && random.nextDouble() < SPAN_SHARE) {
      double startS = 1 + random.nextDouble() * (LENGTH_S - SPAN_S);
      spans.add(new Span(Span.SpanKind.BENT_WRIST, startS, startS + SPAN_S, "", Extra.NONE));
    }
    Reading reading = new Reading("A", true, StartedFrom.NOTHING, slaps, spans, Extra.NONE);
    return new Trial(
            id,
            new ClipRef("clips/" + id.name() + ".mp4", "0".repeat(64), FRAME_S, Extra.NONE),
            null,
            null,
            Mirrored.FALSE,
            null,
            TimeScale.REAL,
            paceSlapsPerS,
            null,
            List.of(),
            null,
            Extra.NONE)
        .withReading(reading);
  }

  private double[] times(@Nullable Double paceSlapsPerS, Random random) {
    double sdPct = paceSlapsPerS == null ? RATE_SD_PCT : 1;
    double rate =
        (paceSlapsPerS == null ? rateSlapsPerS : paceSlapsPerS)
            * (1 + sdPct / 100 * random.nextGaussian());
    double scatter = Math.max(1, scatterPct + SCATTER_SD_PCT * random.nextGaussian()) / 100;
    double slowing = (slowDownPctPerS + SLOW_DOWN_SD * random.nextGaussian()) / 100;
    List<Double> times = new ArrayList<>();
    double timeS = 1;
    while (timeS <= 1 + LENGTH_S + 0.5) {
      times.add(timeS);
      double course = 1 + slowing * (timeS - 1 - LENGTH_S / 2);
      double turn = times.size() % 2 == 0 ? 1 + TURN_BIAS / 2 : 1 - TURN_BIAS / 2;
      timeS += course * turn * Math.max(0.3, 1 + scatter * random.nextGaussian()) / rate;
    }
    return times.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /** The first frame that shows contact. */
  private static Slap mark(Slap.Kind kind, double timeS, Side side, Zone zone) {
    double frameS = Math.ceil(timeS / FRAME_S) * FRAME_S;
    return Slap.onFrame(kind, frameS, FRAME_S, side, zone);
  }
}
