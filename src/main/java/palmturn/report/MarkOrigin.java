package palmturn.report;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import palmturn.measure.Phrases;
import palmturn.measure.ReadingChoice;
import palmturn.settle.SettledTrial;
import palmturn.trial.Reading;
import palmturn.trial.TrialId;

/** Says whose marks a figure comes from, and whether they are still open. */
final class MarkOrigin {
  private final ReportInput input;

  MarkOrigin(ReportInput input) {
    this.input = input;
  }

  /**
   * Returns whose marks a row over trials comes from.
   *
   * @param names as its score has them
   * @param block whose trials it rests on; empty for those of all blocks
   */
  String of(List<String> names, String block) {
    Set<String> open = new LinkedHashSet<>();
    for (ReportInput.Filmed filmed : input.trials()) {
      Reading reading = filmed.reading();
      boolean here = block.isEmpty() || filmed.trial().id().block().equals(block);
      if (here && reading != null && !reading.finished() && names.contains(reading.reader())) {
        open.add(reading.reader());
      }
    }
    return words(names, open);
  }

  /** Returns whose marks the figures of a trial come from. */
  String of(TrialId trial, String name) {
    boolean open =
        input.trials().stream()
            .filter(filmed -> filmed.trial().id().equals(trial))
            .map(ReportInput.Filmed::reading)
            .anyMatch(reading -> reading != null && !reading.finished());
    return words(List.of(name), open ? Set.of(name) : Set.of());
  }

  private static String words(List<String> names, Set<String> open) {
    List<String> people = new ArrayList<>();
    List<String> parts = new ArrayList<>();
    for (String name : names) {
      String still = open.contains(name) ? " (still open)" : "";
      switch (name) {
        case SettledTrial.READER -> parts.add("settled" + still);
        case ReadingChoice.ESTIMATE_NAME -> parts.add("found by the program");
        default -> people.add(name + still);
      }
    }
    if (!people.isEmpty()) {
      parts.add(0, "read by " + Phrases.list(people));
    }
    return String.join("; ", parts);
  }
}
