package palmturn.settle;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.BlandAltman;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.Zone;

/**
 * The agreement of two readings, on one trial or pooled over several. It is meaningful only where
 * neither started from the other or from the estimate.
 *
 * @param independent whether that is so for all of them
 * @param counts marks that both have, or one
 * @param differencesS second minus first over the pairs, real seconds, no constant taken off
 * @param side labels palm and back
 * @param zone labels centre, fingers, wrist and edge
 * @param doubles labels slap and double; other kinds count as slap
 * @param spans one for each kind of fault over a stretch
 */
public record Agreement(
    boolean independent,
    MatchCounts counts,
    List<Double> differencesS,
    LabelAgreement side,
    LabelAgreement zone,
    LabelAgreement doubles,
    List<SpanAgreement> spans) {
  private static final List<Side> SIDES = List.of(Side.PALM, Side.BACK);
  private static final List<Zone> ZONES = List.of(Zone.CENTRE, Zone.FINGERS, Zone.WRIST, Zone.EDGE);

  public Agreement {
    differencesS = List.copyOf(differencesS);
    spans = List.copyOf(spans);
  }

  /** Returns the agreement on one trial. */
  public static Agreement of(ReadingComparison comparison) {
    ComparedMarks a = comparison.a();
    ComparedMarks b = comparison.b();
    List<Matching.Pair> pairs = comparison.matching().pairs();
    List<Slap> first = pairs.stream().map(pair -> a.slaps().get(pair.a())).toList();
    List<Slap> second = pairs.stream().map(pair -> b.slaps().get(pair.b())).toList();
    return new Agreement(
        a.independent() && b.independent(),
        comparison.matching().counts(),
        pairs.stream().map(pair -> pair.differenceS() + comparison.removedS()).toList(),
        labels(SIDES, SIDES.stream().map(Side::code).toList(), first, second, Slap::side),
        labels(ZONES, ZONES.stream().map(Zone::code).toList(), first, second, Slap::zone),
        labels(
            List.of(false, true),
            List.of(Slap.Kind.SLAP.code(), Slap.Kind.DOUBLE.code()),
            first,
            second,
            slap -> slap.kind() == Slap.Kind.DOUBLE),
        Arrays.stream(Span.SpanKind.values())
            .map(kind -> SpanAgreement.of(kind, a.spans(), b.spans()))
            .toList());
  }

  /**
   * Returns the agreement on several trials together: counts are added up before any share is
   * taken. Intervals and standard errors then take slaps for independent, which those of one trial
   * are not quite.
   *
   * @return null for no trial
   */
  public static @Nullable Agreement pooled(List<Agreement> trials) {
    return trials.stream().reduce(Agreement::plus).orElse(null);
  }

  /** Returns the limits of agreement of the times of matched slaps; null under two. */
  public @Nullable BlandAltman offset() {
    return BlandAltman.of(differencesS.stream().mapToDouble(each -> each).toArray());
  }

  /**
   * F at one tolerance.
   *
   * @param toleranceS real seconds
   * @param f null without any mark
   */
  public record CurvePoint(double toleranceS, @Nullable Double f) {}

  /** Returns F against tolerance, on the clocks of a comparison. */
  public static List<CurvePoint> curve(ReadingComparison comparison, double... tolerancesS) {
    return curve(List.of(comparison), tolerancesS);
  }

  /** Returns the same over several comparisons, their counts added up. */
  static List<CurvePoint> curve(List<ReadingComparison> comparisons, double... tolerancesS) {
    return Arrays.stream(tolerancesS)
        .mapToObj(
            toleranceS ->
                new CurvePoint(
                    toleranceS,
                    comparisons.stream()
                        .map(each -> within(each, toleranceS))
                        .reduce(new MatchCounts(0, 0, 0), MatchCounts::plus)
                        .f()))
        .toList();
  }

  private static MatchCounts within(ReadingComparison comparison, double toleranceS) {
    double[] a = comparison.aTimesS().stream().mapToDouble(each -> each).toArray();
    double[] b = comparison.bTimesS().stream().mapToDouble(each -> each).toArray();
    return Matching.of(a, b, toleranceS).counts();
  }

  private Agreement plus(Agreement other) {
    List<Double> differences = new ArrayList<>(differencesS);
    differences.addAll(other.differencesS);
    List<SpanAgreement> sums = new ArrayList<>();
    for (int i = 0; i < spans.size(); i++) {
      sums.add(spans.get(i).plus(other.spans.get(i)));
    }
    return new Agreement(
        independent && other.independent,
        counts.plus(other.counts),
        differences,
        side.plus(other.side),
        zone.plus(other.zone),
        doubles.plus(other.doubles),
        sums);
  }

  private static <T> LabelAgreement labels(
      List<T> values, List<String> names, List<Slap> a, List<Slap> b, Function<Slap, T> label) {
    return LabelAgreement.of(
        values, names, a.stream().map(label).toList(), b.stream().map(label).toList());
  }
}
