package palmturn.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import palmturn.measure.Quality;
import palmturn.measure.SideScore;
import palmturn.trial.Hand;

/** What the two hands of a block come to, in three plain sentences. */
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
      case WEAKER_LEFT, WEAKER_RIGHT ->
          new Page.Sentence(
              theWeaker(side), "slower", ": " + against(side, "%s slaps a second", 2) + ".");
      case BALANCED ->
          new Page.Sentence(
              "The hands are ", "equally fast", ": " + both(side, 2, "slaps a second") + ".");
      case UNCLEAR ->
          new Page.Sentence(
              "Which hand is faster ",
              "can’t be told",
              ": " + both(side, 2, "slaps a second") + ".");
      case CANNOT_TELL -> cannot("Speed");
    };
  }

  private Page.Sentence accuracy(SideScore side) {
    return switch (side.verdict()) {
      case WEAKER_LEFT, WEAKER_RIGHT ->
          new Page.Sentence(
              theWeaker(side), "less accurate", ": " + against(side, "%s\u00A0%% clean", 0) + ".");
      case BALANCED ->
          new Page.Sentence(
              "The hands are ", "equally accurate", ": " + both(side, 0, "% clean") + ".");
      case UNCLEAR ->
          new Page.Sentence(
              "Which hand is more accurate ",
              "can’t be told",
              ": " + both(side, 0, "% clean") + ".");
      case CANNOT_TELL -> cannot("Accuracy");
    };
  }

  private Page.Sentence steadiness(SideScore rhythm, String endurance) {
    String more = "; " + endurance + ".";
    return switch (rhythm.verdict()) {
      case WEAKER_LEFT, WEAKER_RIGHT ->
          new Page.Sentence(
              theWeaker(rhythm),
              "less even",
              ": " + against(rhythm, "a steady CV of %s\u00A0%%", 1) + more);
      case BALANCED ->
          new Page.Sentence(
              "The hands are ", "equally even", ": steady CV " + both(rhythm, 1, "%") + more);
      case UNCLEAR ->
          new Page.Sentence(
              "Which hand is more even ",
              "can’t be told",
              ": steady CV " + both(rhythm, 1, "%") + more);
      case CANNOT_TELL -> new Page.Sentence("Rhythm ", "can’t be compared", more);
    };
  }

  private static String endurance(List<SideScore> sides) {
    SideScore.Verdict verdict =
        sides.stream()
            .filter(side -> side.quality() == Quality.ENDURANCE)
            .map(SideScore::verdict)
            .findFirst()
            .orElse(SideScore.Verdict.CANNOT_TELL);
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

  private static String theWeaker(SideScore side) {
    return "The %s hand is ".formatted(weaker(side).code());
  }

  private static Hand weaker(SideScore side) {
    return side.verdict() == SideScore.Verdict.WEAKER_LEFT ? Hand.LEFT : Hand.RIGHT;
  }

  private String against(SideScore side, String form, int decimals) {
    String left = left(side, decimals);
    String right = right(side, decimals);
    boolean leftFirst = weaker(side) == Hand.LEFT;
    String text =
        form.formatted(leftFirst ? left : right) + " against " + (leftFirst ? right : left);
    if (side.difference() == null || side.difference95() == null) {
      return text;
    }
    boolean falling = side.difference() < 0;
    double low = falling ? -side.difference95().high() : side.difference95().low();
    double high = falling ? -side.difference95().low() : side.difference95().high();
    return text
        + ", a difference of %s%s (%s to %s)"
            .formatted(
                Figures.number(Math.abs(side.difference()), decimals),
                side.quality() == Quality.SPEED ? "" : points(side, decimals),
                Figures.number(low, decimals),
                Figures.number(high, decimals));
  }

  private static String points(SideScore side, int decimals) {
    Double difference = side.difference();
    boolean one = difference != null && Figures.number(Math.abs(difference), decimals).equals("1");
    return one ? "\u00A0point" : "\u00A0points";
  }

  private String both(SideScore side, int decimals, String unit) {
    return "%s\u00A0%s left, %s right".formatted(left(side, decimals), unit, right(side, decimals));
  }

  private String left(SideScore side, int decimals) {
    return side.left() == null
        ? "unknown"
        : atMost(side, Hand.LEFT) + Figures.number(side.left(), decimals);
  }

  private String right(SideScore side, int decimals) {
    return side.right() == null
        ? "unknown"
        : atMost(side, Hand.RIGHT) + Figures.number(side.right(), decimals);
  }

  private String atMost(SideScore side, Hand hand) {
    return side.quality() == Quality.RHYTHM && bounded.contains(hand) ? "at most " : "";
  }

  /** Returns how many trials more it should take, for a verdict that is unclear. */
  static String further(SideScore side) {
    Integer trials = side.furtherTrials();
    return trials == null
        ? "more than 20 further trials a hand would be needed to tell"
        : Figures.count(trials, "further trial", "further trials") + " a hand should tell";
  }
}
