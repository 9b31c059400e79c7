package palmturn.work.score;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;
import palmturn.advise.Training;
import palmturn.json.ScoreJson;
import palmturn.measure.Limits;
import palmturn.measure.ReadingChoice;
import palmturn.measure.Scores;
import palmturn.measure.SessionScore;
import palmturn.settle.SettledTrial;
import palmturn.store.SessionFolder;
import palmturn.trial.Reading;
import palmturn.trial.Trial;
import palmturn.trial.UserError;

/** The figures of a session's readings. */
public final class Scoring {
  /** The same marks give the same ceiling, whenever they are scored. */
  private static final long CEILING_SEED = 20260714;

  private Scoring() {}

  /**
   * Returns the figures of a session.
   *
   * @param reader whose readings, {@code estimate} for the program's own, {@code settled} for what
   *     was settled; null for each trial's settled one if nothing in it is open, else its first
   *     finished one, else its first
   * @param limits that hold for the session
   * @throws UserError if no trial has such a reading
   */
  public static SessionScore score(SessionFolder folder, @Nullable String reader, Limits limits)
      throws UserError {
    String name = String.valueOf(folder.folder().getFileName());
    List<Trial> trials = folder.trials();
    if (trials.isEmpty()) {
      throw new UserError(name + " has no trial yet: add a clip with palmturn add");
    }
    SessionScore score = Scores.session(folder.session(), trials, choice(reader), limits);
    if (score.trials().isEmpty()) {
      throw new UserError(
          reader == null
              ? name + " has no reading yet: mark a trial in the app, or import marks"
              : switch (reader) {
                case ReadingChoice.ESTIMATE_NAME ->
                    name + " has no estimate yet: run palmturn estimate on it";
                case SettledTrial.READER ->
                    name + " has nothing settled yet: run palmturn settle on it";
                default -> "%s has no reading by %s".formatted(name, reader);
              });
    }
    return score.withCeilings(new SplittableRandom(CEILING_SEED));
  }

  /** Returns the reading that is scored where a reader is named, or none. */
  public static ReadingChoice choice(@Nullable String reader) {
    if (reader == null) {
      return trial -> {
        SettledTrial settled = LastSettled.of(trial);
        return settled != null && settled.open() == 0
            ? settled.reading()
            : ReadingChoice.FIRST.of(trial);
      };
    }
    return switch (reader) {
      case ReadingChoice.ESTIMATE_NAME -> ReadingChoice.ESTIMATE;
      case SettledTrial.READER ->
          trial -> {
            SettledTrial settled = LastSettled.withPacks(trial);
            return settled == null ? null : settled.reading();
          };
      default -> ReadingChoice.named(reader);
    };
  }

  /** Returns a line for each trial whose figures would change with what is still open in it. */
  public static List<String> notes(SessionFolder folder, @Nullable String reader) {
    if (reader != null && !reader.equals(SettledTrial.READER)) {
      return List.of();
    }
    List<String> notes = new ArrayList<>();
    for (Trial trial : folder.trials()) {
      SettledTrial settled = LastSettled.of(trial);
      Reading scored = choice(reader).of(trial);
      if (settled != null && settled.open() > 0 && scored != null) {
        notes.add(
            String.format(
                Locale.ROOT,
                "%1$s: still open between %4$s and %5$s: %2$d of %3$d; scored as %6$s has it",
                trial.id().name(),
                settled.open(),
                settled.comparison().differences(),
                settled.comparison().a().name(),
                settled.comparison().b().name(),
                scored.reader().equals(SettledTrial.READER)
                    ? settled.comparison().a().name()
                    : scored.reader()));
      }
    }
    return notes;
  }

  /** Returns figures in the fixed form of scripts. */
  public static String json(SessionScore score, Training training) {
    return ScoreJson.write(score, training);
  }

  /** Returns the figures of one of several sessions on one line, which begins with its folder. */
  public static String jsonLine(Path session, SessionScore score, Training training) {
    return ScoreJson.line(session.toString(), score, training);
  }

  /** Returns the line of one of several sessions that has no figures. */
  public static String jsonLine(Path session, Exception error) {
    return ScoreJson.failed(session.toString(), String.valueOf(error.getMessage()));
  }
}
