package palmturn.advise;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * The training advice: what to train, the plan and its drills.
 *
 * @param advice by rule
 * @param plan the coming weeks
 * @param drills every drill that advice or plan names, in the library's order
 */
public record Training(List<Advice> advice, Plan plan, List<LibraryDrill> drills) {
  public Training {
    advice = List.copyOf(advice);
    drills = List.copyOf(drills);
  }

  /** Returns what the evidence advises, with drills from a library. */
  public static Training of(Evidence evidence, DrillLibrary library) {
    List<Advice> advice = Rules.advise(evidence, library);
    Plan plan = Plan.of(evidence, library, advice);
    Set<String> named = new LinkedHashSet<>();
    advice.forEach(each -> named.addAll(each.drills()));
    plan.weeks().forEach(week -> named.add(week.drill().code()));
    List<LibraryDrill> drills = new ArrayList<>();
    for (LibraryDrill drill : library.drills()) {
      if (named.contains(drill.code())) {
        drills.add(drill);
      }
    }
    return new Training(advice, plan, drills);
  }
}
