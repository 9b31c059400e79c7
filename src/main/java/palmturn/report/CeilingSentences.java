package palmturn.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import palmturn.measure.CeilingScore;
import palmturn.measure.HandMeasure;
import palmturn.measure.Phrases;
import palmturn.numbers.Range;
import palmturn.wording.Figures;
import palmturn.wording.Names;

/** The fastest pace at which each hand is still clean, a sentence a hand. */
final class CeilingSentences {
  private static final HandMeasure MEASURE = HandMeasure.CLEAN_CEILING;

  private CeilingSentences() {}

  /** Returns a sentence a hand, and what each rests on. */
  static List<String> of(ReportInput input) {
    MarkOrigin readers = new MarkOrigin(input);
    List<String> sentences = new ArrayList<>();
    for (CeilingScore score : input.score().ceilings()) {
      if (score.trials() == 0) {
        sentences.add(
            "%s: can’t be told, since no trial tells where the hand touched."
                .formatted(Phrases.capital(Names.hand(score.hand()))));
        continue;
      }
      sentences.add(
          "%s: %s. %s"
              .formatted(
                  Phrases.capital(Names.hand(score.hand())),
                  ceiling(score),
                  basis(score, readers)));
    }
    return sentences;
  }

  private static String ceiling(CeilingScore score) {
    Double ceiling = score.cleanCeilingSlapsPerS();
    Range filmed = score.filmedSlapsPerS();
    return switch (score.outcome()) {
      case FOUND ->
          ceiling == null
              ? "can’t be told"
              : "90\u00A0%% clean up to %s slaps/s (95\u00A0%%: %s to %s)"
                  .formatted(
                      MEASURE.form().text(ceiling),
                      end(score.lowSlapsPerS(), "below what was filmed"),
                      end(score.highSlapsPerS(), "above what was filmed"));
      case NOT_REACHED ->
          "not reached, over 90\u00A0%% are clean at the fastest pace filmed%s"
              .formatted(filmed == null ? "" : ", " + pace(filmed.high()));
      case UNDER_FILMED ->
          "below what was filmed, under 90\u00A0%% are clean at the slowest pace%s"
              .formatted(filmed == null ? "" : ", " + pace(filmed.low()));
      case CANNOT_TELL -> "can’t be told: a pace ladder, trials to a slower click, would help";
    };
  }

  private static String basis(CeilingScore score, MarkOrigin readers) {
    return String.format(
        Locale.ROOT,
        "It rests on %s, %d of them to a click, with %s of which %d had a fault; %s.",
        Figures.count(score.trials(), "trial"),
        score.paced(),
        Figures.count(score.attempts(), "attempt"),
        score.faulty(),
        readers.of(score.readings(), ""));
  }

  private static String end(@Nullable Double value, String beyond) {
    return value == null ? beyond : MEASURE.form().text(value);
  }

  private static String pace(double slapsPerS) {
    return Figures.withUnit(MEASURE.form().text(slapsPerS), "slaps/s");
  }
}
