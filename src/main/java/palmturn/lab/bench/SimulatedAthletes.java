package palmturn.lab.bench;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import palmturn.clip.Progress;
import palmturn.measure.CeilingScore;
import palmturn.measure.Limits;
import palmturn.measure.Measures;
import palmturn.measure.Quality;
import palmturn.measure.ReadingChoice;
import palmturn.measure.RetestScore;
import palmturn.measure.Scores;
import palmturn.measure.SessionScore;
import palmturn.measure.SideScore;
import palmturn.measure.TrialScore;
import palmturn.numbers.Range;
import palmturn.trial.Block;
import palmturn.trial.Drill;
import palmturn.trial.DrillHand;
import palmturn.trial.Extra;
import palmturn.trial.Hand;
import palmturn.trial.Session;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.work.score.LimitsInForce;

/**
 * Draws athletes whose truth is known, three trials a hand before and after a drill of the right
 * hand, and counts how often the intervals hold it and what the verdicts say.
 */
public final class SimulatedAthletes {
  /** Trials a hand in each block, as the protocol asks for. */
  private static final int REPEATS = 3;

  /** Enough that the truth's own error is far below an interval's width. */
  private static final int TRIALS_FOR_TRUTH = 4000;

  /** The goal for 95 % intervals: nominal less what sampling takes off. */
  private static final double COVERED_PCT = 93.5;

  /** The false alarms that 95 % intervals allow. */
  private static final double FALSE_ALARM_PCT = 5;

  /** An example: a ceiling below full speed, with faults that grow at a plausible slope. */
  private static final double CEILING_SLAPS_PER_S = 4.4;

  private static final double CEILING_SLOPE = 1.6;
  private static final String AFTER = "after-1";

  private final int athletes;
  private final Random random;
  private final Progress progress;
  private final Limits limits = LimitsInForce.STANDARD.limits();
  private final List<BenchFigure> figures = new ArrayList<>();

  /** The two hands before and after a drill. */
  private record Scenario(
      String id,
      String name,
      SimulatedHand rightBefore,
      SimulatedHand rightAfter,
      SimulatedHand leftBefore,
      SimulatedHand leftAfter) {
    boolean alike() {
      return rightBefore.equals(leftBefore) && rightAfter.equals(leftAfter);
    }
  }

  private static final SimulatedHand PLAIN = new SimulatedHand(4.8, 0.16, 6, 1.5);
  private static final SimulatedHand PRACTISED = new SimulatedHand(5.1, 0.10, 5.5, 1.2);
  private static final List<Scenario> CASES =
      List.of(
          new Scenario(
              "practice", "practice alone, hands alike", PLAIN, PRACTISED, PLAIN, PRACTISED),
          new Scenario(
              "drill",
              "a drill that works, hands apart",
              new SimulatedHand(4.3, 0.30, 8, 3),
              new SimulatedHand(5.1, 0.12, 6, 1.5),
              new SimulatedHand(5.1, 0.12, 5.5, 1.2),
              new SimulatedHand(5.2, 0.11, 5.4, 1.2)));

  private SimulatedAthletes(int athletes, Random random, Progress progress) {
    this.athletes = athletes;
    this.random = random;
    this.progress = progress;
  }

  /**
   * Returns how often each interval held the truth, how wide it was, and what the verdicts said.
   *
   * @param athletes how many are drawn for each case
   */
  public static List<BenchFigure> run(int athletes, Random random, Progress progress) {
    SimulatedAthletes all = new SimulatedAthletes(athletes, random, progress);
    for (Scenario each : CASES) {
      all.compare(each);
    }
    all.addCeilings("free", "trials at full speed alone", List.of());
    all.addCeilings("ladder", "with a pace ladder", List.of(0.6, 0.75, 0.9));
    return List.copyOf(all.figures);
  }

  /** The counts for one kind of confidence interval. */
  private static final class Tally {
    private int intervals;
    private int held;
    private double width;
    private final Map<String, Integer> verdicts = new LinkedHashMap<>();

    void add(@Nullable Range range, double truth, String verdict) {
      verdicts.merge(verdict, 1, Integer::sum);
      if (range != null) {
        intervals++;
        held += range.contains(truth) ? 1 : 0;
        width += range.width();
      }
    }

    int count(String... codes) {
      int sum = 0;
      for (String code : codes) {
        sum += verdicts.getOrDefault(code, 0);
      }
      return sum;
    }
  }

  private void compare(Scenario drawn) {
    Map<Quality, Double> rightBefore = truth(drawn.rightBefore());
    Map<Quality, Double> rightAfter = truth(drawn.rightAfter());
    Map<Quality, Double> leftBefore = truth(drawn.leftBefore());
    Map<Quality, Double> leftAfter = truth(drawn.leftAfter());
    Map<Quality, Tally> sides = tallies();
    Map<Quality, Tally> changes = tallies();
    Map<Quality, Tally> nets = tallies();
    for (int i = 0; i < athletes && !progress.stopped(); i++) {
      progress.at((double) i / athletes, drawn.name());
      SessionScore score = score(drawn);
      for (SideScore side : score.sides()) {
        if (side.block().equals(Block.BASELINE)) {
          double true0 = of(rightBefore, side.quality()) - of(leftBefore, side.quality());
          of(sides, side.quality()).add(side.difference95(), true0, side.verdict().code());
        }
      }
      for (RetestScore change : score.retest()) {
        Quality quality = change.quality();
        if (change.hand() == Hand.RIGHT) {
          double own = of(rightAfter, quality) - of(rightBefore, quality);
          double net = own - of(leftAfter, quality) + of(leftBefore, quality);
          of(changes, quality).add(change.difference95(), own, change.verdict().code());
          of(nets, quality).add(change.net95(), net, change.netVerdict().code());
        }
      }
    }
    boolean alike = drawn.alike();
    addFigures(drawn, "sides", "right − left", sides, alike, "weaker-left", "weaker-right");
    addFigures(drawn, "change", "after − before", changes, false, "better", "worse");
    addFigures(drawn, "net", "net change", nets, alike, "better", "worse");
  }

  private SessionScore score(Scenario drawn) {
    List<Trial> trials = new ArrayList<>();
    for (int repeat = 1; repeat <= REPEATS; repeat++) {
      trials.add(trial(drawn.rightBefore(), Hand.RIGHT, Block.BASELINE, repeat));
      trials.add(trial(drawn.leftBefore(), Hand.LEFT, Block.BASELINE, repeat));
      trials.add(trial(drawn.rightAfter(), Hand.RIGHT, AFTER, repeat));
      trials.add(trial(drawn.leftAfter(), Hand.LEFT, AFTER, repeat));
    }
    Drill drill = new Drill("paced-flips", DrillHand.RIGHT, "", null, null, Extra.NONE);
    Session session =
        Session.begin("S-00", LocalDate.EPOCH)
            .withBlocks(
                List.of(
                    new Block(Block.BASELINE, null, Extra.NONE),
                    new Block(AFTER, drill, Extra.NONE)));
    return Scores.session(session, trials, ReadingChoice.FIRST, limits);
  }

  private Trial trial(SimulatedHand hand, Hand moving, String block, int repeat) {
    return hand.trial(new TrialId(moving, block, repeat), null, random);
  }

  /** A quality's truth is its headline figure over many trials of the hand. */
  private Map<Quality, Double> truth(SimulatedHand hand) {
    Map<Quality, Double> sums = new EnumMap<>(Quality.class);
    for (int i = 0; i < TRIALS_FOR_TRUTH; i++) {
      Trial trial = trial(hand, Hand.RIGHT, Block.BASELINE, 1);
      TrialScore score =
          Scores.trial(trial, trial.readings().get(0), Session.DEFAULT_WINDOW_S, limits);
      for (Quality quality : Quality.values()) {
        Double value = Measures.headline(quality).value(score);
        sums.merge(quality, value == null ? 0 : value / TRIALS_FOR_TRUTH, Double::sum);
      }
    }
    return sums;
  }

  private static <T> T of(Map<Quality, T> each, Quality quality) {
    return Objects.requireNonNull(each.get(quality));
  }

  private static Map<Quality, Tally> tallies() {
    Map<Quality, Tally> tallies = new EnumMap<>(Quality.class);
    for (Quality quality : Quality.values()) {
      tallies.put(quality, new Tally());
    }
    return tallies;
  }

  /**
   * Adds the rows of one comparison.
   *
   * @param none whether there is no difference, so that every telling verdict is a false alarm
   * @param telling the verdicts that say that there is one
   */
  private void addFigures(
      Scenario drawn,
      String id,
      String what,
      Map<Quality, Tally> tallies,
      boolean none,
      String... telling) {
    tallies.forEach(
        (quality, tally) -> {
          if (tally.intervals == 0) {
            return;
          }
          String key = "%s.%s.%s.".formatted(drawn.id(), id, quality.code());
          String of = "%s: %s, %s".formatted(drawn.name(), what, Measures.headline(quality).name());
          figures.add(
              percentFigure(
                  key + "coveredPct",
                  of + ": interval holds the truth",
                  tally.held,
                  tally.intervals,
                  COVERED_PCT,
                  true));
          figures.add(
              new BenchFigure(
                  key + "width",
                  of + ": mean width",
                  unit(quality),
                  tally.intervals,
                  tally.width / tally.intervals,
                  null,
                  false,
                  null,
                  null));
          String says = none ? ": says a difference that is not there" : ": says a difference";
          figures.add(
              percentFigure(
                  key + "differencePct",
                  of + says,
                  tally.count(telling),
                  tally.intervals,
                  none ? FALSE_ALARM_PCT : null,
                  false));
          figures.add(
              percentFigure(
                  key + "nonePct",
                  of + ": says balanced or no change",
                  tally.count("balanced", "no-change"),
                  tally.intervals,
                  null,
                  false));
        });
  }

  private static String unit(Quality quality) {
    return quality == Quality.ACCURACY || quality == Quality.RHYTHM
        ? "points"
        : Measures.headline(quality).unit();
  }

  private static BenchFigure percentFigure(
      String id, String what, int part, int whole, @Nullable Double goal, boolean higher) {
    return new BenchFigure(
        id, what, "%", whole, whole == 0 ? null : 100.0 * part / whole, goal, higher, null, null);
  }

  /** Three trials at full speed, and one at each share of it. */
  private void addCeilings(String id, String name, List<Double> ladder) {
    SimulatedHand hand = new SimulatedHand(5.2, 0.1, 5, 1.5);
    int held = 0;
    int closed = 0;
    double width = 0;
    Map<CeilingScore.CeilingOutcome, Integer> outcomes =
        new EnumMap<>(CeilingScore.CeilingOutcome.class);
    double truth = marginalCeiling();
    for (int i = 0; i < athletes && !progress.stopped(); i++) {
      progress.at((double) i / athletes, "clean ceiling, " + name);
      List<Trial> trials = new ArrayList<>();
      for (int repeat = 1; repeat <= REPEATS; repeat++) {
        trials.add(ceilingTrial(hand, repeat, null));
      }
      for (double share : ladder) {
        trials.add(ceilingTrial(hand, trials.size() + 1, share * hand.rateSlapsPerS()));
      }
      CeilingScore found =
          Scores.session(
                  Session.begin("S-00", LocalDate.EPOCH), trials, ReadingChoice.FIRST, limits)
              .withCeilings(random)
              .ceilings()
              .get(0);
      outcomes.merge(found.outcome(), 1, Integer::sum);
      Double low = found.lowSlapsPerS();
      Double high = found.highSlapsPerS();
      held += (low == null || low <= truth) && (high == null || high >= truth) ? 1 : 0;
      if (low != null && high != null) {
        closed++;
        width += high - low;
      }
    }
    String key = "ceiling.%s.".formatted(id);
    String of = "clean ceiling, " + name;
    figures.add(
        percentFigure(
            key + "coveredPct",
            of + ": interval holds the truth",
            held,
            athletes,
            COVERED_PCT,
            true));
    figures.add(
        percentFigure(
            key + "closedPct",
            of + ": both ends inside the rates filmed",
            closed,
            athletes,
            null,
            true));
    figures.add(
        new BenchFigure(
            key + "width",
            of + ": mean width of those",
            "slaps/s",
            closed,
            closed == 0 ? null : width / closed,
            null,
            false,
            null,
            null));
    for (CeilingScore.CeilingOutcome outcome : CeilingScore.CeilingOutcome.values()) {
      int count = outcomes.getOrDefault(outcome, 0);
      figures.add(
          percentFigure(
              key + outcome.code(), of + ": " + outcome.code(), count, athletes, null, false));
    }
  }

  private Trial ceilingTrial(SimulatedHand hand, int repeat, @Nullable Double pace) {
    double own = SimulatedHand.LOG_ODDS_SD * random.nextGaussian();
    return hand.trial(
        new TrialId(Hand.RIGHT, Block.BASELINE, repeat),
        pace,
        rate -> Math.log(1.0 / 9) + CEILING_SLOPE * (rate - CEILING_SLAPS_PER_S) + own,
        random);
  }

  /** The rate at which one slap in ten is faulty over all trials, which differ: by bisection. */
  private static double marginalCeiling() {
    double low = 0;
    double high = 2 * CEILING_SLAPS_PER_S;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (faultyShare(middle) < 0.1) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  private static double faultyShare(double rate) {
    double sum = 0;
    double weights = 0;
    for (double z = -5; z <= 5; z += 0.05) {
      double weight = Math.exp(-z * z / 2);
      double odds =
          Math.log(1.0 / 9)
              + CEILING_SLOPE * (rate - CEILING_SLAPS_PER_S)
              + SimulatedHand.LOG_ODDS_SD * z;
      sum += weight / (1 + Math.exp(-odds));
      weights += weight;
    }
    return sum / weights;
  }
}
