package palmturn.estimate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import palmturn.estimate.elbow.ElbowDrift;
import palmturn.estimate.hands.ShapeEvidence;
import palmturn.estimate.motion.Motion;
import palmturn.estimate.motion.TurnCurve;
import palmturn.estimate.request.Request;
import palmturn.estimate.sound.Onset;
import palmturn.trial.ClipFacts;
import palmturn.trial.Curve;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate;
import palmturn.trial.Estimate.EstimatedSpan;
import palmturn.trial.Estimate.Figures;
import palmturn.trial.Estimate.Findings;
import palmturn.trial.Estimate.Limbs;
import palmturn.trial.Estimate.Rotation;
import palmturn.trial.Estimate.Source;
import palmturn.trial.Estimate.Stretch;
import palmturn.trial.Estimate.Traces;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Extra;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.TimedBy;

/**
 * Builds an estimate from the findings, in media seconds.
 *
 * @param facts of the clip
 * @param request what was asked
 * @param sources that could be used
 * @param sound strength of the onsets
 */
record EstimateBuilder(ClipFacts facts, Request request, Set<Source> sources, Curve sound) {
  /** A cross-check this far from the counted frequency is mentioned: Palmturn's choice. */
  private static final double DISAGREE = 0.1;

  /** Highest confidence of a contact that was only heard: Palmturn's choice. */
  private static final double ALONE_CONFIDENCE = 0.3;

  /** Returns a builder that names the sources by what there was. */
  static EstimateBuilder of(ClipFacts facts, Request request, Curve sound, boolean byShape) {
    Set<Source> sources = EnumSet.noneOf(Source.class);
    if (request.use().contains(Source.MOTION)) {
      sources.add(Source.MOTION);
    }
    if (!sound.isEmpty()) {
      sources.add(Source.SOUND);
    }
    if (byShape) {
      sources.add(Source.SHAPE);
    }
    return new EstimateBuilder(facts, request, sources, sound);
  }

  /** Returns an estimate without slaps. */
  Estimate withoutTrial(List<String> warnings) {
    return of(
        Findings.NONE, Figures.UNKNOWN, evidence(Curve.EMPTY, null, null), Limbs.NONE, warnings);
  }

  /** Returns an estimate from the sound alone. */
  Estimate fromSound(List<Onset> onsets, List<String> warnings) {
    List<EstimatedSlap> slaps = new ArrayList<>();
    List<Beats.Contact> contacts = new ArrayList<>();
    double variance = Slap.SOUND_SD_S * Slap.SOUND_SD_S;
    for (Onset onset : onsets) {
      slaps.add(
          new EstimatedSlap(
              new EstimatedSlap.Timing(
                  onset.timeS(), TimedBy.SOUND, Slap.SOUND_SD_S, null, onset.timeS()),
              EstimatedSlap.EstimatedSide.UNKNOWN,
              EstimatedSlap.EstimatedZone.UNKNOWN,
              false,
              EnumSet.of(Source.SOUND),
              ALONE_CONFIDENCE * Math.min(1, onset.strength()),
              "heard, not looked at"));
      contacts.add(
          new Beats.Contact(
              onset.timeS(), onset.timeS(), variance, onset.timeS(), variance, true, false));
    }
    Beats beats = Beats.of(contacts);
    List<Stretch> bursts =
        slaps.isEmpty()
            ? List.of()
            : List.of(new Stretch(slaps.get(0).timeS(), slaps.get(slaps.size() - 1).timeS()));
    return of(
        new Findings(!slaps.isEmpty(), slaps, pauses(slaps, beats), bursts),
        figures(beats, Rotation.UNKNOWN),
        evidence(Curve.EMPTY, null, null),
        Limbs.NONE,
        warnings);
  }

  /** Returns an estimate from motion, and sound where it fits. */
  Estimate fromMotion(
      Motion motion,
      SlapList slaps,
      List<Stretch> bursts,
      @Nullable ElbowPath elbow,
      ShapeEvidence.@Nullable Measured shape,
      List<String> warnings) {
    TurnCurve curve = TurnCurve.of(motion);
    List<String> all = new ArrayList<>(warnings);
    Double counted = slaps.beats().turnHz();
    checkAgainst(counted, curve.spectrumHz(), "a periodogram", all);
    if (curve.autocorrelationHz() != null) {
      checkAgainst(counted, curve.autocorrelationHz(), "autocorrelation", all);
    }
    Rotation rotation =
        new Rotation(
            counted, rotationSeries(slaps.slaps()), curve.spectrumHz(), curve.autocorrelationHz());
    List<EstimatedSpan> spans = new ArrayList<>(pauses(slaps.slaps(), slaps.beats()));
    if (elbow != null) {
      spans.addAll(ElbowDrift.out(elbow, request.elbowLimitCm()));
    }
    if (shape != null) {
      spans.addAll(shape.spans());
      spans.sort(Comparator.comparingDouble(EstimatedSpan::startS));
    }
    return of(
        new Findings(true, slaps.slaps(), spans, bursts),
        figures(slaps.beats(), rotation),
        evidence(media(curve.timesS(), curve.values()), slaps.soundOffsetS(), motion.region()),
        new Limbs(elbow, shape == null ? null : shape.shape()),
        all);
  }

  private static void checkAgainst(
      @Nullable Double counted, double other, String how, List<String> warnings) {
    if (counted != null && Math.abs(other - counted) > DISAGREE * counted) {
      warnings.add(
          String.format(
              Locale.ROOT,
              "Counting the turns gives %.2f Hz, %s %.2f Hz: the count is used.",
              counted,
              how,
              other));
    }
  }

  private Curve media(double[] realS, double[] values) {
    List<Double> times = new ArrayList<>();
    List<Double> kept = new ArrayList<>();
    for (int i = 0; i < realS.length; i++) {
      times.add(realS[i] / request.realPerMediaS());
      kept.add(values[i]);
    }
    return new Curve(times, kept);
  }

  /** Returns a frequency for each turn there and back: over two slaps that follow two others. */
  private Curve rotationSeries(List<EstimatedSlap> all) {
    List<EstimatedSlap> slaps = all.stream().filter(slap -> !slap.isDouble()).toList();
    List<Double> times = new ArrayList<>();
    List<Double> hz = new ArrayList<>();
    for (int i = 1; i + 1 < slaps.size(); i++) {
      EstimatedSlap before = slaps.get(i - 1);
      EstimatedSlap after = slaps.get(i + 1);
      if (before.pose() == after.pose() && before.pose() != slaps.get(i).pose()) {
        times.add(slaps.get(i).timeS());
        hz.add(1 / ((after.timeS() - before.timeS()) * request.realPerMediaS()));
      }
    }
    return new Curve(times, hz);
  }

  private static List<EstimatedSpan> pauses(List<EstimatedSlap> all, Beats beats) {
    List<EstimatedSlap> slaps = all.stream().filter(slap -> !slap.isDouble()).toList();
    return beats.pauses().stream()
        .map(
            i -> {
              EstimatedSlap before = slaps.get(i - 1);
              EstimatedSlap after = slaps.get(i);
              return new EstimatedSpan(
                  Span.SpanKind.PAUSE,
                  before.timeS(),
                  after.timeS(),
                  Math.min(before.confidence(), after.confidence()));
            })
        .toList();
  }

  private static Figures figures(Beats beats, Rotation rotation) {
    return new Figures(
        beats.rateSlapsPerS(), beats.intervalCvPct(), beats.timingFloorPct(), rotation);
  }

  private Traces evidence(
      Curve turn, @Nullable Double soundOffsetS, Estimate.@Nullable Region handRegion) {
    return new Traces(turn, sound, soundOffsetS, handRegion);
  }

  private Estimate of(
      Findings findings, Figures figures, Traces evidence, Limbs body, List<String> warnings) {
    Estimate.Basis basis =
        new Estimate.Basis(
            facts.sha256(),
            sources,
            1 / facts.medianFrameS(),
            facts.variableRate(),
            request.captureFps());
    return new Estimate(basis, findings, figures, evidence, body, warnings, Extra.NONE);
  }
}
