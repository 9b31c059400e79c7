package palmturn.settle;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.LongStream;
import org.jspecify.annotations.Nullable;
import palmturn.trial.ClipRef;
import palmturn.trial.Estimate;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Extra;
import palmturn.trial.Hand;
import palmturn.trial.Mirrored;
import palmturn.trial.Reading;
import palmturn.trial.Settlement;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.StartedFrom;
import palmturn.trial.TimeScale;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.trial.Zone;

/** Readings and trials made for tests. */
final class Samples {
  static final double FRAME_S = 1.0 / 60;

  private Samples() {}

  /** The seeds of tests that run over anything at all. */
  static LongStream seeds() {
    return LongStream.rangeClosed(1, 100);
  }

  /** Up to 30 marks within 6 s, on a coarse grid, of any kind, side and zone. */
  static List<Slap> anything(Random random) {
    List<Slap> slaps = new ArrayList<>();
    for (int at : random.ints(random.nextInt(31), 0, 360).distinct().toArray()) {
      slaps.add(
          Slap.onFrame(
              Slap.Kind.values()[random.nextInt(5)],
              at * FRAME_S,
              FRAME_S,
              Side.values()[random.nextInt(2)],
              Zone.values()[random.nextInt(4)]));
    }
    return slaps;
  }

  static Slap slap(double timeS, Side side, Zone zone) {
    return Slap.onFrame(Slap.Kind.SLAP, timeS, FRAME_S, side, zone);
  }

  static Slap palm(double timeS) {
    return slap(timeS, Side.PALM, Zone.CENTRE);
  }

  static Slap back(double timeS) {
    return slap(timeS, Side.BACK, Zone.CENTRE);
  }

  static Slap at(Slap slap, double timeS) {
    return slap.movedToFrame(timeS, slap.resolutionS());
  }

  /** Slaps 0.2 s apart from 1 s on, palm first. */
  static List<Slap> even(int n) {
    List<Slap> slaps = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      slaps.add(i % 2 == 0 ? palm(1 + 0.2 * i) : back(1 + 0.2 * i));
    }
    return slaps;
  }

  static List<Slap> changed(List<Slap> slaps, int i, UnaryOperator<Slap> change) {
    List<Slap> result = new ArrayList<>(slaps);
    result.set(i, change.apply(slaps.get(i)));
    return result;
  }

  static List<Slap> without(List<Slap> slaps, int i) {
    List<Slap> result = new ArrayList<>(slaps);
    result.remove(i);
    return result;
  }

  static List<Slap> with(List<Slap> slaps, Slap... more) {
    List<Slap> result = new ArrayList<>(slaps);
    result.addAll(Arrays.asList(more));
    return result;
  }

  static Reading reading(String reader, List<Slap> slaps, Span... spans) {
    return new Reading(reader, true, StartedFrom.NOTHING, slaps, Arrays.asList(spans), Extra.NONE);
  }

  static Span span(Span.SpanKind kind, double startS, double endS) {
    return new Span(kind, startS, endS, "", Extra.NONE);
  }

  static Trial trial(Reading... readings) {
    return trial(TimeScale.REAL, null, readings);
  }

  static Trial trial(TimeScale scale, @Nullable Double toS, Reading... readings) {
    return new Trial(
        new TrialId(Hand.RIGHT, "baseline", 1),
        new ClipRef("clips/a.mp4", "0".repeat(64), FRAME_S, Extra.NONE),
        null,
        toS,
        Mirrored.FALSE,
        null,
        scale,
        null,
        null,
        Arrays.asList(readings),
        null,
        Extra.NONE);
  }

  /** An estimate by motion that can't tell sides or zones. */
  static Estimate estimate(String clipSha256, double... timesS) {
    List<EstimatedSlap> slaps =
        Arrays.stream(timesS)
            .mapToObj(
                timeS ->
                    new EstimatedSlap(
                        EstimatedSlap.Timing.seen(timeS, FRAME_S),
                        EstimatedSlap.EstimatedSide.of(0, 0.5),
                        EstimatedSlap.EstimatedZone.UNKNOWN,
                        false,
                        Set.of(Estimate.Source.MOTION),
                        0.9,
                        ""))
            .toList();
    return new Estimate(
        new Estimate.Basis(clipSha256, Set.of(Estimate.Source.MOTION), 60, false, null),
        new Estimate.Findings(true, slaps, List.of(), List.of()),
        Estimate.Figures.UNKNOWN,
        Estimate.Traces.NONE,
        Estimate.Limbs.NONE,
        List.of(),
        Extra.NONE);
  }

  static ReadingComparison compare(Reading a, Reading b) throws SettleException {
    return ReadingComparison.of(trial(a, b), Settlement.begin(a.reader(), b.reader()));
  }
}
