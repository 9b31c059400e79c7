package palmturn.advise;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import palmturn.json.LimitsJson;
import palmturn.measure.Accuracy;
import palmturn.measure.CeilingScore;
import palmturn.measure.Drift;
import palmturn.measure.Endurance;
import palmturn.measure.FaultCount;
import palmturn.measure.FaultKind;
import palmturn.measure.HandScore;
import palmturn.measure.Limit;
import palmturn.measure.Limits;
import palmturn.measure.Measures;
import palmturn.measure.Quality;
import palmturn.measure.Rhythm;
import palmturn.measure.SessionScore;
import palmturn.measure.SideScore;
import palmturn.measure.Speed;
import palmturn.measure.TrialScore;
import palmturn.numbers.Confidence;
import palmturn.numbers.Range;
import palmturn.numbers.Stats;
import palmturn.trial.Hand;
import palmturn.trial.TimedBy;
import palmturn.trial.TrialId;

/** Scores made for tests, figure by figure; what is not said is well within every limit. */
final class MadeEvidence {
  private final List<TrialScore> trials = new ArrayList<>();
  private final List<HandScore> hands = new ArrayList<>();
  private final List<SideScore> sides = new ArrayList<>();
  private final List<CeilingScore> ceilings = new ArrayList<>();
  private final Map<Hand, Double> bests = new HashMap<>();
  private final Map<TrialId, List<String>> warnings = new HashMap<>();
  private Limits limits = LimitsJson.standard();

  /** The figures of one trial. */
  record Figures(
      @Nullable Double rate,
      @Nullable Double cleanPct,
      @Nullable Double steadyCv,
      double floor,
      @Nullable Double slowDown,
      @Nullable Double elbowCm,
      String refused) {
    static final Figures GOOD = new Figures(5.0, 90.0, 5.0, 1, 1.0, 1.0, "");

    Figures rate(@Nullable Double value) {
      return new Figures(value, cleanPct, steadyCv, floor, slowDown, elbowCm, refused);
    }

    Figures clean(@Nullable Double value) {
      return new Figures(rate, value, steadyCv, floor, slowDown, elbowCm, refused);
    }

    Figures cv(@Nullable Double value, double newFloor) {
      return new Figures(rate, cleanPct, value, newFloor, slowDown, elbowCm, refused);
    }

    Figures slowDown(@Nullable Double value) {
      return new Figures(rate, cleanPct, steadyCv, floor, value, elbowCm, refused);
    }

    Figures elbow(@Nullable Double value) {
      return new Figures(rate, cleanPct, steadyCv, floor, slowDown, value, refused);
    }

    Figures refused(String why) {
      return new Figures(null, cleanPct, null, floor, null, elbowCm, why);
    }
  }

  /** Returns evidence of three good trials with each hand. */
  static MadeEvidence good() {
    return new MadeEvidence()
        .hand(Hand.LEFT, "baseline", Figures.GOOD)
        .hand(Hand.RIGHT, "baseline", Figures.GOOD);
  }

  /** Puts three trials alike in place of a hand's in a block. */
  MadeEvidence hand(Hand hand, String block, Figures each) {
    return trials(hand, block, each, each, each);
  }

  /** Puts trials in place of a hand's in a block. */
  MadeEvidence trials(Hand hand, String block, Figures... figures) {
    trials.removeIf(t -> t.trial().hand() == hand && t.trial().block().equals(block));
    hands.removeIf(h -> h.hand() == hand && h.block().equals(block));
    List<TrialScore> mine = new ArrayList<>();
    for (int i = 0; i < figures.length; i++) {
      mine.add(trial(new TrialId(hand, block, i + 1), figures[i]));
    }
    trials.addAll(mine);
    for (Quality quality : Quality.values()) {
      double[] values =
          mine.stream()
              .map(Measures.headline(quality)::value)
              .filter(value -> value != null)
              .mapToDouble(Double::doubleValue)
              .toArray();
      if (!mine.isEmpty() && (values.length > 0 || quality != Quality.DRIFT)) {
        hands.add(
            new HandScore(
                hand,
                block,
                quality,
                Measures.headline(quality),
                values.length,
                Stats.mean(values),
                Stats.sd(values),
                Stats.max(values),
                null,
                Confidence.mean(values),
                List.of("QM")));
      }
    }
    return this;
  }

  MadeEvidence side(String block, Quality quality, SideScore.SideVerdict verdict) {
    double right = verdict == SideScore.SideVerdict.WEAKER_RIGHT ? 4 : 5;
    double left = verdict == SideScore.SideVerdict.WEAKER_LEFT ? 4 : 5;
    double difference = right - left;
    sides.add(
        new SideScore(
            block,
            quality,
            Measures.headline(quality),
            right,
            left,
            difference,
            null,
            new Range(difference - 0.5, difference + 0.5),
            0.45,
            verdict,
            0,
            List.of("QM")));
    return this;
  }

  MadeEvidence minRate(double slapsPerS) {
    limits =
        new Limits(
            limits.cleanSharePct(),
            limits.steadyCvPct(),
            limits.slowDownPctPerS(),
            limits.elbowCm(),
            new Limit(slapsPerS, "the coach"),
            limits.margins());
    return this;
  }

  MadeEvidence best(Hand hand, double slapsPerS) {
    bests.put(hand, slapsPerS);
    return this;
  }

  MadeEvidence ceiling(Hand hand, double slapsPerS) {
    ceilings.add(
        new CeilingScore(
            hand,
            CeilingScore.CeilingOutcome.FOUND,
            slapsPerS,
            null,
            null,
            new Range(3, 6),
            6,
            3,
            150,
            15,
            List.of("QM")));
    return this;
  }

  MadeEvidence warn(TrialId trial, String warning) {
    warnings.put(trial, List.of(warning));
    return this;
  }

  Evidence made() {
    return new Evidence(
        new SessionScore(
            "H-07", LocalDate.of(2026, 11, 14), trials, hands, sides, List.of(), ceilings),
        limits,
        bests,
        warnings);
  }

  private static TrialScore trial(TrialId id, Figures of) {
    int attempts = 100;
    Integer clean = of.cleanPct == null ? null : (int) Math.round(of.cleanPct);
    Map<FaultKind, FaultCount> faults = new EnumMap<>(FaultKind.class);
    if (clean != null && clean < attempts) {
      faults.put(FaultKind.EDGE, new FaultCount(attempts - clean, 0, 0, 0));
    } else {
      faults.put(FaultKind.EDGE, new FaultCount(0, 0, 0, 0));
    }
    return new TrialScore(
        id,
        "QM",
        true,
        null,
        new Speed(of.rate, null, null, false, null, null),
        new Accuracy(
            attempts,
            0,
            attempts,
            clean,
            of.cleanPct,
            clean == null ? null : Confidence.wilson(clean, attempts).times(100),
            faults),
        new Rhythm(TimedBy.SOUND, 24, 0, 0, null, of.steadyCv, null, null, null, null, of.floor),
        new Endurance(of.slowDown, null, null, null),
        new Drift(of.elbowCm, null, null),
        List.of(),
        List.of(),
        new EnumMap<>(Quality.class),
        of.refused);
  }
}
