package palmturn.work;

import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.json.LimitsJson;
import palmturn.json.ScoreJson;
import palmturn.measure.Limits;
import palmturn.measure.ReadingChoice;
import palmturn.measure.Scores;
import palmturn.measure.SessionScore;
import palmturn.store.SessionFolder;
import palmturn.trial.Trial;

/** Turns a session's readings into figures. */
public final class Scoring {
  private Scoring() {}

  /** Returns the limits and margins that the program ships. */
  public static Limits limits() {
    return LimitsJson.standard();
  }

  /**
   * Returns the figures of a session.
   *
   * @param reader whose readings, {@code estimate} for the program's own; null for each trial's
   *     first finished one, else its first
   * @throws UserError if no trial has such a reading
   */
  public static SessionScore score(SessionFolder folder, @Nullable String reader) throws UserError {
    String name = String.valueOf(folder.folder().getFileName());
    List<Trial> trials = folder.trials();
    if (trials.isEmpty()) {
      throw new UserError(name + " has no trial yet: add a clip with palmturn add");
    }
    SessionScore score = Scores.session(folder.session(), trials, choice(reader), limits());
    if (score.trials().isEmpty()) {
      throw new UserError(
          reader == null
              ? name + " has no reading yet: mark a trial in the app, or import marks"
              : reader.equals(ReadingChoice.ESTIMATE_NAME)
                  ? name + " has no estimate yet: run palmturn estimate on it"
                  : "%s has no reading by %s".formatted(name, reader));
    }
    return score;
  }

  /** Returns the reading that is scored where a reader is named, or none. */
  static ReadingChoice choice(@Nullable String reader) {
    if (reader == null) {
      return ReadingChoice.FIRST;
    }
    return reader.equals(ReadingChoice.ESTIMATE_NAME)
        ? ReadingChoice.ESTIMATE
        : ReadingChoice.named(reader);
  }

  /** Returns figures in the fixed form of scripts. */
  public static String json(SessionScore score) {
    return ScoreJson.write(score);
  }
}
