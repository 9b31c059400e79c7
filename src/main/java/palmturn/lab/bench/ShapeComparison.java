package palmturn.lab.bench;

import java.util.List;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import palmturn.settle.Matching;
import palmturn.trial.Estimate;
import palmturn.trial.Estimate.EstimatedSpan;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Side;
import palmturn.trial.Span;
import palmturn.trial.Zone;

/**
 * Sides, zones and bent wrists of an estimate beside the truth. Contacts are matched as in {@link
 * Comparison}.
 *
 * @param pairs contacts that were found
 * @param missed contacts that were not
 * @param invented slaps reported where there was none
 * @param bent time with a bent wrist
 * @param turn how far the hand turned
 * @param shapeUsed whether the estimate rests on the shape too
 */
public record ShapeComparison(
    List<Pair> pairs,
    List<ClipTruth.Contact> missed,
    List<EstimatedSlap> invented,
    Bent bent,
    TurnComparison turn,
    boolean shapeUsed) {

  /**
   * A contact that was found.
   *
   * @param truth as it was
   * @param slap as it was found
   */
  public record Pair(ClipTruth.Contact truth, EstimatedSlap slap) {}

  /**
   * Time with the wrist bent.
   *
   * @param trueS truly
   * @param foundS as reported
   * @param bothS of these, what is in both
   * @param mostDeg the largest true bend in it; null where the truth does not tell it, or is none
   */
  public record Bent(double trueS, double foundS, double bothS, @Nullable Double mostDeg) {
    /** Returns what is in either. */
    double eitherS() {
      return trueS + foundS - bothS;
    }

    /** Returns what is in both over what is in either; null where there is nothing in either. */
    @Nullable Double iou() {
      return eitherS() > 0 ? bothS / eitherS() : null;
    }
  }

  public ShapeComparison {
    pairs = List.copyOf(pairs);
    missed = List.copyOf(missed);
    invented = List.copyOf(invented);
  }

  static ShapeComparison of(ClipTruth truth, Estimate estimate, double toleranceS) {
    List<ClipTruth.Contact> contacts = truth.contacts();
    List<EstimatedSlap> slaps = estimate.slaps();
    Matching matching =
        Matching.of(
            contacts.stream().mapToDouble(ClipTruth.Contact::timeS).toArray(),
            slaps.stream().mapToDouble(EstimatedSlap::timeS).toArray(),
            toleranceS);
    return new ShapeComparison(
        matching.pairs().stream()
            .map(pair -> new Pair(contacts.get(pair.a()), slaps.get(pair.b())))
            .toList(),
        matching.onlyA().stream().map(contacts::get).toList(),
        matching.onlyB().stream().map(slaps::get).toList(),
        bent(truth, estimate),
        TurnComparison.of(truth, estimate),
        estimate.sources().contains(Estimate.Source.SHAPE));
  }

  private static Bent bent(ClipTruth truth, Estimate estimate) {
    List<EstimatedSpan> found =
        estimate.spans().stream().filter(span -> span.kind() == Span.Kind.BENT_WRIST).toList();
    // Stretches of one list never overlap.
    double bothS = 0;
    for (ClipTruth.Stretch stretch : truth.bentWrist()) {
      for (EstimatedSpan span : found) {
        double fromS = Math.max(stretch.startS(), span.startS());
        bothS += Math.max(0, Math.min(stretch.endS(), span.endS()) - fromS);
      }
    }
    ClipTruth.Angle bend = truth.bend();
    return new Bent(
        truth.bentWrist().stream().mapToDouble(each -> each.endS() - each.startS()).sum(),
        found.stream().mapToDouble(each -> each.endS() - each.startS()).sum(),
        bothS,
        bend == null || truth.bentWrist().isEmpty()
            ? null
            : truth.bentWrist().stream().mapToDouble(bend::mostDeg).max().orElse(0));
  }

  /** Returns how many contacts there were. */
  int contacts() {
    return pairs.size() + missed.size();
  }

  /** Returns how many slaps were reported. */
  int found() {
    return pairs.size() + invented.size();
  }

  /** Returns F = 2·matched/(contacts + found); null where there is nothing on either side. */
  @Nullable Double f() {
    return contacts() + found() == 0 ? null : 2.0 * pairs.size() / (contacts() + found());
  }

  /** Returns pairs whose side is right; an unknown one is not. */
  int sidesRight() {
    return count(pair -> pair.slap().side() == pair.truth().side());
  }

  int sidesUnknown() {
    return count(pair -> pair.slap().side() == Side.UNKNOWN);
  }

  /** Returns pairs of a true and a reported zone. */
  int zones(Zone truth, Zone found) {
    return count(pair -> pair.truth().zone() == truth && pair.slap().zone() == found);
  }

  /** Returns contacts with a true zone that were not found. */
  int missed(Zone truth) {
    return (int) missed.stream().filter(contact -> contact.zone() == truth).count();
  }

  /** Returns slaps with a reported zone where there was no contact. */
  int invented(Zone found) {
    return (int) invented.stream().filter(slap -> slap.zone() == found).count();
  }

  private int count(Predicate<Pair> holds) {
    return (int) pairs.stream().filter(holds).count();
  }
}
