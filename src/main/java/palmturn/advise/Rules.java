package palmturn.advise;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import palmturn.measure.CeilingScore;
import palmturn.measure.Decimals;
import palmturn.measure.FaultCount;
import palmturn.measure.FaultKind;
import palmturn.measure.HandMeasure;
import palmturn.measure.Limit;
import palmturn.measure.Measure;
import palmturn.measure.Measures;
import palmturn.measure.Phrases;
import palmturn.measure.Quality;
import palmturn.measure.SideScore;
import palmturn.numbers.Range;
import palmturn.trial.Block;
import palmturn.trial.DrillHand;
import palmturn.trial.Hand;

/**
 * The rules, in order. A difference between the hands counts only where its whole interval says so.
 * A limit counts by the mean over the hand's trials; whether the interval agrees is told beside it,
 * for a needless drill costs ten minutes and a drill withheld costs weeks.
 */
final class Rules {
  /** A rate further below the best on file than this is slow, %; Palmturn's choice, no source. */
  static final double UNDER_BEST_PCT = 10;

  private final Evidence evidence;
  private final DrillLibrary library;
  private final List<HandFigures> hands;
  private final List<Advice> found = new ArrayList<>();

  private Rules(Evidence evidence, DrillLibrary library) {
    this.evidence = evidence;
    this.library = library;
    this.hands = Arrays.stream(Hand.values()).map(hand -> HandFigures.of(evidence, hand)).toList();
  }

  /** Returns what the figures advise, by rule, the left hand first within one. */
  static List<Advice> advise(Evidence evidence, DrillLibrary library) {
    return new Rules(evidence, library).all();
  }

  private List<Advice> all() {
    Advice again = FilmAgain.of(evidence, hands);
    List<SideScore> sides = sides();
    sides(sides);
    hands.forEach(this::clean);
    hands.forEach(this::slow);
    hands.forEach(this::lasting);
    if (again != null) {
      found.add(0, again);
    } else if (found.isEmpty()) {
      found.add(nothing(sides));
    }
    return List.copyOf(found);
  }

  /** Returns the comparisons of the block in which both hands were filmed last. */
  private List<SideScore> sides() {
    String last =
        evidence.score().hands().stream()
            .map(score -> score.block())
            .max(Comparator.comparingInt(Block::order))
            .orElse("");
    return evidence.score().sides().stream().filter(side -> side.block().equals(last)).toList();
  }

  private void sides(List<SideScore> sides) {
    SideScore speed = of(sides, Quality.SPEED);
    SideScore accuracy = of(sides, Quality.ACCURACY);
    Hand slower = weaker(speed);
    Hand lessClean = weaker(accuracy);
    boolean tradeOff = false;
    if (speed != null && accuracy != null && slower != null && lessClean == slower.other()) {
      tradeOff = true;
      found.add(
          new Advice(
              Advice.SIDES,
              DrillHand.BOTH,
              null,
              true,
              "Different trade-off: %s; %s."
                  .formatted(differs(speed, slower), differs(accuracy, lessClean)),
              "Train both hands at one pace, that of the slower one, then film both again and"
                  + " compare.",
              paced()));
    }
    for (SideScore side : sides) {
      Hand weaker = weaker(side);
      boolean told =
          tradeOff && (side.quality() == Quality.SPEED || side.quality() == Quality.ACCURACY);
      if (weaker != null && !told) {
        found.add(
            new Advice(
                Advice.SIDES,
                DrillHand.of(weaker),
                side.quality(),
                true,
                Phrases.capital(differs(side, weaker)) + ".",
                advised(weaker)
                    ? "Train it in this too."
                    : ("Train the %s hand alone and leave the other: it shows what practice without the"
                            + " drill does.")
                        .formatted(weaker.code()),
                codes(side.quality())));
      }
    }
  }

  private boolean advised(Hand hand) {
    return found.stream().anyMatch(each -> each.hand() == DrillHand.of(hand));
  }

  private static @Nullable SideScore of(List<SideScore> sides, Quality quality) {
    return sides.stream().filter(side -> side.quality() == quality).findFirst().orElse(null);
  }

  private static @Nullable Hand weaker(@Nullable SideScore side) {
    if (side == null) {
      return null;
    }
    return switch (side.verdict()) {
      case WEAKER_LEFT -> Hand.LEFT;
      case WEAKER_RIGHT -> Hand.RIGHT;
      case BALANCED, UNCLEAR, CANNOT_TELL -> null;
    };
  }

  private static String differs(SideScore side, Hand weaker) {
    Measure measure = side.measure();
    Double left = side.left();
    Double right = side.right();
    Double difference = side.difference();
    Range range = side.difference95();
    if (left == null || right == null || difference == null || range == null) {
      throw new IllegalArgumentException("a side is weaker only by figures: " + side);
    }
    double own = weaker == Hand.LEFT ? left : right;
    double others = weaker == Hand.LEFT ? right : left;
    String word =
        switch (side.quality()) {
          case SPEED -> "is slower";
          case ACCURACY -> "is less clean";
          case RHYTHM -> "is less even";
          case ENDURANCE -> "slows down more";
          case DRIFT -> "moves its elbow more";
        };
    return "the %s hand %s: %s against %s, a difference of %s %s (%s)"
        .formatted(
            weaker.code(),
            word,
            side.quality().figure(own),
            measure.text(others),
            measure.form().size(difference),
            side.quality().differenceUnit(),
            measure.form().size(difference, range));
  }

  private void clean(HandFigures hand) {
    HandFigures.LimitCheck share = hand.checkLimit(Quality.ACCURACY, evidence.limits());
    if (share != null && share.over()) {
      found.add(
          advice(
              Advice.CLEAN,
              hand,
              Quality.ACCURACY,
              share,
              "%s, and the limit is at least %s %%.%s"
                  .formatted(
                      mean(hand, Quality.ACCURACY, share),
                      Decimals.plain(share.limit()),
                      commonest(hand)),
              ceiling(hand)));
    }
    HandFigures.LimitCheck elbow = hand.checkLimit(Quality.DRIFT, evidence.limits());
    if (elbow != null && elbow.over()) {
      found.add(
          advice(
              Advice.CLEAN,
              hand,
              Quality.DRIFT,
              elbow,
              "%s at most on average, as seen in the picture, and the limit is %s cm."
                  .formatted(mean(hand, Quality.DRIFT, elbow), Decimals.plain(elbow.limit())),
              "Train at a slower pace with a folded towel held under the elbow."));
    }
  }

  private String ceiling(HandFigures hand) {
    CeilingScore ceiling = evidence.ceiling(hand.hand());
    Double found = ceiling == null ? null : ceiling.cleanCeilingSlapsPerS();
    if (found != null) {
      return "Train accuracy below the clean ceiling, %s slaps/s."
          .formatted(HandMeasure.CLEAN_CEILING.form().text(found));
    }
    return ceiling != null && ceiling.outcome() == CeilingScore.CeilingOutcome.UNDER_FILMED
        ? "Train accuracy slower than was filmed: the clean ceiling lies below."
        : "Train accuracy below the test's pace; the clean ceiling is not known.";
  }

  /** Returns which fault was marked most, as a sentence; nothing where none was. */
  private static String commonest(HandFigures hand) {
    FaultKind most = null;
    int count = 0;
    int attempts = 0;
    for (FaultKind kind : FaultKind.values()) {
      int here = 0;
      for (var trial : hand.trials()) {
        FaultCount fault = trial.accuracy().faults().get(kind);
        here += fault == null ? 0 : fault.all();
      }
      if (here > count) {
        most = kind;
        count = here;
      }
    }
    for (var trial : hand.trials()) {
      attempts += trial.accuracy().attempts();
    }
    return most == null
        ? ""
        : String.format(
            Locale.ROOT,
            " Most often: %s, %d of %d attempts.",
            most.code().replace('-', ' '),
            count,
            attempts);
  }

  /** Accurate but slow, or uneven: only where rule 2 has nothing to say about the hand. */
  private void slow(HandFigures hand) {
    HandFigures.LimitCheck share = hand.checkLimit(Quality.ACCURACY, evidence.limits());
    HandFigures.LimitCheck elbow = hand.checkLimit(Quality.DRIFT, evidence.limits());
    if (share == null || share.over() || elbow != null && elbow.over()) {
      return;
    }
    tooSlow(hand);
    HandFigures.LimitCheck steady = hand.checkLimit(Quality.RHYTHM, evidence.limits());
    if (steady != null && steady.over()) {
      found.add(
          advice(
              Advice.SLOW,
              hand,
              Quality.RHYTHM,
              steady,
              "%s, and the limit is at most %s %%."
                  .formatted(mean(hand, Quality.RHYTHM, steady), Decimals.plain(steady.limit())),
              "Train rhythm."));
    }
  }

  private void tooSlow(HandFigures hand) {
    Double mean = hand.mean(Quality.SPEED);
    if (mean == null) {
      return;
    }
    Limit least = evidence.limits().minRateSlapsPerS();
    Double best = evidence.best(hand.hand());
    HandFigures.LimitCheck underLeast =
        least == null ? null : hand.atLeast(Quality.SPEED, mean, least.value());
    HandFigures.LimitCheck underBest =
        best == null ? null : hand.atLeast(Quality.SPEED, mean, (1 - UNDER_BEST_PCT / 100) * best);
    List<String> reasons = new ArrayList<>();
    if (underLeast != null && underLeast.over()) {
      reasons.add("the least that is asked for is " + Decimals.plain(underLeast.limit()));
    }
    if (underBest != null && underBest.over() && best != null) {
      reasons.add(
          "that is %s %% under its own best on file, %s"
              .formatted(Decimals.fixed(100 * (1 - mean / best), 0), Measures.RATE.text(best)));
    }
    HandFigures.LimitCheck held = underLeast != null && underLeast.over() ? underLeast : underBest;
    if (!reasons.isEmpty() && held != null) {
      found.add(
          advice(
              Advice.SLOW,
              hand,
              Quality.SPEED,
              held,
              "%s; %s.".formatted(mean(hand, Quality.SPEED, held), Phrases.list(reasons)),
              "Accurate but slow: train speed."));
    }
  }

  private void lasting(HandFigures hand) {
    HandFigures.LimitCheck held = hand.checkLimit(Quality.ENDURANCE, evidence.limits());
    if (held != null && held.over()) {
      found.add(
          advice(
              Advice.LASTING,
              hand,
              Quality.ENDURANCE,
              held,
              "%s, and the limit is at most %s %%/s."
                  .formatted(mean(hand, Quality.ENDURANCE, held), Decimals.plain(held.limit())),
              "Train endurance with longer paced sets."));
    }
  }

  private Advice advice(
      int rule,
      HandFigures hand,
      Quality quality,
      HandFigures.LimitCheck held,
      String why,
      String action) {
    String doubt =
        held.sure()
            ? ""
            : held.range() == null
                ? " One trial has no interval, so this is not beyond doubt."
                : " The interval holds the limit, so this is not beyond doubt.";
    return new Advice(
        rule, DrillHand.of(hand.hand()), quality, held.sure(), why + doubt, action, codes(quality));
  }

  private static String mean(HandFigures hand, Quality quality, HandFigures.LimitCheck held) {
    Range range = held.range();
    return "The %s hand: %s%s"
        .formatted(
            hand.hand().code(),
            quality.figure(held.value()),
            range == null ? "" : " (%s)".formatted(Measures.headline(quality).text(range)));
  }

  private Advice nothing(List<SideScore> sides) {
    List<String> why = new ArrayList<>();
    why.add("No figure is over its limit, and no difference between the hands is beyond doubt.");
    List<String> unclear =
        sides.stream()
            .filter(side -> side.verdict() == SideScore.SideVerdict.UNCLEAR)
            .map(side -> side.quality().code())
            .toList();
    if (!unclear.isEmpty()) {
      why.add(
          "Whether the hands differ in %s is unclear: it takes more trials."
              .formatted(Phrases.list(unclear)));
    }
    if (hands.stream().anyMatch(hand -> hand.mean(Quality.DRIFT) == null)) {
      why.add("How far the elbow went is not known.");
    }
    return new Advice(
        Advice.NOTHING,
        DrillHand.BOTH,
        null,
        unclear.isEmpty(),
        String.join(" ", why),
        "Keep what you do, and look elsewhere than the hands: feet, reading the other player, the"
            + " stroke itself.",
        library.drillsFor(DrillAim.TRANSFER).stream().map(LibraryDrill::code).toList());
  }

  private List<String> codes(Quality quality) {
    return library.drillsFor(DrillAim.of(quality)).stream().map(LibraryDrill::code).toList();
  }

  /** Drills of accuracy with a click, which both hands can share. */
  private List<String> paced() {
    return library.drillsFor(DrillAim.ACCURACY).stream()
        .filter(drill -> drill.paceShare() != null)
        .map(LibraryDrill::code)
        .toList();
  }
}
