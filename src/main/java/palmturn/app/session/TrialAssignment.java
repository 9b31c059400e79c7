package palmturn.app.session;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Hand;
import palmturn.trial.TrialId;

/** Assigns candidates to trials by the protocol's order: the hands alternate. */
final class TrialAssignment {
  private TrialAssignment() {}

  /**
   * Returns the trial of each candidate, null for one that is left out. A hand that was chosen for
   * one candidate goes on alternating from there.
   *
   * @param attempts the candidates in the order of filming
   * @param first the hand of the first candidate
   * @param block the block of all
   * @param start the place of the first attempt, where it was dropped on one; else null
   * @param there trials that are there already
   */
  static List<@Nullable TrialId> places(
      List<TrialCandidate> attempts,
      Hand first,
      String block,
      @Nullable TrialId start,
      Set<TrialId> there) {
    Set<TrialId> used = new HashSet<>(there);
    List<@Nullable TrialId> places = new ArrayList<>();
    Hand guess = first;
    boolean begun = false;
    for (TrialCandidate attempt : attempts) {
      if (!attempt.included()) {
        places.add(null);
        continue;
      }
      Hand hand = attempt.chosenHand() == null ? guess : attempt.chosenHand();
      boolean atStart = !begun && start != null && start.hand() == hand && !used.contains(start);
      TrialId place = atStart ? start : free(hand, block, used);
      used.add(place);
      places.add(place);
      guess = hand.other();
      begun = true;
    }
    return places;
  }

  private static TrialId free(Hand hand, String block, Set<TrialId> used) {
    int repeat = 1;
    while (used.contains(new TrialId(hand, block, repeat))) {
      repeat++;
    }
    return new TrialId(hand, block, repeat);
  }
}
