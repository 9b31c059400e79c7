package palmturn.measure;

import java.util.List;
import palmturn.trial.Reading;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.TimeScale;
import palmturn.trial.Trial;

/**
 * The part of a reading that counts: from the first slap for the protocol's seconds, or to the last
 * mark if that comes sooner.
 *
 * @param marks every mark inside, attempts without contact and doubles too
 * @param slaps the marks that count as slaps of the rate
 * @param timesS real seconds from the first slap to each of {@code slaps}
 * @param spans the reading's spans, whether inside or not
 * @param scale how media seconds become real ones
 */
record Window(
    List<Slap> marks, List<Slap> slaps, double[] timesS, List<Span> spans, TimeScale scale) {
  /** Rounding in sums of frame times must not drop a slap that lies exactly on an edge. */
  static final double EDGE_S = 1e-9;

  static Window of(Trial trial, Reading reading, double windowS) {
    TimeScale scale = trial.timeScale();
    List<Slap> inStretch =
        reading.slaps().stream().filter(slap -> inStretch(trial, slap.timeS())).toList();
    List<Slap> counted = inStretch.stream().filter(Slap::counts).toList();
    if (counted.isEmpty()) {
      return new Window(List.of(), List.of(), new double[0], reading.spans(), scale);
    }
    double firstS = counted.get(0).timeS();
    // Where real time can't be told no protocol second can be counted: every mark is in.
    double seconds = scale.known() ? windowS : Double.POSITIVE_INFINITY;
    List<Slap> marks =
        inStretch.stream()
            .filter(mark -> mark.timeS() >= firstS)
            .filter(mark -> scale.realBetween(firstS, mark.timeS()) <= seconds + EDGE_S)
            .toList();
    List<Slap> slaps = marks.stream().filter(Slap::counts).toList();
    double[] timesS =
        slaps.stream().mapToDouble(slap -> scale.realBetween(firstS, slap.timeS())).toArray();
    return new Window(marks, slaps, timesS, reading.spans(), scale);
  }

  private static boolean inStretch(Trial trial, double timeS) {
    Double fromS = trial.fromS();
    Double toS = trial.toS();
    return (fromS == null || timeS >= fromS - EDGE_S) && (toS == null || timeS <= toS + EDGE_S);
  }

  /** Returns real seconds from the first slap; only for a window that has one. */
  double realS(double mediaS) {
    return scale.realBetween(slaps.get(0).timeS(), mediaS);
  }

  /** Returns real seconds from the first slap to the last, 0 without slaps. */
  double lengthS() {
    return timesS.length == 0 ? 0 : timesS[timesS.length - 1];
  }

  /** Returns whether a mark lies in a span that spoils it. */
  boolean spoilt(Slap mark) {
    return spans.stream().anyMatch(span -> span.kind().spoils() && span.contains(mark.timeS()));
  }

  /** Returns whether a mark has no fault of its own and lies in no span that spoils it. */
  boolean clean(Slap mark) {
    return !mark.faulty() && !spoilt(mark);
  }
}
