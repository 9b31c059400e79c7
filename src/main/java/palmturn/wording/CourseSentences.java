package palmturn.wording;

import palmturn.measure.Phrases;
import palmturn.measure.ProgressScore.Course;
import palmturn.measure.Quality;
import palmturn.numbers.Range;

/** Sentences beside a progress chart, the same on screen and page. */
public final class CourseSentences {
  /** The key to the chart, and a caution about changes. */
  public static final String KEY =
      "Circle: mean of a block. Short lines: its trials. Band: where the mean would lie if nothing"
          + " had changed since the first block, from the typical error of all sessions. Tick under"
          + " the axis: a drill, in brackets where it trained the other hand. A change has practice"
          + " in it, and the day: the band is only how trials of one block differ.";

  private CourseSentences() {}

  /** Returns one sentence on a hand's change. */
  public static String of(Course course) {
    String hand = Phrases.capital(Names.hand(course.hand()));
    Double change = course.change();
    Double low = course.changeLow();
    Double high = course.changeHigh();
    Quality quality = course.quality();
    if (change == null || low == null || high == null) {
      double last = course.points().get(course.points().size() - 1).mean();
      return "%s: %s last; %s."
          .formatted(
              hand,
              Figures.withUnit(course.measure().text(last), course.measure().unit()),
              quality == Quality.DRIFT
                  ? "the elbow has no margin, so its change is not judged"
                  : "a change can’t be told yet");
    }
    return "%s: %s, by %s."
        .formatted(
            hand, verdict(course), Figures.difference(quality, change, new Range(low, high)));
  }

  private static String verdict(Course course) {
    return switch (course.verdict()) {
      case BETTER, WORSE, UNCLEAR -> course.verdict().code();
      case NO_CHANGE -> "no change that matters";
      case CANNOT_TELL -> "can’t be told";
    };
  }
}
