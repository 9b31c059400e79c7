package palmturn.measure;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Confidence;
import palmturn.numbers.Range;
import palmturn.trial.Slap;
import palmturn.trial.Zone;

/**
 * The share of attempts without a fault.
 *
 * @param slaps n of the rate: without doubles and missed turns
 * @param doubles second contacts without a turn between
 * @param attempts all marks: slaps, doubles and missed turns
 * @param clean attempts without a fault; null where a slap's zone is unknown
 * @param cleanSharePct 100·clean/attempts
 * @param cleanShareRangePct Wilson's 95 % interval of it, if slaps were independent
 * @param faults every kind, those never marked too
 */
public record Accuracy(
    int slaps,
    int doubles,
    int attempts,
    @Nullable Integer clean,
    @Nullable Double cleanSharePct,
    @Nullable Range cleanShareRangePct,
    Map<FaultKind, FaultCount> faults) {

  public Accuracy {
    faults = Collections.unmodifiableMap(new EnumMap<>(faults));
  }

  static Accuracy of(Window window) {
    List<Slap> marks = window.marks();
    int attempts = marks.size();
    Integer clean = known(window) ? (int) marks.stream().filter(window::clean).count() : null;
    Range range = clean == null ? null : Confidence.wilson(clean, attempts);
    return new Accuracy(
        window.slaps().size(),
        (int) marks.stream().filter(mark -> mark.kind() == Slap.Kind.DOUBLE).count(),
        attempts,
        clean,
        clean == null || attempts == 0 ? null : 100.0 * clean / attempts,
        range == null ? null : range.times(100),
        faults(window));
  }

  /**
   * Whether clean can be told: an unknown zone matters only on a slap that is not faulty anyway.
   */
  static boolean known(Window window) {
    return window.marks().stream()
        .noneMatch(mark -> mark.zone() == Zone.UNKNOWN && window.clean(mark));
  }

  private static Map<FaultKind, FaultCount> faults(Window window) {
    Map<FaultKind, FaultCount> faults = new EnumMap<>(FaultKind.class);
    for (FaultKind kind : FaultKind.values()) {
      int palm = 0;
      int back = 0;
      int unknown = 0;
      for (Slap mark : window.marks()) {
        if (kind.isOf(mark) || spoils(kind, window, mark)) {
          switch (mark.side()) {
            case PALM -> palm++;
            case BACK -> back++;
            case UNKNOWN -> unknown++;
          }
        }
      }
      int attempts = window.marks().size();
      double per10 = attempts == 0 ? 0 : 10.0 * (palm + back + unknown) / attempts;
      faults.put(kind, new FaultCount(palm, back, unknown, per10));
    }
    return faults;
  }

  private static boolean spoils(FaultKind kind, Window window, Slap mark) {
    return window.spans().stream().anyMatch(span -> kind.isOf(span) && span.contains(mark.timeS()));
  }
}
