package palmturn.app.tally;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.measure.Accuracy;
import palmturn.measure.Endurance;
import palmturn.measure.LimitVerdict;
import palmturn.measure.Limits;
import palmturn.measure.Quality;
import palmturn.measure.Rhythm;
import palmturn.measure.TrialScore;
import palmturn.numbers.Range;
import palmturn.trial.Hand;
import palmturn.trial.TimedBy;

/** The figures of the open trial, updated with each edit. */
public final class Tally {
  private static final String UNKNOWN = "–";

  private final ReadOnlyObjectWrapper<List<TallyRow>> rows = new ReadOnlyObjectWrapper<>(List.of());
  private final ReadOnlyStringWrapper count = new ReadOnlyStringWrapper("");

  /** One line for each quality. */
  public ReadOnlyObjectProperty<List<TallyRow>> rowsProperty() {
    return rows.getReadOnlyProperty();
  }

  /** The counts of slaps and doubles. */
  public ReadOnlyStringProperty countProperty() {
    return count.getReadOnlyProperty();
  }

  /** Shows nothing. */
  public void clear() {
    rows.set(List.of());
    count.set("");
  }

  /**
   * Shows the figures of a reading.
   *
   * @param other the other hand's figures for the same repeat, if it is read
   * @param unseen how many marks were copied and not looked at yet
   */
  public void show(TrialScore score, Limits limits, @Nullable TrialScore other, int unseen) {
    Accuracy accuracy = score.accuracy();
    count.set(
        plural(accuracy.slaps(), "slap")
            + (accuracy.doubles() == 0 ? "" : ", " + plural(accuracy.doubles(), "double"))
            + (unseen == 0 ? "" : ", " + unseen + " unchecked"));
    rows.set(
        List.of(
            speed(score, limits, other),
            accuracy(score, limits),
            rhythm(score, limits),
            endurance(score, limits),
            elbow(score, limits)));
  }

  private static TallyRow speed(TrialScore score, Limits limits, @Nullable TrialScore other) {
    Double rate = score.speed().rateSlapsPerS();
    Double limit = limits.minRateSlapsPerS() == null ? null : limits.minRateSlapsPerS().value();
    Double otherRate = other == null ? null : other.speed().rateSlapsPerS();
    String otherName = score.trial().hand() == Hand.LEFT ? "right" : "left";
    Double best = score.speed().bestTwoSecondsSlapsPerS();
    Double ten = score.speed().tenCycleS();
    String tenCycles = "ten cycles " + (ten == null ? UNKNOWN : number(ten, 1) + " s");
    String tens = score.speed().tenCycleExtrapolated() ? tenCycles + " (extrapolated)" : tenCycles;
    String note =
        rate == null
            ? missingWhy(score, "needs two slaps")
            : best == null ? tens : "best two seconds " + number(best, 1) + ", " + tens;
    return new TallyRow(
        "Speed",
        verdict(score, Quality.SPEED),
        limitWords(score, Quality.SPEED, limit, "under"),
        rate == null ? UNKNOWN : number(rate, 1),
        "slaps/s",
        rate == null ? null : new Gauge(2, 8, rate, null, limit, false, null, otherRate, otherName),
        note);
  }

  private static TallyRow accuracy(TrialScore score, Limits limits) {
    Accuracy accuracy = score.accuracy();
    Double share = accuracy.cleanSharePct();
    Range range = accuracy.cleanShareRangePct();
    double limit = limits.cleanSharePct().value();
    String note =
        share == null || range == null
            ? accuracy.attempts() == 0 ? "no slap marked yet" : "some zones are unknown"
            : String.format(
                Locale.ROOT,
                "%d of %d, 95 %% interval %s to %s %%",
                Objects.requireNonNull(accuracy.clean()),
                accuracy.attempts(),
                number(range.low(), 0),
                number(range.high(), 0));
    return new TallyRow(
        "Accuracy",
        verdict(score, Quality.ACCURACY),
        limitWords(score, Quality.ACCURACY, limit, "under"),
        share == null ? UNKNOWN : number(share, 0),
        "% clean",
        share == null ? null : new Gauge(0, 100, share, range, limit, false, null, null, ""),
        note);
  }

  private static TallyRow rhythm(TrialScore score, Limits limits) {
    Rhythm rhythm = score.rhythm();
    Double steady = rhythm.steadyCvPct();
    Double floor = rhythm.timingFloorPct();
    double limit = limits.steadyCvPct().value();
    boolean resolved = steady != null && rhythm.resolves(steady);
    String note;
    if (steady == null || floor == null) {
      note = missingWhy(score, "needs a few more slaps");
    } else {
      String by = rhythm.timedBy() == TimedBy.SOUND ? "sound" : "picture";
      note = "timed by %s, timing floor %s %%".formatted(by, number(floor, 1));
    }
    return new TallyRow(
        "Rhythm",
        verdict(score, Quality.RHYTHM),
        limitWords(score, Quality.RHYTHM, limit, "over"),
        steady == null ? UNKNOWN : (resolved ? "" : "≤ ") + number(steady, 1),
        "% CV",
        steady == null
            ? null
            : new Gauge(0, 16, steady, rhythm.steadyCvRangePct(), limit, true, floor, null, ""),
        note);
  }

  private static TallyRow endurance(TrialScore score, Limits limits) {
    Endurance endurance = score.endurance();
    Double slow = endurance.slowDownPctPerS();
    Range range = endurance.slowDownRangePctPerS();
    double limit = limits.slowDownPctPerS().value();
    String note =
        slow == null || range == null
            ? missingWhy(score, "needs a few more slaps")
            : "slow-down, 95 %% interval %s to %s"
                .formatted(number(range.low(), 1), number(range.high(), 1));
    return new TallyRow(
        "Endurance",
        verdict(score, Quality.ENDURANCE),
        limitWords(score, Quality.ENDURANCE, limit, "over"),
        slow == null ? UNKNOWN : (slow > 0.05 ? "+" : "") + number(slow, 1),
        "%/s",
        slow == null ? null : new Gauge(-8, 8, slow, range, limit, true, null, null, ""),
        note);
  }

  private static TallyRow elbow(TrialScore score, Limits limits) {
    Double max = score.drift().elbowMaxCm();
    Double over = score.drift().elbowOverLimitPct();
    double limit = limits.elbowCm().value();
    return new TallyRow(
        "Elbow",
        verdict(score, Quality.DRIFT),
        limitWords(score, Quality.DRIFT, limit, "over"),
        max == null ? UNKNOWN : number(max, 1),
        "cm",
        max == null ? null : new Gauge(0, 8, max, null, limit, true, null, null, ""),
        max == null
            ? score.accuracy().attempts() == 0 ? "no slap marked yet" : "not followed, or no scale"
            : over == null ? "" : "over the limit %s %% of the time".formatted(number(over, 0)));
  }

  private static LimitVerdict verdict(TrialScore score, Quality quality) {
    return score.verdicts().getOrDefault(quality, LimitVerdict.CANNOT_TELL);
  }

  private static String limitWords(
      TrialScore score, Quality quality, @Nullable Double limit, String beyond) {
    if (limit == null) {
      return "";
    }
    String said = number(limit, limit == Math.rint(limit) ? 0 : 1);
    return switch (verdict(score, quality)) {
      case WITHIN -> "within limit " + said;
      case OVER -> beyond + " limit " + said;
      case UNCLEAR -> "unclear, limit " + said;
      case CANNOT_TELL -> "";
    };
  }

  private static String missingWhy(TrialScore score, String otherwise) {
    return score.timeRefusedWhy().isEmpty() ? otherwise : score.timeRefusedWhy();
  }

  private static String number(double value, int decimals) {
    String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
    return text.matches("-0(\\.0+)?") ? text.substring(1) : text.replace('-', '−');
  }

  private static String plural(int n, String word) {
    return n + " " + word + (n == 1 ? "" : "s");
  }
}
