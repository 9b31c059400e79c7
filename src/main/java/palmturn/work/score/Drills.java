package palmturn.work.score;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import palmturn.advise.DrillLibrary;
import palmturn.advise.Evidence;
import palmturn.advise.LibraryDrill;
import palmturn.advise.StartingPace;
import palmturn.advise.Training;
import palmturn.json.DrillsJson;
import palmturn.measure.ProgressScore;
import palmturn.measure.SessionScore;
import palmturn.settings.EditedFile;
import palmturn.store.SessionFolder;
import palmturn.trial.DrillHand;
import palmturn.trial.Hand;
import palmturn.trial.TrialId;
import palmturn.trial.UserError;
import palmturn.work.NewFile;

/**
 * The drill library and what it advises. The program's own is changed by the user's {@code
 * drills.json}, and that by the session's.
 */
public final class Drills {
  /** The file's name, in the user's settings and in a session. */
  public static final String FILE = "drills.json";

  private Drills() {}

  /**
   * Returns the library that holds for a session.
   *
   * @param settings the folder of the user's settings
   * @param session the session's folder; null for the user's library
   * @throws UserError if a file can't be read or has a fault
   */
  public static DrillLibrary library(Path settings, @Nullable Path session) throws UserError {
    DrillLibrary library = changed(DrillsJson.standard(), settings.resolve(FILE));
    return session == null ? library : changed(library, session.resolve(FILE));
  }

  private static DrillLibrary changed(DrillLibrary library, Path file) throws UserError {
    if (!Files.exists(file)) {
      return library;
    }
    DrillLibrary changes;
    changes = EditedFile.read(file, "drills", DrillsJson::read);
    for (String code : changes.leaveOut()) {
      if (library.drill(code).isEmpty()) {
        throw new UserError(
            "%s: leaveOut: there is no drill \"%s\": palmturn drills lists them"
                .formatted(file, code));
      }
    }
    return library.changedBy(changes);
  }

  /**
   * Returns what to train by a session's figures.
   *
   * @param standards that hold for the session
   * @param over the athlete over several sessions, whose best rate counts; null for this one alone
   * @param warnings what stands in the way of scoring a trial's clip, where it was looked at
   */
  public static Training training(
      SessionScore score,
      Standards standards,
      @Nullable ProgressScore over,
      Map<TrialId, List<String>> warnings) {
    Map<Hand, Double> best = over == null ? Map.of() : over.bestRates();
    return Training.of(new Evidence(score, standards.limits(), best, warnings), standards.drills());
  }

  /**
   * Returns the click that a drill starts at for a hand.
   *
   * @param standards that hold for the session
   * @throws UserError if the library has no such drill, it has no click, or no figure tells its
   *     pace
   */
  public static StartingPace pace(
      SessionFolder folder, Standards standards, String code, DrillHand hand) throws UserError {
    LibraryDrill drill =
        standards
            .drills()
            .drill(code)
            .orElseThrow(
                () ->
                    new UserError(
                        "there is no drill \"%s\": palmturn drills lists them".formatted(code)));
    if (drill.paceShare() == null) {
      throw new UserError(
          "%s has no pace: say --pace, or choose a drill that has one".formatted(code));
    }
    Evidence evidence =
        Evidence.of(Scoring.score(folder, null, standards.limits()), standards.limits());
    StartingPace pace = StartingPace.of(evidence, drill, hand);
    if (pace == null) {
      throw new UserError(
          "%s has no rate of %s to take a pace from: score a trial, or say --pace"
              .formatted(
                  folder.folder().getFileName(),
                  hand == DrillHand.BOTH ? "both hands" : "the %s hand".formatted(hand.code())));
    }
    return pace;
  }

  /** Returns a library in the form of its file. */
  public static String json(DrillLibrary library) {
    return DrillsJson.write(library);
  }

  /**
   * Writes the program's own library to a file, to be edited.
   *
   * @param replace whether a file that is there may go
   */
  public static void write(Path file, boolean replace) throws UserError {
    NewFile.write(file, replace, DrillsJson.standardText().getBytes(StandardCharsets.UTF_8));
  }
}
