package palmturn.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;
import palmturn.trial.KnownLength;
import palmturn.trial.PlacedPoints;
import palmturn.trial.Point;

/** The JSON form of the points placed in a trial's picture. */
final class PlacedJson {
  private static final double MOST_PX = 1_000_000;
  private static final double MOST_CM = 1000;

  private PlacedJson() {}

  static PlacedPoints read(Keys keys) throws JsonException {
    return new PlacedPoints(
        keys.objectOrNull("handRegion", EstimateJson::region),
        keys.objectOrNull("elbow", PlacedJson::spot),
        keys.objectOrNull("trunk", PlacedJson::spot),
        keys.objectOrNull("scale", PlacedJson::length),
        keys.objectOrNull("target", PlacedJson::spot),
        keys.rest());
  }

  private static Point spot(Keys keys) throws JsonException {
    Point spot =
        new Point(keys.number("x", -MOST_PX, MOST_PX), keys.number("y", -MOST_PX, MOST_PX));
    keys.refuseRest();
    return spot;
  }

  private static KnownLength length(Keys keys) throws JsonException {
    Point from = keys.object("from", PlacedJson::spot);
    Point to = keys.object("to", PlacedJson::spot);
    double cm = keys.above0("cm", MOST_CM);
    keys.refuseRest();
    return keys.make(() -> new KnownLength(from, to, cm));
  }

  static ObjectNode write(PlacedPoints places) {
    ObjectNode node = JsonText.object();
    node.set(
        "handRegion", places.handRegion() == null ? null : EstimateJson.write(places.handRegion()));
    node.set("elbow", write(places.elbow()));
    node.set("trunk", write(places.trunk()));
    KnownLength scale = places.scale();
    node.set("scale", scale == null ? null : write(scale));
    node.set("target", write(places.target()));
    return Put.extra(node, places.extra());
  }

  private static ObjectNode write(KnownLength scale) {
    ObjectNode node = JsonText.object();
    node.set("from", write(scale.from()));
    node.set("to", write(scale.to()));
    Put.number(node, "cm", scale.cm());
    return node;
  }

  private static @Nullable ObjectNode write(@Nullable Point spot) {
    return spot == null ? null : RecordForm.of(spot, "x y");
  }
}
