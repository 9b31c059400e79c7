package palmturn.advise;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The drills to choose from, in the order in which they are advised.
 *
 * @param drills one of each code
 * @param leaveOut codes of an underlying library's drills that are not advised
 */
public record DrillLibrary(List<LibraryDrill> drills, List<String> leaveOut) {
  public DrillLibrary {
    drills = List.copyOf(drills);
    leaveOut = List.copyOf(leaveOut);
    Set<String> seen = new HashSet<>();
    for (LibraryDrill drill : drills) {
      if (!seen.add(drill.code())) {
        throw new IllegalArgumentException(
            "the code \"%s\" is there twice: give one of the two drills another"
                .formatted(drill.code()));
      }
    }
  }

  /** Returns the drill of a code. */
  public Optional<LibraryDrill> drill(String code) {
    return drills.stream().filter(drill -> drill.code().equals(code)).findFirst();
  }

  /** Returns the drills for an aim. */
  public List<LibraryDrill> drillsFor(DrillAim aim) {
    return drills.stream().filter(drill -> drill.aims().contains(aim)).toList();
  }

  /**
   * Returns this library changed by another one: its drills take the place of those with the same
   * code, new ones come after, and those that it leaves out go.
   */
  public DrillLibrary changedBy(DrillLibrary other) {
    List<LibraryDrill> all = new ArrayList<>();
    for (LibraryDrill drill : drills) {
      if (!other.leaveOut.contains(drill.code())) {
        all.add(other.drill(drill.code()).orElse(drill));
      }
    }
    for (LibraryDrill drill : other.drills) {
      if (drill(drill.code()).isEmpty()) {
        all.add(drill);
      }
    }
    return new DrillLibrary(all, List.of());
  }
}
