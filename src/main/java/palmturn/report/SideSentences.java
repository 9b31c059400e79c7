package palmturn.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import palmturn.measure.Measure;
import palmturn.measure.Quality;
import palmturn.measure.SideScore;
import palmturn.numbers.Range;
import palmturn.trial.Hand;
import palmturn.wording.Figures;
import palmturn.wording.Names;

/** Three sentences that compare the two hands of a block. */
final class SideSentences {
  private final Set<Hand> bounded;

  /**
   * Makes the sentences' writer.
   *
   * @param bounded the hands whose steady CV is an upper bound only
   */
  SideSentences(Set<Hand> bounded) {
    this.bounded = Set.copyOf(bounded);
  }

  /** Returns the sentences for a block, none where only one hand was filmed. */
  List<Page.Sentence> of(List<SideScore> sides) {
    List<Page.Sentence> sentences = new ArrayList<>();
    for (SideScore side : sides) {
      switch (side.quality()) {
        case SPEED -> sentences.add(speed(side));
        case ACCURACY -> sentences.add(accuracy(side));
        case RHYTHM -> sentences.add(steadiness(side, endurance(sides)));
        case ENDURANCE, DRIFT -> {}
      }
    }
    return sentences;
  }

  private Page.Sentence speed(SideScore side) {
    return switch (side.verdict()) {
      case WEAKER_LEFT, WEAKER_RIGHT -> weaker(side, "slower", "");
      case BALANCED -> equal(side, "fast", "");
      case UNCLEAR -> unclear(side, "faster", "");
      case CANNOT_TELL -> cannot("Speed");
    };
  }

  private Page.Sentence accuracy(SideScore side) {
    return switch (side.verdict()) {
      case WEAKER_LEFT, WEAKER_RIGHT -> weaker(side, "less accurate", "");
      case BALANCED -> equal(side, "accurate", "");
      case UNCLEAR -> unclear(side, "more accurate", "");
      case CANNOT_TELL -> cannot("Accuracy");
    };
  }

  private Page.Sentence steadiness(SideScore rhythm, String endurance) {
    String more = "; " + endurance;
    return switch (rhythm.verdict()) {
      case WEAKER_LEFT, WEAKER_RIGHT -> weaker(rhythm, "less even", more);
      case BALANCED -> equal(rhythm, "even", more);
      case UNCLEAR -> unclear(rhythm, "more even", more);
      case CANNOT_TELL -> new Page.Sentence("Rhythm ", "can’t be compared", more + ".");
    };
  }

  private Page.Sentence weaker(SideScore side, String how, String more) {
    return new Page.Sentence(
        "The %s is ".formatted(Names.hand(weaker(side))), how, ": " + against(side) + more + ".");
  }

  private Page.Sentence equal(SideScore side, String how, String more) {
    return new Page.Sentence("The hands are ", "equally " + how, ": " + both(side) + more + ".");
  }

  private Page.Sentence unclear(SideScore side, String how, String more) {
    return new Page.Sentence(
        "Which hand is %s ".formatted(how), "can’t be told yet", ": " + both(side) + more + ".");
  }

  private static String endurance(List<SideScore> sides) {
    SideScore.SideVerdict verdict =
        sides.stream()
            .filter(side -> side.quality() == Quality.ENDURANCE)
            .map(SideScore::verdict)
            .findFirst()
            .orElse(SideScore.SideVerdict.CANNOT_TELL);
    return switch (verdict) {
      case WEAKER_LEFT -> "the left hand slows down more";
      case WEAKER_RIGHT -> "the right hand slows down more";
      case BALANCED -> "the slow-down is alike";
      case UNCLEAR -> "whose slow-down is larger can’t be told";
      case CANNOT_TELL -> "the slow-down can’t be compared";
    };
  }

  private static Page.Sentence cannot(String what) {
    return new Page.Sentence(
        what + " ", "can’t be compared", ": one hand has fewer than two trials with a figure.");
  }

  private static Hand weaker(SideScore side) {
    return side.verdict() == SideScore.SideVerdict.WEAKER_LEFT ? Hand.LEFT : Hand.RIGHT;
  }

  private String against(SideScore side) {
    Hand weaker = weaker(side);
    Double difference = side.difference();
    Range range = side.difference95();
    String text = figure(side, weaker, true) + " against " + figure(side, weaker.other(), false);
    Measure.Form form = side.measure().form();
    return difference == null || range == null
        ? text
        : text
            + ", a difference of %s (%s)"
                .formatted(
                    Figures.withUnit(form.size(difference), side.quality().differenceUnit()),
                    form.size(difference, range));
  }

  private String both(SideScore side) {
    return "%s left, %s right"
        .formatted(figure(side, Hand.LEFT, true), figure(side, Hand.RIGHT, false));
  }

  /** Returns a hand's figure, the first of two named and with its unit. */
  private String figure(SideScore side, Hand hand, boolean first) {
    Double value = hand == Hand.LEFT ? side.left() : side.right();
    if (value == null) {
      return "unknown";
    }
    String atMost = atMost(side, hand);
    return first
        ? TrainPart.typeset(side.quality().figure(value)).replace("CV ", "CV " + atMost)
        : atMost + side.measure().text(value);
  }

  private String atMost(SideScore side, Hand hand) {
    return side.quality() == Quality.RHYTHM && bounded.contains(hand) ? "at most " : "";
  }

  /** Returns how many trials more it should take, for a verdict that is unclear. */
  static String further(SideScore side) {
    Integer trials = side.furtherTrials();
    return trials == null
        ? "more than 20 further trials a hand would be needed to tell"
        : Figures.count(trials, "further trial") + " a hand should tell";
  }
}
