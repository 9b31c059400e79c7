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
 * What the shape of the hands says of a trial that motion has found.
 *
 * @param seen the hands over time
 * @param touches the contacts, with the poses that all sources together give
 * @param sides null where the shape does not tell palm from back
 * @param landed where each contact was
 */
public record ShapeReading(
    ShapePass.Seen seen, List<Touch> touches, @Nullable Sides sides, List<Landings.Landed> landed) {
  /** Sides that alternate in fewer gaps are not those of a trial. */
  private static final double LEAST_ALTERNATION = 0.75;

  /** A contact as soon as this after one by the same side is its second. */
  private static final double SHORT = 0.85;

  private static final double CONFIDENCE_PER_DEG = 0.02;

  /**
   * What is told beside the slaps.
   *
   * @param shape for the estimate
   * @param spans faults over a stretch, media seconds
   */
  public record Told(Estimate.Shape shape, List<EstimatedSpan> spans) {
    public Told {
      spans = List.copyOf(spans);
    }
  }

  /**
   * Reads a trial.
   *
   * @param use how the networks are used
   * @param trusted whether the turns that motion found may be relied on
   * @param warnings takes what is to be said
   * @return null where the hands were not found
   * @throws ClipException if the clip can't be opened any more
   * @throws StoppedException if {@code watch} stops it
   */
  public static @Nullable ShapeReading of(
      ClipFile clip,
      Motion motion,
      Request request,
      NetworkUse use,
      boolean trusted,
      Progress watch,
      List<String> warnings)
      throws ClipException {
    double[] times = motion.stops().pictureS();
    ShapePass.Seen seen;
    try (Networks networks = Networks.open(use)) {
      seen =
          new ShapePass(clip, motion.contacts().motion().footage(), request.realPerMediaS(), watch)
              .follow(networks, times, use.everyFrame(), request.hand() == Hand.RIGHT);
    } catch (IOException e) {
      warnings.add(e.getMessage() + ". Shape was not used.");
      return null;
    }
    if (seen == null) {
      warnings.add("Shape was not used: the two hands could not be told apart by their landmarks.");
      return null;
    }
    List<Touch> touches = new ArrayList<>();
    for (int i = 0; i < times.length; i++) {
      touches.add(new Touch(times[i], motion.turns().poses()[i], motion.turns().confidences()[i]));
    }
    Sides sides = Sides.of(seen.paths(), touches, trusted);
    List<Touch> fused = sides == null ? touches : sides.on(touches);
    return new ShapeReading(seen, fused, sides, Landings.of(seen.paths(), fused));
  }

  /** Returns whether the hand is seen to turn between contacts, whatever its motion says. */
  public boolean turns() {
    return sides != null && sides.alternation() >= LEAST_ALTERNATION;
  }

  /** Returns the side that the shape gives a slap with a pose. */
  Side side(int pose) {
    return sides == null || pose == 0
        ? Side.UNKNOWN
        : pose == sides.palmPose() ? Side.PALM : Side.BACK;
  }

  /** Returns the contacts, one for each of motion's, with what the shape says of them. */
  public List<EstimatedSlap> told(List<EstimatedSlap> slaps) {
    double shortS = SHORT * Robust.median(gaps());
    List<EstimatedSlap> told = new ArrayList<>();
    for (int i = 0; i < slaps.size(); i++) {
      EstimatedSlap slap = slaps.get(i);
      int pose = touches.get(i).pose();
      boolean same = i > 0 && pose != 0 && pose == touches.get(i - 1).pose();
      boolean soon = i > 0 && touches.get(i).timeS() - touches.get(i - 1).timeS() < shortS;
      boolean flipped = slap.pose() != 0 && pose != slap.pose();
      boolean isDouble = sides == null ? slap.isDouble() : same && (slap.isDouble() || soon);
      Zone zone = landed.get(i).zone();
      told.add(
          slap.withShape(
                  pose,
                  touches.get(i).confidence(),
                  new EstimatedSlap.EstimatedZone(zone, landed.get(i).confidence()),
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
    double[] gaps = new double[Math.max(1, touches.size() - 1)];
    for (int i = 1; i < touches.size(); i++) {
      gaps[i - 1] = touches.get(i).timeS() - touches.get(i - 1).timeS();
    }
    return gaps;
  }

  /**
   * Returns what the shape tells beside the slaps.
   *
   * @param elbow path of the moving elbow, null where it was not followed
   * @param inSpace its way in space, null where that can't be told
   * @param targetElbow path of the target arm's elbow, null where it was not followed
   */
  public Told told(
      @Nullable ElbowPath elbow,
      @Nullable ElbowInSpace inSpace,
      @Nullable ElbowPath targetElbow,
      double realPerMediaS) {
    Estimate.TurnRange turns = turns(realPerMediaS);
    WristBend bend =
        elbow == null
            ? null
            : WristBend.of(
                seen.paths(), touches, realS -> ElbowAlong.at(elbow, realS / realPerMediaS));
    if (bend == null) {
      return new Told(new Estimate.Shape(Curve.EMPTY, turns, targetElbow, inSpace), List.of());
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
                        Span.Kind.BENT_WRIST,
                        span.startS() / realPerMediaS,
                        span.endS() / realPerMediaS,
                        confidence(span.mostDeg())))
            .toList();
    return new Told(new Estimate.Shape(curve, turns, targetElbow, inSpace), spans);
  }

  private Estimate.@Nullable TurnRange turns(double realPerMediaS) {
    List<Boolean> central = landed.stream().map(each -> each.zone() == Zone.CENTRE).toList();
    TurnRange range = sides == null ? null : TurnRange.of(seen.paths(), touches, central);
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
        range.usualDeg(),
        change == null
            ? null
            : new Estimate.TurnChange(
                change.firstDeg(),
                change.lastDeg(),
                change.interval().low(),
                change.interval().high()));
  }

  /** Half at the limit itself, and not quite sure at any bend. */
  private static double confidence(double deg) {
    return Math.min(0.95, 0.5 + CONFIDENCE_PER_DEG * (deg - WristBend.LIMIT_DEG));
  }
}
