package palmturn.app.stage;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate;
import palmturn.trial.PlacedPoints;
import palmturn.trial.Point;

/**
 * Items drawn on the picture at one moment, in pixels of the upright picture.
 *
 * @param region of the moving hand, detected or pointed at; null for none
 * @param elbow the moving arm's elbow; null where it was not followed
 * @param points that were pointed at
 * @param scale the line of known length; null for none
 * @param chosen item being set; null for none
 */
record Overlay(
    Estimate.@Nullable Region region,
    @Nullable Elbow elbow,
    Map<OverlayItem, Point> points,
    @Nullable ScaleLine scale,
    @Nullable OverlayItem chosen) {
  /** Nothing. */
  static final Overlay NONE = new Overlay(null, null, Map.of(), null, null);

  private static final double TRAIL_S = 0.6;
  private static final double AT_S = 0.06;

  /** Nearer than the frames of any clip are to each other. */
  private static final double FRAME_S = 0.001;

  /**
   * A line of known length.
   *
   * @param from one end
   * @param to the other end
   * @param words its length
   */
  record ScaleLine(Point from, Point to, String words) {}

  /**
   * The elbow.
   *
   * @param place where it was before the first slap
   * @param limitPx how far it may go; null without a scale
   * @param trail its path up to this moment, broken where it was lost
   * @param now where it is; null where it is lost
   * @param estimated its estimated position while lost; null while seen or if unknown
   * @param words what is said beside it
   */
  record Elbow(
      Point place,
      @Nullable Double limitPx,
      List<List<Point>> trail,
      @Nullable Point now,
      @Nullable EstimatedElbow estimated,
      String words) {
    Elbow {
      trail = List.copyOf(trail);
    }
  }

  /**
   * The estimated position of a lost elbow.
   *
   * @param sdPx standard deviation to each side
   */
  record EstimatedElbow(Point at, double sdPx) {}

  /** Returns what an estimate has to show at a moment. */
  static Overlay at(Estimate estimate, double timeS, double limitCm) {
    ElbowPath path = estimate.elbow();
    return new Overlay(
        estimate.handRegion(),
        path == null || path.samples().isEmpty() ? null : elbow(path, timeS, limitCm),
        Map.of(),
        null,
        null);
  }

  /**
   * Returns this with what a person has pointed at, which goes before what the program found.
   *
   * @param setting what is being set; null for nothing
   */
  Overlay withDraft(PlacesDraft draft, @Nullable OverlayItem setting) {
    PlacedPoints places = draft.places();
    Map<OverlayItem, Point> pointed = new EnumMap<>(OverlayItem.class);
    if (places.elbow() != null && (elbow == null || setting == OverlayItem.ELBOW)) {
      pointed.put(OverlayItem.ELBOW, places.elbow());
    }
    if (places.trunk() != null) {
      pointed.put(OverlayItem.TRUNK, places.trunk());
    }
    if (places.target() != null) {
      pointed.put(OverlayItem.TARGET, places.target());
    }
    Point from = draft.from();
    Point to = draft.to();
    return new Overlay(
        places.handRegion() == null ? region : places.handRegion(),
        elbow,
        pointed,
        from == null || to == null
            ? null
            : new ScaleLine(from, to, draft.lacksLength() ? "length?" : draft.cm() + " cm"),
        setting);
  }

  /** Returns this without what is not to be shown. */
  Overlay filter(Predicate<OverlayItem> shown) {
    Map<OverlayItem, Point> left = new EnumMap<>(OverlayItem.class);
    points.forEach(
        (what, spot) -> {
          if (shown.test(what)) {
            left.put(what, spot);
          }
        });
    return new Overlay(
        shown.test(OverlayItem.HAND) ? region : null,
        shown.test(OverlayItem.ELBOW) ? elbow : null,
        left,
        shown.test(OverlayItem.SCALE) ? scale : null,
        chosen);
  }

  private static Elbow elbow(ElbowPath path, double timeS, double limitCm) {
    List<List<Point>> trail = new ArrayList<>();
    double beforeS = Double.NEGATIVE_INFINITY;
    for (ElbowPath.Sample sample : path.samples()) {
      double at = sample.timeS();
      if (at < timeS - TRAIL_S || at > timeS + 1e-6) {
        continue;
      }
      if (trail.isEmpty() || lostBetween(path, beforeS, at)) {
        trail.add(new ArrayList<>());
      }
      trail.get(trail.size() - 1).add(spot(path, sample));
      beforeS = at;
    }
    ElbowPath.GapEstimate unseen = unseen(path, timeS);
    ElbowPath.Sample nearest = path.nearest(timeS);
    ElbowPath.@Nullable Sample seen =
        unseen == null && nearest != null && Math.abs(nearest.timeS() - timeS) <= AT_S
            ? nearest
            : null;
    Double cm = path.cmPerPixel();
    return new Elbow(
        path.start(),
        cm == null ? null : limitCm / cm,
        trail,
        seen == null ? null : spot(path, seen),
        unseen == null
            ? null
            : new EstimatedElbow(
                new Point(path.start().x() + unseen.rightPx(), path.start().y() + unseen.downPx()),
                unseen.sdPx()),
        unseen != null
            ? "elbow lost, " + lostWords(path, unseen)
            : seen != null
                ? distanceWords(path, seen.distancePx())
                : lostBetween(path, timeS - AT_S, timeS + AT_S) ? "elbow lost" : "elbow");
  }

  /** Returns what is told of the frame of a moment, null where the elbow is seen or not told. */
  private static ElbowPath.@Nullable GapEstimate unseen(ElbowPath path, double timeS) {
    return path.gapEstimates().stream()
        .filter(each -> Math.abs(each.timeS() - timeS) < FRAME_S)
        .findFirst()
        .orElse(null);
  }

  private static String lostWords(ElbowPath path, ElbowPath.GapEstimate unseen) {
    ElbowPath.Unit unit = path.unit();
    return unit == null
        ? "no scale"
        : "about %s ± %s %s"
            .formatted(unit.of(unseen.distancePx()), unit.of(unseen.sdPx()), unit.name());
  }

  private static boolean lostBetween(ElbowPath path, double fromS, double toS) {
    return path.gaps().stream().anyMatch(gap -> gap.startS() < toS && gap.endS() > fromS);
  }

  private static Point spot(ElbowPath path, ElbowPath.Sample sample) {
    return new Point(path.start().x() + sample.rightPx(), path.start().y() + sample.downPx());
  }

  private static String distanceWords(ElbowPath path, double px) {
    ElbowPath.Unit unit = path.unit();
    return unit == null ? "elbow, no scale" : "elbow %s %s".formatted(unit.of(px), unit.name());
  }
}
