package palmturn.settle;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Settlement;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.TimeScale;
import palmturn.trial.Trial;
import palmturn.trial.Zone;

/**
 * A comparison of two readings of a trial, or of a reading and the estimate.
 *
 * @param a the first
 * @param b the second
 * @param aTimesS real seconds of the first's marks, counted from the start of the clip
 * @param bTimesS the same of the second's, {@code removedS} taken off
 * @param tolerance up to which two marks are of the same slap
 * @param removedS the constant that was taken off the second's times, real seconds; 0 if none was
 * @param matching which marks are of the same slap, by index
 * @param slaps where marks differ, worst first
 * @param spans where stretches differ, worst first
 */
public record ReadingComparison(
    ComparedMarks a,
    ComparedMarks b,
    List<Double> aTimesS,
    List<Double> bTimesS,
    Tolerance tolerance,
    double removedS,
    Matching matching,
    List<Difference<Slap>> slaps,
    List<Difference<Span>> spans) {

  public ReadingComparison {
    aTimesS = List.copyOf(aTimesS);
    bTimesS = List.copyOf(bTimesS);
    slaps = List.copyOf(slaps);
    spans = List.copyOf(spans);
  }

  /**
   * Returns the two readings that a settlement names, compared on its terms.
   *
   * @throws SettleException if they are one and the same, if either isn't there, or if the estimate
   *     is of another clip
   */
  public static ReadingComparison of(Trial trial, Settlement terms) throws SettleException {
    if (terms.first().equals(terms.second())) {
      throw new SettleException(
          "%s: %s can't be compared with itself; name two readers"
              .formatted(trial.id().name(), terms.first()));
    }
    ComparedMarks a = ComparedMarks.of(trial, terms.first());
    ComparedMarks b = ComparedMarks.of(trial, terms.second());
    double[] aS = realS(trial.timeScale(), a.slaps());
    double[] bS = realS(trial.timeScale(), b.slaps());
    double removedS = terms.removeOffset() ? ClockOffset.medianS(aS, bS) : 0;
    bS = ClockOffset.shifted(bS, -removedS);
    Double intervalS = Tolerance.medianIntervalS(aS, bS);
    Tolerance tolerance = tolerance(trial, terms.toleranceS(), a, b, intervalS);
    Matching matching = Matching.of(aS, bS, tolerance.seconds());
    double apartS = intervalS == null ? 4 * tolerance.seconds() : intervalS / 2;
    return new ReadingComparison(
        a,
        b,
        boxed(aS),
        boxed(bS),
        tolerance,
        removedS,
        matching,
        new DifferenceFinder(a, b, aS, bS).slaps(matching, Math.max(apartS, tolerance.seconds())),
        DifferenceFinder.spans(a.spans(), b.spans()));
  }

  /** Returns how many differences there are. */
  public int differences() {
    return slaps.size() + spans.size();
  }

  /** Returns whether both give a matched slap the same side; null where either can't tell. */
  public @Nullable Boolean sideAgrees(Matching.Pair pair) {
    Side first = a.slaps().get(pair.a()).side();
    Side second = b.slaps().get(pair.b()).side();
    return first == Side.UNKNOWN || second == Side.UNKNOWN ? null : first == second;
  }

  /** Returns whether both give a matched slap the same zone; null where either can't tell. */
  public @Nullable Boolean zoneAgrees(Matching.Pair pair) {
    Zone first = a.slaps().get(pair.a()).zone();
    Zone second = b.slaps().get(pair.b()).zone();
    return first == Zone.UNKNOWN || second == Zone.UNKNOWN ? null : first == second;
  }

  private static Tolerance tolerance(
      Trial trial,
      @Nullable Double givenS,
      ComparedMarks a,
      ComparedMarks b,
      @Nullable Double intervalS) {
    List<Slap> all = a.slaps().isEmpty() ? b.slaps() : a.slaps();
    TimeScale scale = trial.timeScale();
    double factor = all.isEmpty() || !scale.known() ? 1 : scale.factorAt(all.get(0).timeS());
    Tolerance rule = Tolerance.byRule(trial.clip().medianFrameS() * factor, intervalS);
    return givenS == null ? rule : new Tolerance(givenS, rule.tooFewFrames());
  }

  /**
   * Returns the slaps' times in real seconds, in media seconds where the real-time scale is
   * unknown.
   */
  private static double[] realS(TimeScale scale, List<Slap> slaps) {
    return slaps.stream()
        .mapToDouble(slap -> scale.known() ? scale.realBetween(0, slap.timeS()) : slap.timeS())
        .toArray();
  }

  private static List<Double> boxed(double[] times) {
    List<Double> list = new ArrayList<>(times.length);
    for (double time : times) {
      list.add(time);
    }
    return list;
  }
}
