package palmturn.lab.bench;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Stats;
import palmturn.settle.Matching;
import palmturn.trial.Estimate;
import palmturn.trial.EstimatedSlap;

/**
 * An estimate beside the truth. Contacts are matched on the picture's clock as they stand, without
 * taking any offset out.
 *
 * @param truth contacts there were
 * @param found contacts reported
 * @param matched pairs within the tolerance
 * @param offsetS median of found − true time; null without a pair
 * @param errorSumS sum over the pairs of the absolute time error
 * @param errorSumAfterOffsetS the same after that offset is taken out of the clip
 * @param sidesRight pairs whose side is right; an unknown one is not
 * @param trueDoubles double taps there were
 * @param doublesFound double taps reported
 * @param doublesMatched double taps reported where there was one
 * @param rateErrorPct of the mean rate; null where either can't be told
 * @param cvErrorPoints of the interval CV, doubles and pauses left out
 * @param frequencyErrorPct of the rotation frequency
 */
public record EstimateComparison(
    int truth,
    int found,
    int matched,
    @Nullable Double offsetS,
    double errorSumS,
    double errorSumAfterOffsetS,
    int sidesRight,
    int trueDoubles,
    int doublesFound,
    int doublesMatched,
    @Nullable Double rateErrorPct,
    @Nullable Double cvErrorPoints,
    @Nullable Double frequencyErrorPct) {

  /** An interval longer than this many medians is a pause, as everywhere in the program. */
  private static final double PAUSE_OVER_MEDIAN = 2.2;

  static EstimateComparison of(ClipTruth truth, Estimate estimate, double toleranceS) {
    List<ClipTruth.TrueContact> contacts = truth.contacts();
    List<EstimatedSlap> slaps = estimate.slaps();
    Matching matching =
        Matching.of(
            contacts.stream().mapToDouble(ClipTruth.TrueContact::timeS).toArray(),
            slaps.stream().mapToDouble(EstimatedSlap::timeS).toArray(),
            toleranceS);
    double[] errorsS = matching.differencesS();
    Double offsetS = Stats.median(errorsS);
    double offS = offsetS == null ? 0 : offsetS;
    double[] intervalsS = intervals(contacts);
    double[] running = withoutPauses(intervalsS);
    return new EstimateComparison(
        contacts.size(),
        slaps.size(),
        matching.pairs().size(),
        offsetS,
        Arrays.stream(errorsS).map(Math::abs).sum(),
        Arrays.stream(errorsS).map(error -> Math.abs(error - offS)).sum(),
        count(matching, pair -> contacts.get(pair.a()).side() == slaps.get(pair.b()).side()),
        (int) contacts.stream().filter(ClipTruth.TrueContact::isDouble).count(),
        (int) slaps.stream().filter(EstimatedSlap::isDouble).count(),
        count(
            matching, pair -> contacts.get(pair.a()).isDouble() && slaps.get(pair.b()).isDouble()),
        percent(estimate.figures().rateSlapsPerS(), rate(intervalsS)),
        difference(estimate.figures().intervalCvPct(), Stats.cvPct(running)),
        percent(estimate.figures().rotation().frequencyHz(), half(rate(running))));
  }

  /** Returns F = 2·matched/(truth + found); null where there is nothing on either side. */
  @Nullable Double f() {
    return truth + found == 0 ? null : 2.0 * matched / (truth + found);
  }

  private interface Holds {
    boolean of(Matching.Pair pair);
  }

  private static int count(Matching matching, Holds holds) {
    return (int) matching.pairs().stream().filter(holds::of).count();
  }

  private static double[] intervals(List<ClipTruth.TrueContact> contacts) {
    double[] timesS =
        contacts.stream()
            .filter(contact -> !contact.isDouble())
            .mapToDouble(ClipTruth.TrueContact::timeS)
            .toArray();
    double[] intervalsS = new double[Math.max(0, timesS.length - 1)];
    for (int i = 0; i < intervalsS.length; i++) {
      intervalsS[i] = timesS[i + 1] - timesS[i];
    }
    return intervalsS;
  }

  private static double[] withoutPauses(double[] intervalsS) {
    Double median = Stats.median(intervalsS);
    return median == null
        ? intervalsS
        : Arrays.stream(intervalsS).filter(d -> d <= PAUSE_OVER_MEDIAN * median).toArray();
  }

  private static @Nullable Double rate(double[] intervalsS) {
    Double mean = Stats.mean(intervalsS);
    return mean == null ? null : 1 / mean;
  }

  /** One turn there and back takes two slaps. */
  private static @Nullable Double half(@Nullable Double rate) {
    return rate == null ? null : rate / 2;
  }

  private static @Nullable Double percent(@Nullable Double found, @Nullable Double truth) {
    return found == null || truth == null ? null : 100 * (found - truth) / truth;
  }

  private static @Nullable Double difference(@Nullable Double found, @Nullable Double truth) {
    return found == null || truth == null ? null : found - truth;
  }
}
