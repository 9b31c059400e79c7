package palmturn.cli;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import palmturn.advise.Advice;
import palmturn.advise.Caution;
import palmturn.advise.LibraryDrill;
import palmturn.advise.Plan;
import palmturn.advise.Training;
import palmturn.wording.Figures;
import palmturn.wording.Names;

/** A short plan of training; the report has each drill in full. */
final class TrainText {
  private static final int WIDTH = 96;

  private TrainText() {}

  static List<String> lines(Training training) {
    List<String> lines = new ArrayList<>();
    lines.add("What to train");
    for (Advice advice : training.advice()) {
      lines.addAll(wrapped("-  ", heading(advice) + advice.why()));
      lines.addAll(wrapped("   ", advice.action()));
      if (!advice.drills().isEmpty()) {
        lines.addAll(wrapped("   ", "Drills: " + String.join(", ", advice.drills())));
      }
    }
    lines.add("");
    lines.add("The coming weeks");
    for (Plan.Week week : training.plan().weeks()) {
      lines.addAll(wrapped(week.number() + "  ", week(week)));
    }
    lines.addAll(wrapped("", training.plan().note()));
    if (!training.drills().isEmpty()) {
      lines.add("");
      cautions(training).forEach(caution -> lines.addAll(wrapped("", caution)));
    }
    return lines;
  }

  private static String heading(Advice advice) {
    if (advice.rule() == Advice.FILM_AGAIN) {
      return "film or mark again. ";
    }
    return advice.quality() == null ? "" : Names.quality(advice.quality()) + ". ";
  }

  private static String week(Plan.Week week) {
    String pace =
        week.pace() == null
            ? ""
            : " At %s slaps/s.".formatted(Figures.number(week.pace().slapsPerS(), 1));
    return "%s: %s. %s%s".formatted(week.aim(), week.drill().code(), week.drill().dose(), pace);
  }

  /** Returns the cautions that the named drills need, each once. */
  static List<String> cautions(Training training) {
    Set<Caution> needed = new LinkedHashSet<>(List.of(Caution.URGENT, Caution.PAIN));
    for (LibraryDrill drill : training.drills()) {
      needed.addAll(drill.cautions());
    }
    return needed.stream().sorted().map(Caution::text).toList();
  }

  /** Breaks a text into lines, the first after a lead and the others under it. */
  static List<String> wrapped(String lead, String text) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder(lead);
    int start = lead.length();
    for (String word : text.split(" ")) {
      if (line.length() > start && line.length() + 1 + word.length() > WIDTH) {
        lines.add(line.toString());
        line = new StringBuilder(" ".repeat(start));
      }
      line.append(line.length() > start ? " " : "").append(word);
    }
    lines.add(line.toString());
    return lines;
  }
}
