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
 * EstimateComparison}.
 *
 * @param pairs contacts that were found
 * @param missed contacts that were not
 * @param invented slaps reported where there was none
 * @param bentWrist time with a bent wrist
 * @param turn how far the hand turned
 * @param shapeUsed whether the estimate rests on the shape too
 */
public record ShapeComparison(
    List<MatchedContact> pairs,
    List<ClipTruth.TrueContact> missed,
    List<EstimatedSlap> invented,
    BentWristTime bentWrist,
    TurnComparison turn,
    boolean shapeUsed) {

  /**
   * A contact that was found.
   *
   * @param truth as it was
   * @param slap as it was found
   */
  public record MatchedContact(ClipTruth.TrueContact truth, EstimatedSlap slap) {}

  /**
   * Time with the wrist bent.
   *
   * @param trueS truly
   * @param foundS as reported
   * @param overlapS of these, what is in both
   * @param largestDeg the largest true bend in it; null where the truth does not tell it, or is
   *     none
   */
  public record BentWristTime(
      double trueS, double foundS, double overlapS, @Nullable Double largestDeg) {
    /** Returns what is in either. */
    double unionS() {
      return trueS + foundS - overlapS;
    }

    /** Returns what is in both over what is in either; null where there is nothing in either. */
    @Nullable Double intersectionOverUnion() {
      return unionS() > 0 ? overlapS / unionS() : null;
    }
  }

  public ShapeComparison {
    pairs = List.copyOf(pairs);
    missed = List.copyOf(missed);
    invented = List.copyOf(invented);
  }

  static ShapeComparison of(ClipTruth truth, Estimate estimate, double toleranceS) {
    List<ClipTruth.TrueContact> contacts = truth.contacts();
    List<EstimatedSlap> slaps = estimate.slaps();
    Matching matching =
        Matching.of(
            contacts.stream().mapToDouble(ClipTruth.TrueContact::timeS).toArray(),
            slaps.stream().mapToDouble(EstimatedSlap::timeS).toArray(),
            toleranceS);
    return new ShapeComparison(
        matching.pairs().stream()
            .map(pair -> new MatchedContact(contacts.get(pair.a()), slaps.get(pair.b())))
            .toList(),
        matching.onlyA().stream().map(contacts::get).toList(),
        matching.onlyB().stream().map(slaps::get).toList(),
        bentWrist(truth, estimate),
        TurnComparison.of(truth, estimate),
        estimate.sources().contains(Estimate.Source.SHAPE));
  }

  private static BentWristTime bentWrist(ClipTruth truth, Estimate estimate) {
    List<EstimatedSpan> found =
        estimate.spans().stream().filter(span -> span.kind() == Span.SpanKind.BENT_WRIST).toList();
    // Stretches of one list never overlap.
    double bothS = 0;
    for (ClipTruth.BentStretch stretch : truth.bentWrist()) {
      for (EstimatedSpan span : found) {
        double fromS = Math.max(stretch.startS(), span.startS());
        bothS += Math.max(0, Math.min(stretch.endS(), span.endS()) - fromS);
      }
    }
    ClipTruth.AngleSeries bend = truth.bend();
    return new BentWristTime(
        truth.bentWrist().stream().mapToDouble(each -> each.endS() - each.startS()).sum(),
        found.stream().mapToDouble(each -> each.endS() - each.startS()).sum(),
        bothS,
        bend == null || truth.bentWrist().isEmpty()
            ? null
            : truth.bentWrist().stream().mapToDouble(bend::largestDeg).max().orElse(0));
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

  private int count(Predicate<MatchedContact> holds) {
    return (int) pairs.stream().filter(holds).count();
  }
}
