package palmturn.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.POJONode;
import java.io.IOException;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Curve;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate;

/**
 * An estimate as a script reads it: every key is there, null where a thing can't be told, and each
 * sample of a curve is an object of its own.
 *
 * @param of whom it is of
 * @param estimate what was found
 */
public record PrintedEstimate(EstimateLine of, Estimate estimate) {
  /** Prints it laid out to be read, piece by piece. */
  public void print(Appendable to) throws IOException {
    JsonText.page(tree(), to);
  }

  /** Returns it on one line, for one of many. */
  public String line() {
    return JsonText.line(tree());
  }

  private ObjectNode tree() {
    ObjectNode node = of.head();
    node.put("clipSha256", estimate.clipSha256());
    node.set("sources", EstimateJson.sources(estimate.sources()));
    RecordForm.put(node, estimate.basis(), "fps variableRate captureFps");
    RecordForm.put(node, estimate.findings(), "trialFound");
    RecordForm.put(node, estimate.figures(), "rateSlapsPerS intervalCvPct timingFloorPct");
    RecordForm.put(node, estimate.traces(), "soundOffsetS");
    node.set(
        "slaps",
        RecordForm.all(
            estimate.slaps(),
            slap -> RecordForm.put(EstimateJson.begin(slap), slap, "pictureS soundS why=doubt")));
    node.set("spans", EstimateJson.spans(estimate.spans()));
    node.set("bursts", EstimateJson.stretches(estimate.stretches()));
    Estimate.Rotation turns = estimate.figures().rotation();
    node.set(
        "rotation",
        RecordForm.of(turns, "frequencyHz spectrumHz autocorrelationHz")
            .set("series", samples(turns.series(), "hz")));
    node.set(
        "elbow", RecordForm.orNull(estimate.elbow(), path -> elbow(path, estimate.elbowInSpace())));
    node.set("shape", RecordForm.orNull(estimate.shape(), PrintedEstimate::shape));
    node.set("handRegion", RecordForm.orNull(estimate.handRegion(), EstimateJson::write));
    RecordForm.put(node, estimate, "warnings");
    node.set("turn", samples(estimate.traces().turn(), "value"));
    node.set("sound", samples(estimate.traces().sound(), "value"));
    return node;
  }

  private static JsonNode samples(Curve curve, String key) {
    return new POJONode(new SampleItems(curve, key));
  }

  private static ObjectNode elbow(ElbowPath path, Estimate.@Nullable ElbowInSpace space) {
    ObjectNode node =
        RecordForm.of(
            path,
            "maxCm maxForearms scale=pictureScale.source cmPerPixel forearmPx startXPx=start.x"
                + " startYPx=start.y");
    node.set("space", RecordForm.orNull(space, EstimateJson::write));
    node.set("gaps", EstimateJson.stretches(path.gaps()));
    node.set(
        "unseen",
        RecordForm.all(
            path.gapEstimates(),
            each ->
                EstimateJson.rounded(
                    new Unseen(
                        each.timeS(),
                        cm(path, each.distancePx()),
                        cm(path, each.sdPx()),
                        forearms(path, each.distancePx()),
                        forearms(path, each.sdPx())),
                    "timeS cm sdCm forearms sdForearms")));
    node.set(
        "series",
        RecordForm.all(
            path.samples(),
            each ->
                EstimateJson.rounded(
                    new Seen(
                        each.timeS(),
                        cm(path, each.distancePx()),
                        forearms(path, each.distancePx()),
                        space == null ? null : cm(path, space.distancePx(each))),
                    "timeS cm forearms spaceCm")));
    return node.set(
        "path",
        RecordForm.all(path.samples(), each -> EstimateJson.rounded(each, "timeS rightPx downPx")));
  }

  private record Seen(
      double timeS, @Nullable Double cm, @Nullable Double forearms, @Nullable Double spaceCm) {}

  private record Unseen(
      double timeS,
      @Nullable Double cm,
      @Nullable Double sdCm,
      @Nullable Double forearms,
      @Nullable Double sdForearms) {}

  private static @Nullable Double cm(ElbowPath path, double px) {
    return path.cmPerPixel() == null ? null : (Double) (px * path.cmPerPixel());
  }

  private static @Nullable Double forearms(ElbowPath path, double px) {
    return path.forearmPx() == null ? null : (Double) (px / path.forearmPx());
  }

  private static ObjectNode shape(Estimate.Shape shape) {
    ObjectNode node = JsonText.object();
    node.set("wristBend", samples(shape.wristBendDeg(), "deg"));
    node.set("turnRange", RecordForm.orNull(shape.turnRange(), PrintedEstimate::turns));
    return node.set(
        "targetElbow", RecordForm.orNull(shape.targetElbow(), path -> elbow(path, null)));
  }

  private static ObjectNode turns(Estimate.TurnRange range) {
    return EstimateJson.rounded(
            range,
            "usualDeg=medianDeg firstThirdDeg=change.firstThirdDeg lastThirdDeg=change.lastThirdDeg"
                + " changeDeg=change.deg changeLowDeg=change.lowDeg changeHighDeg=change.highDeg")
        .set("series", samples(range.deg(), "deg"));
  }
}
