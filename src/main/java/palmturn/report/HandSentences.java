package palmturn.report;

import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import palmturn.measure.Quality;
import palmturn.trial.Hand;

/** What a hand comes to where there is no other to put it beside. */
final class HandSentences {
  private HandSentences() {}

  /**
   * Returns the sentences.
   *
   * @param figures as they are shown, null where one can't be told
   */
  static List<Page.Sentence> of(Hand hand, Function<Quality, @Nullable String> figures) {
    return List.of(
        new Page.Sentence(
            "Only the %s hand has marks here, so the hands ".formatted(hand.code()),
            "can’t be compared",
            "."),
        new Page.Sentence(
            "Its speed: ",
            told(figures.apply(Quality.SPEED), "slaps a second"),
            "; its accuracy: %s.".formatted(told(figures.apply(Quality.ACCURACY), "% clean"))),
        new Page.Sentence(
            "Its steady CV: ",
            told(figures.apply(Quality.RHYTHM), "%"),
            "; its slow-down: %s."
                .formatted(told(figures.apply(Quality.ENDURANCE), "% a second"))));
  }

  private static String told(@Nullable String figure, String unit) {
    return figure == null ? "can’t be told" : Figures.withUnit(figure, unit);
  }
}
