package palmturn.app.stage;

import org.jspecify.annotations.Nullable;
import palmturn.app.look.Typed;
import palmturn.trial.Estimate;
import palmturn.trial.KnownLength;
import palmturn.trial.Placed;
import palmturn.trial.Point;

/**
 * Places as they are being set; a scale may still lack its length.
 *
 * @param places all but the scale
 * @param from one end of the scale
 * @param to its other end
 * @param cm its length as it was typed, empty before
 */
record Draft(Placed places, @Nullable Point from, @Nullable Point to, String cm) {
  private static final double LEAST_PX = 4;

  /** Returns places to go on from. */
  static Draft of(Placed kept) {
    KnownLength scale = kept.scale();
    return scale == null
        ? new Draft(kept, null, null, "")
        : new Draft(kept.withScale(null), scale.from(), scale.to(), Typed.plain(scale.cm()));
  }

  /** Returns whether a scale was drawn whose length is not known. */
  boolean lacksLength() {
    return from != null && lengthCm() == null;
  }

  /** Returns what can be kept: a scale only with its length. */
  Placed placed() {
    Double length = lengthCm();
    return from == null || to == null || length == null || from.equals(to)
        ? places
        : places.withScale(new KnownLength(from, to, length));
  }

  private @Nullable Double lengthCm() {
    Double length = Typed.number(cm);
    return length != null && length > 0 && length <= 1000 ? length : null;
  }

  /** Returns this without one of the places. */
  Draft without(Drawn what) {
    return switch (what) {
      case HAND -> with(places.withHandRegion(null));
      case ELBOW -> with(places.withElbow(null));
      case TRUNK -> with(places.withTrunk(null));
      case TARGET -> with(places.withTarget(null));
      case SCALE -> new Draft(places, null, null, "");
    };
  }

  /** Returns this with one of the places at a spot. */
  Draft at(Drawn what, Point spot) {
    return switch (what) {
      case HAND -> stretched(what, spot, spot);
      case ELBOW -> with(places.withElbow(spot));
      case TRUNK -> with(places.withTrunk(spot));
      case TARGET -> with(places.withTarget(spot));
      case SCALE -> new Draft(places, spot, spot, cm);
    };
  }

  /** Returns this with a place drawn from one spot to another; a point goes to the second one. */
  Draft stretched(Drawn what, Point start, Point end) {
    return switch (what) {
      case HAND ->
          with(
              places.withHandRegion(
                  new Estimate.Region(
                      Math.min(start.x(), end.x()),
                      Math.min(start.y(), end.y()),
                      Math.max(LEAST_PX, Math.abs(end.x() - start.x())),
                      Math.max(LEAST_PX, Math.abs(end.y() - start.y())))));
      case SCALE -> new Draft(places, start, end, cm);
      default -> at(what, end);
    };
  }

  /** Returns the spot that arrow keys move; null where nothing is set. */
  @Nullable Point handle(Drawn what) {
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
  Draft moved(Drawn what, double right, double down) {
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
      case SCALE -> new Draft(places, from, there, cm);
      default -> at(what, there);
    };
  }

  /** Returns this with the region larger, or the scale's first end moved. */
  Draft resized(Drawn what, double right, double down) {
    Estimate.Region hand = places.handRegion();
    if (what == Drawn.HAND && hand != null) {
      return with(
          places.withHandRegion(
              new Estimate.Region(
                  hand.x(),
                  hand.y(),
                  Math.max(LEAST_PX, hand.width() + right),
                  Math.max(LEAST_PX, hand.height() + down))));
    }
    return what == Drawn.SCALE && from != null
        ? new Draft(places, from.moved(right, down), to, cm)
        : this;
  }

  Draft withCm(String typed) {
    return new Draft(places, from, to, typed);
  }

  private Draft with(Placed other) {
    return new Draft(other, from, to, cm);
  }
}
