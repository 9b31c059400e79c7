package palmturn.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
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
    return new Point(keys.number("x", -MOST_PX, MOST_PX), keys.number("y", -MOST_PX, MOST_PX));
  }

  private static KnownLength length(Keys keys) throws JsonException {
    return new KnownLength(
        keys.object("from", PlacedJson::spot),
        keys.object("to", PlacedJson::spot),
        keys.above0("cm", MOST_CM));
  }

  static ObjectNode write(PlacedPoints places) {
    ObjectNode node = JsonText.object();
    node.set("handRegion", RecordForm.orNull(places.handRegion(), EstimateJson::write));
    node.set("elbow", RecordForm.orNull(places.elbow(), PlacedJson::write));
    node.set("trunk", RecordForm.orNull(places.trunk(), PlacedJson::write));
    node.set("scale", RecordForm.orNull(places.scale(), PlacedJson::write));
    node.set("target", RecordForm.orNull(places.target(), PlacedJson::write));
    return RecordForm.extra(node, places.extra());
  }

  private static ObjectNode write(KnownLength scale) {
    ObjectNode node = JsonText.object();
    node.set("from", write(scale.from()));
    node.set("to", write(scale.to()));
    return RecordForm.put(node, scale, "cm");
  }

  private static ObjectNode write(Point spot) {
    return RecordForm.of(spot, "x y");
  }
}
