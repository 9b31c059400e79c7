package palmturn.work.pack;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.advise.DrillLibrary;
import palmturn.advise.LibraryDrill;
import palmturn.json.DrillsJson;
import palmturn.json.LimitsJson;
import palmturn.measure.Limits;
import palmturn.settings.EditedFile;
import palmturn.settings.SettingsException;
import palmturn.trial.UserError;
import palmturn.work.score.Drills;
import palmturn.work.score.LimitsInForce;

/**
 * The limits and drills that a pack has of its own. They count only where that was asked for, and
 * where the session has none.
 *
 * @param limits not taken; null where there are none
 * @param drills codes of the drills not taken, and of those left out by them
 * @param taken names of the files that count from now on
 */
public record PackedStandards(@Nullable Limits limits, List<String> drills, List<String> taken) {
  public PackedStandards {
    drills = List.copyOf(drills);
    taken = List.copyOf(taken);
  }

  /** Returns whether there is something that was not taken. */
  public boolean isLeft() {
    return limits != null || !drills.isEmpty();
  }

  /**
   * Reads the files of a laid-out pack, and decides which are to be taken.
   *
   * @param laidOut where the pack lies
   * @param into the session, which may be new
   * @throws UserError if one can't be read or has a fault
   */
  static PackedStandards of(Path laidOut, Path into, boolean asked) throws UserError, IOException {
    Path limitsFile = laidOut.resolve(LimitsInForce.FILE);
    Path drillsFile = laidOut.resolve(Drills.FILE);
    Limits limits = Files.exists(limitsFile) ? read(limitsFile, "limits", LimitsJson::read) : null;
    List<String> drills = new ArrayList<>();
    if (Files.exists(drillsFile)) {
      DrillLibrary packed = read(drillsFile, "drills", DrillsJson::read);
      packed.drills().stream().map(LibraryDrill::code).forEach(drills::add);
      drills.addAll(packed.leaveOut());
    }
    List<String> taken = new ArrayList<>();
    for (Path packed : List.of(limitsFile, drillsFile)) {
      Path own = into.resolve(packed.getFileName());
      if (asked && Files.exists(packed) && !Files.exists(own)) {
        taken.add(String.valueOf(packed.getFileName()));
      }
    }
    boolean limitsKnown = taken.contains(LimitsInForce.FILE) || isSame(limitsFile, into);
    boolean drillsKnown = taken.contains(Drills.FILE) || isSame(drillsFile, into);
    return new PackedStandards(
        limitsKnown ? null : limits, drillsKnown ? List.of() : drills, taken);
  }

  private static boolean isSame(Path packed, Path into) throws IOException {
    Path own = into.resolve(packed.getFileName());
    return Files.exists(packed) && Files.exists(own) && Files.mismatch(packed, own) < 0;
  }

  /** Copies the files that are taken into the session, and leaves no other in the laid-out pack. */
  void apply(Path laidOut, Path into) throws IOException {
    for (String name : List.of(LimitsInForce.FILE, Drills.FILE)) {
      if (!taken.contains(name)) {
        Files.deleteIfExists(laidOut.resolve(name));
      } else if (Files.exists(into.resolve("session.json"))) {
        Files.copy(laidOut.resolve(name), into.resolve(name));
      }
    }
  }

  private static <T> T read(Path file, String what, EditedFile.Form<T> form) throws UserError {
    try {
      return EditedFile.read(file, what, form);
    } catch (SettingsException e) {
      throw new UserError("the pack is refused: its own %s can't be read".formatted(what), e);
    }
  }
}
