package palmturn.lab.bench;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Stats;
import palmturn.trial.Estimate;
import palmturn.trial.Zone;

/**
 * The turn of a hand from one contact on the centre to the next, true and estimated, degrees.
 *
 * @param trueDeg the median of the true turns; null where the truth does not tell them
 * @param trueChangeDeg mean of the true turns in the last third less that in the first
 * @param estimated what the estimate says; null where it does not tell
 */
record TurnComparison(
    @Nullable Double trueDeg,
    @Nullable Double trueChangeDeg,
    Estimate.@Nullable TurnRange estimated) {

  static TurnComparison of(ClipTruth truth, Estimate estimate) {
    Estimate.TurnRange found = estimate.shape() == null ? null : estimate.shape().turnRange();
    ClipTruth.AngleSeries angle = truth.turn();
    List<ClipTruth.TrueContact> contacts =
        truth.contacts().stream().filter(each -> !each.isDouble()).toList();
    if (angle == null || contacts.size() < 2) {
      return new TurnComparison(null, null, found);
    }
    double startS = contacts.get(0).timeS();
    double thirdS = (contacts.get(contacts.size() - 1).timeS() - startS) / 3;
    List<Double> all = new ArrayList<>();
    List<Double> first = new ArrayList<>();
    List<Double> last = new ArrayList<>();
    for (int i = 1; i < contacts.size(); i++) {
      ClipTruth.TrueContact from = contacts.get(i - 1);
      ClipTruth.TrueContact to = contacts.get(i);
      if (from.side() != to.side() && central(from) && central(to)) {
        double deg = Math.abs(angle.at(to.timeS()) - angle.at(from.timeS()));
        double thirds = ((from.timeS() + to.timeS()) / 2 - startS) / thirdS;
        all.add(deg);
        if (thirds <= 1) {
          first.add(deg);
        } else if (thirds >= 2) {
          last.add(deg);
        }
      }
    }
    Double before = Stats.mean(array(first));
    Double after = Stats.mean(array(last));
    return new TurnComparison(
        Stats.median(array(all)), before == null || after == null ? null : after - before, found);
  }

  private static boolean central(ClipTruth.TrueContact contact) {
    return contact.zone() == Zone.CENTRE || contact.zone() == Zone.UNKNOWN;
  }

  private static double[] array(List<Double> values) {
    return values.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /** Returns what was said less what is true, null where either is not told. */
  @Nullable Double errorDeg() {
    return trueDeg == null || estimated == null ? null : estimated.medianDeg() - trueDeg;
  }

  /** Returns the same of the change from the first third to the last. */
  @Nullable Double changeErrorDeg() {
    Estimate.TurnChange change = change();
    return trueChangeDeg == null || change == null ? null : change.deg() - trueChangeDeg;
  }

  /** Returns what the estimate says of the change, null where it does not tell. */
  Estimate.@Nullable TurnChange change() {
    return estimated == null ? null : estimated.change();
  }
}
