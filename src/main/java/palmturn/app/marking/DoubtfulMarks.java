package palmturn.app.marking;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import palmturn.trial.Estimate;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;

/** Marks copied from an estimate that need a second look, each with its reason. */
final class DoubtfulMarks {
  /** Without sound the confidence is 0.7 at most. */
  private static final double LOW = 0.5;

  private DoubtfulMarks() {}

  /**
   * A doubtful mark.
   *
   * @param timeS of the mark
   * @param why in words
   */
  record DoubtfulMark(double timeS, String why) {}

  /** Returns the unseen doubtful marks of a reading in order of time. */
  static List<DoubtfulMark> of(Reading reading, Estimate estimate) {
    List<DoubtfulMark> doubts = new ArrayList<>();
    boolean sided = reading.slaps().stream().anyMatch(slap -> slap.side() != Side.UNKNOWN);
    for (Slap slap : reading.slaps()) {
      EstimatedSlap found =
          estimate.slaps().stream()
              .filter(each -> each.timeS() == slap.timeS())
              .findFirst()
              .orElse(null);
      if (found == null || slap.seen()) {
        continue;
      }
      String why = why(found);
      if (!sided && found.pose() != 0 && !found.isDouble()) {
        sided = true;
        why = "palm or back? The other sides follow from it" + (why.isEmpty() ? "" : "; " + why);
      }
      if (!why.isEmpty()) {
        doubts.add(new DoubtfulMark(slap.timeS(), why));
      }
    }
    return doubts;
  }

  private static String why(EstimatedSlap found) {
    List<String> why = new ArrayList<>();
    if (found.isDouble()) {
      why.add("a double?");
    }
    if (!found.doubt().isEmpty()) {
      why.add(found.doubt());
    }
    if (found.pose() == 0) {
      why.add("side unknown");
    }
    if (found.confidence() < LOW) {
      why.add(String.format(Locale.ROOT, "confidence %.2f", found.confidence()));
    }
    return String.join("; ", why);
  }
}
