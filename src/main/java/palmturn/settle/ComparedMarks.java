package palmturn.settle;

import java.util.List;
import palmturn.trial.Estimate;
import palmturn.trial.Reading;
import palmturn.trial.Settlement;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.Trial;
import palmturn.trial.Zone;

/**
 * The marks of one reader, or of the estimate, on a trial, ready for comparison.
 *
 * @param name the reader's, or {@link Settlement#ESTIMATE}
 * @param independent whether the marks owe nothing to another's
 * @param finished whether the reader has declared them complete
 * @param slaps marks inside the trial's stretch, in order
 * @param spans stretches that begin inside it, in order
 * @param outside how many marks lie outside the stretch, and are left out
 */
public record ComparedMarks(
    String name,
    boolean independent,
    boolean finished,
    List<Slap> slaps,
    List<Span> spans,
    int outside) {
  /** Tolerance at the edges against rounding of frame times. */
  private static final double EDGE_S = 1e-6;

  /**
   * Returns what a reader of a trial says, or the estimate.
   *
   * @param name a reader's, or {@link Settlement#ESTIMATE}
   * @throws SettleException if there is no such reading, or the estimate is of another clip
   */
  public static ComparedMarks of(Trial trial, String name) throws SettleException {
    if (name.equals(Settlement.ESTIMATE)) {
      return inside(trial, estimate(trial).toReading(name), true, true);
    }
    Reading reading = trial.reading(name).orElse(null);
    if (reading == null) {
      throw new SettleException(
          "%s: no reading by %s; there are %s".formatted(trial.id().name(), name, readers(trial)));
    }
    return inside(trial, reading, reading.independent(), reading.finished());
  }

  /** Returns whether any mark has a known side; without one, sides are not compared. */
  boolean namesSides() {
    return slaps.stream().anyMatch(slap -> slap.side() != Side.UNKNOWN);
  }

  /** Returns whether any mark has a known zone; without one, zones are not compared. */
  boolean namesZones() {
    return slaps.stream().anyMatch(slap -> slap.zone() != Zone.UNKNOWN);
  }

  private static Estimate estimate(Trial trial) throws SettleException {
    Estimate estimate = trial.estimate();
    if (estimate == null) {
      throw new SettleException("%s: no estimate yet; make one first".formatted(trial.id().name()));
    }
    if (!estimate.clipSha256().equals(trial.clip().sha256())) {
      throw new SettleException(
          "%s: the clip has changed since its estimate; estimate it again"
              .formatted(trial.id().name()));
    }
    return estimate;
  }

  private static ComparedMarks inside(
      Trial trial, Reading reading, boolean independent, boolean finished) {
    Double fromS = trial.fromS();
    Double toS = trial.toS();
    double low = fromS == null ? Double.NEGATIVE_INFINITY : fromS - EDGE_S;
    double high = toS == null ? Double.POSITIVE_INFINITY : toS + EDGE_S;
    List<Slap> slaps =
        reading.slaps().stream()
            .filter(slap -> low <= slap.timeS() && slap.timeS() <= high)
            .toList();
    List<Span> spans =
        reading.spans().stream()
            .filter(span -> low <= span.startS() && span.startS() <= high)
            .toList();
    int all = reading.slaps().size() + reading.spans().size();
    int outside = all - slaps.size() - spans.size();
    return new ComparedMarks(reading.reader(), independent, finished, slaps, spans, outside);
  }

  private static String readers(Trial trial) {
    List<String> names = trial.readings().stream().map(Reading::reader).toList();
    return names.isEmpty() ? "none" : String.join(", ", names);
  }
}
