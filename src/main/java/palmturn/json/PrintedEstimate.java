package palmturn.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Curve;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate;
import palmturn.trial.EstimatedSlap;

/**
 * An estimate as a script reads it: every key is there, null where a thing can't be told, and each
 * sample of a curve is an object of its own.
 *
 * @param of whom it is of
 * @param estimate what was found
 */
public record PrintedEstimate(EstimateLine of, Estimate estimate) {
  /** Returns it laid out to be read. */
  public String page() {
    return JsonText.page(tree());
  }

  /** Returns it on one line, for one of many. */
  public String line() {
    return JsonText.line(tree());
  }

  private ObjectNode tree() {
    ObjectNode node = JsonText.object();
    of.put(node);
    node.put("clipSha256", estimate.clipSha256());
    node.set("sources", EstimateJson.sources(estimate.sources()));
    Put.figure(node, "fps", estimate.basis().fps());
    node.put("variableRate", estimate.basis().variableRate());
    Put.figure(node, "captureFps", estimate.basis().captureFps());
    node.put("trialFound", estimate.trialFound());
    RecordForm.put(node, estimate.figures(), "rateSlapsPerS intervalCvPct timingFloorPct");
    Put.figure(node, "soundOffsetS", estimate.soundOffsetS());
    ArrayNode slaps = node.putArray("slaps");
    estimate.slaps().forEach(slap -> slaps.add(slap(slap)));
    node.set("spans", EstimateJson.spans(estimate.spans()));
    node.set("bursts", EstimateJson.stretches(estimate.stretches()));
    Estimate.Rotation turns = estimate.figures().rotation();
    node.set(
        "rotation",
        RecordForm.of(turns, "frequencyHz spectrumHz autocorrelationHz")
            .set("series", samples(turns.series(), "hz")));
    ElbowPath elbow = estimate.elbow();
    node.set("elbow", elbow == null ? null : elbow(elbow, estimate.elbowInSpace()));
    Estimate.Shape shape = estimate.shape();
    node.set("shape", shape == null ? null : shape(shape));
    Estimate.Region region = estimate.handRegion();
    node.set("handRegion", region == null ? null : EstimateJson.write(region));
    ArrayNode warnings = node.putArray("warnings");
    estimate.warnings().forEach(warnings::add);
    node.set("turn", samples(estimate.traces().turn(), "value"));
    node.set("sound", samples(estimate.traces().sound(), "value"));
    return node;
  }

  private static ObjectNode slap(EstimatedSlap slap) {
    ObjectNode node = EstimateJson.begin(slap);
    Put.figure(node, "pictureS", slap.pictureS());
    Put.figure(node, "soundS", slap.soundS());
    node.put("why", slap.doubt());
    return node;
  }

  private static ArrayNode samples(Curve curve, String key) {
    ArrayNode array = JsonText.array();
    for (int i = 0; i < curve.timesS().size(); i++) {
      ObjectNode node = array.addObject();
      node.put("timeS", JsonText.rounded(curve.timesS().get(i), EstimateJson.TIME_DECIMALS));
      node.put(key, JsonText.rounded(curve.values().get(i), EstimateJson.VALUE_DECIMALS));
    }
    return array;
  }

  private static ObjectNode elbow(ElbowPath path, Estimate.@Nullable ElbowInSpace space) {
    ObjectNode node = JsonText.object();
    Put.figure(node, "maxCm", path.maxCm());
    Put.figure(node, "maxForearms", path.maxForearms());
    node.put("scale", path.pictureScale().source());
    Put.figure(node, "cmPerPixel", path.cmPerPixel());
    Put.figure(node, "forearmPx", path.forearmPx());
    Put.figure(node, "startXPx", path.start().x());
    Put.figure(node, "startYPx", path.start().y());
    node.set("space", space == null ? null : EstimateJson.write(space));
    node.set("gaps", EstimateJson.stretches(path.gaps()));
    node.set("unseen", unseen(path));
    ArrayNode series = node.putArray("series");
    ArrayNode places = node.putArray("path");
    for (ElbowPath.Sample sample : path.samples()) {
      double timeS = JsonText.rounded(sample.timeS(), EstimateJson.TIME_DECIMALS);
      ObjectNode length = series.addObject();
      length.put("timeS", timeS);
      Put.figure(length, "cm", cm(path, sample.distancePx()));
      Put.figure(length, "forearms", forearms(path, sample.distancePx()));
      Put.figure(
          length,
          "spaceCm",
          space == null || path.cmPerPixel() == null
              ? null
              : value(path.cmPerPixel() * space.distancePx(sample)));
      ObjectNode place = places.addObject();
      place.put("timeS", timeS);
      Put.figure(place, "rightPx", value(sample.rightPx()));
      Put.figure(place, "downPx", value(sample.downPx()));
    }
    return node;
  }

  private static ArrayNode unseen(ElbowPath path) {
    ArrayNode array = JsonText.array();
    for (ElbowPath.GapEstimate unseen : path.gapEstimates()) {
      ObjectNode node = array.addObject();
      node.put("timeS", JsonText.rounded(unseen.timeS(), EstimateJson.TIME_DECIMALS));
      Put.figure(node, "cm", cm(path, unseen.distancePx()));
      Put.figure(node, "sdCm", cm(path, unseen.sdPx()));
      Put.figure(node, "forearms", forearms(path, unseen.distancePx()));
      Put.figure(node, "sdForearms", forearms(path, unseen.sdPx()));
    }
    return array;
  }

  private static @Nullable Double cm(ElbowPath path, double px) {
    return path.cmPerPixel() == null ? null : (Double) value(px * path.cmPerPixel());
  }

  private static @Nullable Double forearms(ElbowPath path, double px) {
    return path.forearmPx() == null ? null : (Double) value(px / path.forearmPx());
  }

  private static ObjectNode shape(Estimate.Shape shape) {
    ObjectNode node = JsonText.object();
    node.set("wristBend", samples(shape.wristBendDeg(), "deg"));
    node.set("turnRange", shape.turnRange() == null ? null : turns(shape.turnRange()));
    node.set("targetElbow", shape.targetElbow() == null ? null : elbow(shape.targetElbow(), null));
    return node;
  }

  private static ObjectNode turns(Estimate.TurnRange range) {
    ObjectNode node = JsonText.object();
    Estimate.TurnChange change = range.change();
    Put.figure(node, "usualDeg", value(range.medianDeg()));
    Put.figure(node, "firstThirdDeg", change == null ? null : value(change.firstThirdDeg()));
    Put.figure(node, "lastThirdDeg", change == null ? null : value(change.lastThirdDeg()));
    Put.figure(node, "changeDeg", change == null ? null : value(change.deg()));
    Put.figure(node, "changeLowDeg", change == null ? null : value(change.lowDeg()));
    Put.figure(node, "changeHighDeg", change == null ? null : value(change.highDeg()));
    node.set("series", samples(range.deg(), "deg"));
    return node;
  }

  private static double value(double exact) {
    return JsonText.rounded(exact, EstimateJson.VALUE_DECIMALS);
  }
}
