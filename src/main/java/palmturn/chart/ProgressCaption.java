package palmturn.chart;

import java.util.Locale;
import palmturn.measure.Measure;
import palmturn.measure.ProgressScore.Course;
import palmturn.measure.Quality;
import palmturn.measure.RetestScore;
import palmturn.trial.Hand;

/** The caption of a progress chart, the same on screen and page. */
public final class ProgressCaption {
  /** The key of the chart, with the meaning of a change. */
  public static final String KEY =
      "Circle: mean of a block. Short lines: its trials. Band: where the mean would lie if nothing"
          + " had changed since the first block, from the typical error of all sessions. Tick under"
          + " the axis: a drill, in brackets where it trained the other hand. A change has practice"
          + " in it, and the day: the band is only how trials of one block differ.";

  private ProgressCaption() {}

  /** Returns one sentence on a hand's change. */
  public static String describeChange(Course course) {
    String hand = course.hand() == Hand.LEFT ? "Left hand" : "Right hand";
    Double change = course.change();
    Double low = course.changeLow();
    Double high = course.changeHigh();
    if (change == null || low == null || high == null) {
      String why =
          course.quality() == Quality.DRIFT
              ? "the elbow has no margin, so its change is not judged"
              : "a change can’t be told yet";
      double last = course.points().get(course.points().size() - 1).mean();
      return "%s: %s last; %s.".formatted(hand, figure(course, last), why);
    }
    return "%s: %s, by %s (%s to %s)."
        .formatted(
            hand,
            describeVerdict(course.verdict()),
            signed(course, change),
            signed(course, low),
            signed(course, high));
  }

  private static String figure(Course course, double value) {
    Measure measure = course.measure();
    return number(course, value) + "\u00A0" + measure.unit();
  }

  private static String signed(Course course, double value) {
    String text = number(course, value);
    boolean zero = text.matches("0(\\.0+)?");
    return zero || text.startsWith("−") ? text : "+" + text;
  }

  private static String number(Course course, double value) {
    String text =
        String.format(Locale.ROOT, course.quality() == Quality.SPEED ? "%.2f" : "%.1f", value);
    // What rounds to nothing has no sign.
    return text.replaceFirst("^-(0(\\.0+)?)$", "$1").replace('-', '−');
  }

  private static String describeVerdict(RetestScore.Verdict verdict) {
    return switch (verdict) {
      case BETTER -> "better";
      case WORSE -> "worse";
      case NO_CHANGE -> "no change that matters";
      case UNCLEAR -> "unclear";
      case CANNOT_TELL -> "can’t be told";
    };
  }
}
