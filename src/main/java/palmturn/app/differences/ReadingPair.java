package palmturn.app.differences;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.app.estimate.ShownEstimate;
import palmturn.trial.Estimate;
import palmturn.trial.Reading;
import palmturn.trial.Settlement;
import palmturn.trial.Trial;

/**
 * Two readings that can be compared.
 *
 * @param first reader whose marks stand where both agree
 * @param second another reader, or {@link Settlement#ESTIMATE}
 */
public record ReadingPair(String first, String second) {
  private static final int ENOUGH = 2;

  /**
   * Returns all pairs of a trial: the one settled last, then finished readings before open ones and
   * the estimate at the end. A reading that is empty and open says nothing yet and is left out.
   */
  public static List<ReadingPair> of(Trial trial) {
    List<String> names = new ArrayList<>();
    trial.readings().stream()
        .filter(each -> each.finished() || !each.slaps().isEmpty() || !each.spans().isEmpty())
        .sorted(Comparator.comparing(Reading::finished).reversed())
        .forEach(each -> names.add(each.reader()));
    Estimate made = trial.estimate();
    if (made != null && made.clipSha256().equals(trial.clip().sha256())) {
      names.add(Settlement.ESTIMATE);
    }
    List<ReadingPair> pairs = new ArrayList<>();
    for (int i = 0; i < names.size(); i++) {
      for (int j = i + 1; j < names.size(); j++) {
        pairs.add(inOrder(trial, names.get(i), names.get(j)));
      }
    }
    List<Settlement> settled = trial.settlements();
    if (!settled.isEmpty()) {
      Settlement last = settled.get(settled.size() - 1);
      ReadingPair before = new ReadingPair(last.first(), last.second());
      if (pairs.remove(before)) {
        pairs.add(0, before);
      }
    }
    return pairs;
  }

  /** Returns two readings in the order in which they have been settled, where they have been. */
  private static ReadingPair inOrder(Trial trial, String one, String other) {
    return trial
        .settlement(one, other)
        .map(known -> new ReadingPair(known.first(), known.second()))
        .orElse(new ReadingPair(one, other));
  }

  /**
   * Returns why a reader may not see others' marks yet; empty where nothing is against it. A second
   * reader's marks are worth something as long as they are made blind.
   *
   * @param reader who sits in front of the window; null while nobody said so
   */
  public static String refusal(Trial trial, @Nullable String reader) {
    if (reader == null) {
      return "";
    }
    Reading own = trial.reading(reader).orElse(null);
    if (own != null) {
      return own.finished() || !own.independent()
          ? ""
          : "finish your own reading first: until then other marks stay hidden";
    }
    long finished = trial.readings().stream().filter(Reading::finished).count();
    return finished < ENOUGH && ShownEstimate.readsBlind(trial, reader)
        ? reader + " has not read this trial: others' marks stay hidden until two have finished it"
        : "";
  }

  /** Returns the two as they stand in a heading, such as "A with the estimate". */
  public String words() {
    return first + " with " + (second.equals(Settlement.ESTIMATE) ? "the estimate" : second);
  }
}
