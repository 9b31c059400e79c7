package palmturn.app.stage;

import org.jspecify.annotations.Nullable;
import palmturn.app.look.NumberField;
import palmturn.trial.Estimate;
import palmturn.trial.KnownLength;
import palmturn.trial.PlacedPoints;
import palmturn.trial.Point;

/**
 * Places being set; a scale may still lack its length.
 *
 * @param places all but the scale
 * @param from one end of the scale
 * @param to its other end
 * @param cm its length as it was typed, empty before
 */
record PlacesDraft(PlacedPoints places, @Nullable Point from, @Nullable Point to, String cm) {
  private static final double LEAST_PX = 4;

  /** Returns places to go on from. */
  static PlacesDraft from(PlacedPoints kept) {
    KnownLength scale = kept.scale();
    return scale == null
        ? new PlacesDraft(kept, null, null, "")
        : new PlacesDraft(
            kept.withScale(null), scale.from(), scale.to(), NumberField.format(scale.cm()));
  }

  /** Returns whether a scale was drawn whose length is not known. */
  boolean lacksLength() {
    return from != null && lengthCm() == null;
  }

  /** Returns what can be kept: a scale only with its length. */
  PlacedPoints placed() {
    Double length = lengthCm();
    return from == null || to == null || length == null || from.equals(to)
        ? places
        : places.withScale(new KnownLength(from, to, length));
  }

  private @Nullable Double lengthCm() {
    Double length = NumberField.parse(cm);
    return length != null && length > 0 && length <= 1000 ? length : null;
  }

  /** Returns this without one of the places. */
  PlacesDraft without(OverlayItem what) {
    return switch (what) {
      case HAND -> with(places.withHandRegion(null));
      case ELBOW -> with(places.withElbow(null));
      case TRUNK -> with(places.withTrunk(null));
      case TARGET -> with(places.withTarget(null));
      case SCALE -> new PlacesDraft(places, null, null, "");
    };
  }

  /** Returns this with one of the places at a spot. */
  PlacesDraft placedAt(OverlayItem what, Point spot) {
    return switch (what) {
      case HAND -> stretched(what, spot, spot);
      case ELBOW -> with(places.withElbow(spot));
      case TRUNK -> with(places.withTrunk(spot));
      case TARGET -> with(places.withTarget(spot));
      case SCALE -> new PlacesDraft(places, spot, spot, cm);
    };
  }

  /** Returns this with a place drawn from one spot to another; a point goes to the second one. */
  PlacesDraft stretched(OverlayItem what, Point start, Point end) {
    return switch (what) {
      case HAND ->
          with(
              places.withHandRegion(
                  new Estimate.Region(
                      Math.min(start.x(), end.x()),
                      Math.min(start.y(), end.y()),
                      Math.max(LEAST_PX, Math.abs(end.x() - start.x())),
                      Math.max(LEAST_PX, Math.abs(end.y() - start.y())))));
      case SCALE -> new PlacesDraft(places, start, end, cm);
      default -> placedAt(what, end);
    };
  }

  /** Returns the spot that arrow keys move; null where nothing is set. */
  @Nullable Point handle(OverlayItem what) {
    Estimate.Region hand = places.handRegion();
    return switch (what) {
      case HAND -> hand == null ? null : new Point(hand.x(), hand.y());
      case ELBOW -> places.elbow();
      case TRUNK -> places.trunk();
      case TARGET -> places.target();
      case SCALE -> to;
    };
  }

  /** Returns this with a place moved; a scale by its second end. */
  PlacesDraft moved(OverlayItem what, double right, double down) {
    Estimate.Region hand = places.handRegion();
    Point handle = handle(what);
    if (handle == null) {
      return this;
    }
    Point there = handle.moved(right, down);
    return switch (what) {
      case HAND ->
          hand == null
              ? this
              : with(
                  places.withHandRegion(
                      new Estimate.Region(there.x(), there.y(), hand.width(), hand.height())));
      case SCALE -> new PlacesDraft(places, from, there, cm);
      default -> placedAt(what, there);
    };
  }

  /** Returns this with the region larger, or the scale's first end moved. */
  PlacesDraft resized(OverlayItem what, double right, double down) {
    Estimate.Region hand = places.handRegion();
    if (what == OverlayItem.HAND && hand != null) {
      return with(
          places.withHandRegion(
              new Estimate.Region(
                  hand.x(),
                  hand.y(),
                  Math.max(LEAST_PX, hand.width() + right),
                  Math.max(LEAST_PX, hand.height() + down))));
    }
    return what == OverlayItem.SCALE && from != null
        ? new PlacesDraft(places, from.moved(right, down), to, cm)
        : this;
  }

  PlacesDraft withCm(String typed) {
    return new PlacesDraft(places, from, to, typed);
  }

  private PlacesDraft with(PlacedPoints other) {
    return new PlacesDraft(other, from, to, cm);
  }
}
