package palmturn.measure;

import org.jspecify.annotations.Nullable;
import palmturn.trial.Estimate;
import palmturn.trial.Reading;
import palmturn.trial.Trial;

/** Says which reading of a trial is scored. */
@FunctionalInterface
public interface ReadingChoice {
  /** Returns the reading to score, null if this trial has none that serves. */
  @Nullable Reading of(Trial trial);

  /** Chooses the first finished reading, else the first one begun. */
  ReadingChoice FIRST =
      trial ->
          trial.readings().stream()
              .filter(Reading::finished)
              .findFirst()
              .or(() -> trial.readings().stream().findFirst())
              .orElse(null);

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
