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
 * All that one reader, or the estimate, says about a trial.
 *
 * @param name the reader's, or {@link Settlement#ESTIMATE}
 * @param independent whether the marks owe nothing to another's
 * @param finished whether they are said to be complete
 * @param slaps marks inside the trial's stretch, in order
 * @param spans stretches that begin inside it, in order
 * @param outside how many marks lie outside the stretch, and are left out
 */
public record Marks(
    String name,
    boolean independent,
    boolean finished,
    List<Slap> slaps,
    List<Span> spans,
    int outside) {
  /** Rounding of frame times must not put a mark on the edge outside. */
  private static final double EDGE_S = 1e-6;

  /**
   * Returns what a reader of a trial says, or the estimate.
   *
   * @param name a reader's, or {@link Settlement#ESTIMATE}
   * @throws SettleException if there is no such reading, or the estimate is of another clip
   */
  public static Marks of(Trial trial, String name) throws SettleException {
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

  /** Returns whether any mark names its side; one that names none is not compared by side. */
  boolean tellsSides() {
    return slaps.stream().anyMatch(slap -> slap.side() != Side.UNKNOWN);
  }

  /** Returns whether any mark names its zone; one that names none is not compared by zone. */
  boolean tellsZones() {
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

  private static Marks inside(Trial trial, Reading reading, boolean independent, boolean finished) {
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
    return new Marks(reading.reader(), independent, finished, slaps, spans, outside);
  }

  private static String readers(Trial trial) {
    List<String> names = trial.readings().stream().map(Reading::reader).toList();
    return names.isEmpty() ? "none" : String.join(", ", names);
  }
}
