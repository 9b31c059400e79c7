package palmturn.json;

import java.util.List;
import palmturn.measure.Limit;
import palmturn.measure.Limits;

/** The form of the file of limits and margins, which a coach may edit. */
public final class LimitsJson {
  private static final Format FORMAT = new Format("palmturn-limits", List.of());
  private static final String STANDARD = "/palmturn/limits.json";

  private LimitsJson() {}

  /** Returns the limits that come with the program. */
  public static Limits standard() {
    try {
      return read(text());
    } catch (JsonException e) {
      throw new IllegalStateException(STANDARD + ": " + e.getMessage(), e);
    }
  }

  /** Returns the file that comes with the program. */
  public static String text() {
    return JsonText.resource(STANDARD);
  }

  /**
   * Reads limits. A key that is not known is refused: it is most likely a slip, and would leave a
   * limit where it was.
   *
   * @throws JsonException if the text is damaged, newer than this program, or holds a value that
   *     can't be
   */
  public static Limits read(String text) throws JsonException {
    Keys keys = FORMAT.open(text);
    Limits limits =
        new Limits(
            keys.object("cleanSharePct", LimitsJson::percent),
            keys.object("steadyCvPct", LimitsJson::limit),
            keys.object("slowDownPctPerS", LimitsJson::limit),
            keys.object("elbowCm", LimitsJson::limit),
            keys.objectOrNull("minRateSlapsPerS", LimitsJson::limit),
            keys.object("margins", LimitsJson::margins));
    keys.refuseRest();
    return limits;
  }

  private static Limits.Margins margins(Keys keys) throws JsonException {
    return new Limits.Margins(
        keys.object("speedPct", LimitsJson::percent),
        keys.object("cleanSharePoints", LimitsJson::percent),
        keys.object("steadyCvPoints", LimitsJson::limit),
        keys.object("slowDownPctPerS", LimitsJson::limit));
  }

  private static Limit percent(Keys keys) throws JsonException {
    return limit(keys, 100);
  }

  private static Limit limit(Keys keys) throws JsonException {
    return limit(keys, 1000);
  }

  private static Limit limit(Keys keys, double most) throws JsonException {
    return new Limit(keys.number("value", 0, most), keys.text("source"));
  }
}
