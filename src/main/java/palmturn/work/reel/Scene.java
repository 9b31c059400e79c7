package palmturn.work.reel;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import palmturn.measure.Moments;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.wording.MarkNames;

/**
 * One moment and its name.
 *
 * @param title what is seen, in a few words
 * @param moment the marks
 */
record Scene(String title, Moments.Moment moment) {

  /** Returns the worst moments in order of time, then the cleanest second. */
  static List<Scene> of(Moments moments) {
    List<Scene> scenes = new ArrayList<>();
    int count = moments.worst().size();
    for (Moments.Moment worst : moments.worst()) {
      scenes.add(
          new Scene(
              String.format(Locale.ROOT, "%d of %d: %s", scenes.size() + 1, count, faults(worst)),
              worst));
    }
    Moments.Moment cleanest = moments.cleanest();
    if (cleanest != null) {
      scenes.add(
          new Scene(
              cleanest.faulty().isEmpty()
                  ? "The cleanest second"
                  : String.format(
                      Locale.ROOT,
                      "The best second: %d of %d clean",
                      cleanest.marks().size() - cleanest.faulty().size(),
                      cleanest.marks().size()),
              cleanest));
    }
    return scenes;
  }

  /** Returns the faults of a moment, such as {@code fingers 2, bent wrist}. */
  private static String faults(Moments.Moment moment) {
    Map<String, Integer> counts = new LinkedHashMap<>();
    for (Slap slap : moment.faulty()) {
      String word = MarkNames.fault(slap);
      if (!word.isEmpty()) {
        counts.merge(word, 1, Integer::sum);
      }
    }
    for (Span span : moment.spans()) {
      counts.put(MarkNames.fault(span.kind()), 1);
    }
    List<String> words = new ArrayList<>();
    counts.forEach(
        (word, n) -> words.add(n == 1 ? word : String.format(Locale.ROOT, "%s %d", word, n)));
    return String.join(", ", words);
  }
}
