package palmturn.report;

import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import palmturn.measure.Quality;
import palmturn.trial.Hand;
import palmturn.wording.Figures;

/** Sentences on a hand that has no other to be compared with. */
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
            figure(figures.apply(Quality.SPEED), "slaps/s"),
            "; its accuracy: %s.".formatted(figure(figures.apply(Quality.ACCURACY), "% clean"))),
        new Page.Sentence(
            "Its steady CV: ",
            figure(figures.apply(Quality.RHYTHM), "%"),
            "; its slow-down: %s.".formatted(figure(figures.apply(Quality.ENDURANCE), "%/s"))));
  }

  private static String figure(@Nullable String figure, String unit) {
    return figure == null ? "can’t be told" : Figures.withUnit(figure, unit);
  }
}
