package palmturn.estimate.hands;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.Progress;
import palmturn.estimate.motion.Motion;
import palmturn.estimate.request.Request;
import palmturn.numbers.Robust;
import palmturn.trial.Curve;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate;
import palmturn.trial.Estimate.ElbowInSpace;
import palmturn.trial.Estimate.EstimatedSpan;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Hand;
import palmturn.trial.Side;
import palmturn.trial.Span;
import palmturn.trial.Zone;

/**
 * The evidence of the hands' shape for a trial that motion has found.
 *
 * @param landmarks the hands over time
 * @param contacts the contacts, with the poses that all sources together give
 * @param sides null where the shape does not distinguish palm from back
 * @param zones where each contact was
 */
public record ShapeEvidence(
    LandmarkPass.Landmarks landmarks,
    List<PosedContact> contacts,
    @Nullable ShownSides sides,
    List<ContactZones.ZoneEstimate> zones) {
  /** Least share of gaps in which the sides of a trial alternate. */
  private static final double LEAST_ALTERNATION = 0.75;

  /** Interval, in medians, within which a second contact by the same side is a double tap. */
  private static final double SHORT = 0.85;

  /** Rise of a bend's confidence over the limit: Palmturn's choice. */
  private static final double CONFIDENCE_PER_DEG = 0.02;

  /**
   * The measurements beside the slaps.
   *
   * @param shape for the estimate
   * @param spans faults over a stretch, media seconds
   */
  public record Measured(Estimate.Shape shape, List<EstimatedSpan> spans) {
    public Measured {
      spans = List.copyOf(spans);
    }
  }

  /**
   * Reads a trial.
   *
   * @param use how the networks are used
   * @param trusted whether the turns that motion found may be relied on
   * @param warnings receives sentences for the reader
   * @return null where the hands were not found
   * @throws ClipException if the clip can't be opened any more
   * @throws palmturn.clip.StoppedException if {@code watch} stops it
   */
  public static @Nullable ShapeEvidence of(
      ClipFile clip,
      Motion motion,
      Request request,
      NetworkUse use,
      boolean trusted,
      Progress watch,
      List<String> warnings)
      throws ClipException {
    double[] times = motion.stops().pictureS();
    LandmarkPass.Landmarks seen;
    try (Networks networks = Networks.open(use)) {
      seen =
          new LandmarkPass(
                  clip, motion.contacts().motion().footage(), request.realPerMediaS(), watch)
              .follow(networks, times, use.everyFrame(), request.hand() == Hand.RIGHT);
    } catch (IOException e) {
      warnings.add(e.getMessage() + ". Shape was not used.");
      return null;
    }
    if (seen == null) {
      warnings.add("Shape was not used: the two hands could not be told apart by their landmarks.");
      return null;
    }
    List<PosedContact> touches = new ArrayList<>();
    for (int i = 0; i < times.length; i++) {
      touches.add(
          new PosedContact(times[i], motion.turns().poses()[i], motion.turns().confidences()[i]));
    }
    ShownSides sides = ShownSides.of(seen.paths(), touches, trusted);
    List<PosedContact> fused = sides == null ? touches : sides.applyTo(touches);
    return new ShapeEvidence(seen, fused, sides, ContactZones.of(seen.paths(), fused));
  }

  /** Returns whether the hand is seen to turn between contacts, whatever its motion says. */
  public boolean alternates() {
    return sides != null && sides.alternation() >= LEAST_ALTERNATION;
  }

  /** Returns the side that the shape gives a slap with a pose. */
  Side side(int pose) {
    return sides == null || pose == 0
        ? Side.UNKNOWN
        : pose == sides.palmPose() ? Side.PALM : Side.BACK;
  }

  /** Returns the contacts, one for each of motion's, with the evidence of the shape added. */
  public List<EstimatedSlap> addTo(List<EstimatedSlap> slaps) {
    double shortS = SHORT * Robust.median(gaps());
    List<EstimatedSlap> told = new ArrayList<>();
    for (int i = 0; i < slaps.size(); i++) {
      EstimatedSlap slap = slaps.get(i);
      int pose = contacts.get(i).pose();
      boolean same = i > 0 && pose != 0 && pose == contacts.get(i - 1).pose();
      boolean soon = i > 0 && contacts.get(i).timeS() - contacts.get(i - 1).timeS() < shortS;
      boolean flipped = slap.pose() != 0 && pose != slap.pose();
      boolean isDouble = sides == null ? slap.isDouble() : same && (slap.isDouble() || soon);
      Zone zone = zones.get(i).zone();
      told.add(
          slap.withShape(
                  pose,
                  contacts.get(i).confidence(),
                  new EstimatedSlap.EstimatedZone(zone, zones.get(i).confidence()),
                  isDouble,
                  why(i, flipped, zone))
              .withSide(side(pose)));
    }
    return told;
  }

  private String why(int i, boolean flipped, Zone zone) {
    if (flipped) {
      return "the hand's shape shows the other side than its motion";
    }
    boolean cut = sides != null && sides.cutShort().get(i) && zone != Zone.EDGE;
    return cut ? "the turn before it looks cut short" : "";
  }

  private double[] gaps() {
    double[] gaps = new double[Math.max(1, contacts.size() - 1)];
    for (int i = 1; i < contacts.size(); i++) {
      gaps[i - 1] = contacts.get(i).timeS() - contacts.get(i - 1).timeS();
    }
    return gaps;
  }

  /**
   * Returns the measurements beside the slaps.
   *
   * @param elbow path of the moving elbow, null where it was not followed
   * @param inSpace its displacement in space, null where unknown
   * @param targetElbow path of the target arm's elbow, null where it was not followed
   */
  public Measured measure(
      @Nullable ElbowPath elbow,
      @Nullable ElbowInSpace inSpace,
      @Nullable ElbowPath targetElbow,
      double realPerMediaS) {
    Estimate.TurnRange turns = alternates(realPerMediaS);
    WristBend bend =
        elbow == null
            ? null
            : WristBend.of(
                landmarks.paths(), contacts, realS -> ElbowAlong.at(elbow, realS / realPerMediaS));
    if (bend == null) {
      return new Measured(new Estimate.Shape(Curve.EMPTY, turns, targetElbow, inSpace), List.of());
    }
    Curve curve =
        new Curve(
            bend.bends().stream().map(each -> each.timeS() / realPerMediaS).toList(),
            bend.bends().stream().map(WristBend.Bend::deg).toList());
    List<EstimatedSpan> spans =
        bend.spans().stream()
            .map(
                span ->
                    new EstimatedSpan(
                        Span.SpanKind.BENT_WRIST,
                        span.startS() / realPerMediaS,
                        span.endS() / realPerMediaS,
                        confidence(span.largestDeg())))
            .toList();
    return new Measured(new Estimate.Shape(curve, turns, targetElbow, inSpace), spans);
  }

  private Estimate.@Nullable TurnRange alternates(double realPerMediaS) {
    List<Boolean> central = zones.stream().map(each -> each.zone() == Zone.CENTRE).toList();
    TurnRange range = sides == null ? null : TurnRange.of(landmarks.paths(), contacts, central);
    if (range == null) {
      return null;
    }
    Curve curve =
        new Curve(
            range.turns().stream().map(each -> each.timeS() / realPerMediaS).toList(),
            range.turns().stream().map(TurnRange.Turn::deg).toList());
    TurnRange.Change change = range.change();
    return new Estimate.TurnRange(
        curve,
        range.medianDeg(),
        change == null
            ? null
            : new Estimate.TurnChange(
                change.firstDeg(),
                change.lastDeg(),
                change.interval().low(),
                change.interval().high()));
  }

  /** Returns 0.5 at the limit itself and less than 1 at any bend. */
  private static double confidence(double deg) {
    return Math.min(0.95, 0.5 + CONFIDENCE_PER_DEG * (deg - WristBend.LIMIT_DEG));
  }
}
