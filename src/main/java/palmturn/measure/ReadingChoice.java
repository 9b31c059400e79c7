package palmturn.measure;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Estimate;
import palmturn.trial.Reading;
import palmturn.trial.Trial;

/** Says which reading of a trial is scored. */
@FunctionalInterface
public interface ReadingChoice {
  /** Returns the reading to score, null if this trial has none that serves. */
  @Nullable Reading of(Trial trial);

  /**
   * Chooses the first finished reading made here, else the first one begun here. Only where there
   * is none, the same of those that came with packs; never one of several by the same reader.
   */
  ReadingChoice FIRST =
      trial ->
          first(trial, Reading::own)
              .or(() -> first(trial, reading -> !reading.keptBeside()))
              .orElse(null);

  private static Optional<Reading> first(Trial trial, Predicate<Reading> of) {
    List<Reading> some = trial.readings().stream().filter(of).toList();
    return some.stream().filter(Reading::finished).findFirst().or(some.stream()::findFirst);
  }

  /** Chooses the reading of a reader. */
  static ReadingChoice named(String reader) {
    return trial -> trial.reading(reader).orElse(null);
  }

  /** The name under which the estimate is scored, which no reader may have. */
  String ESTIMATE_NAME = "estimate";

  /** Takes the estimate for a reading. */
  ReadingChoice ESTIMATE =
      trial -> {
        Estimate estimate = trial.estimate();
        return estimate == null ? null : estimate.toReading(ESTIMATE_NAME);
      };
}
