package palmturn.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Coded;
import palmturn.trial.Curve;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Side;
import palmturn.trial.Span;
import palmturn.trial.TimedBy;
import palmturn.trial.Zone;

/** The form of an estimate inside a trial's file. Curves are columns, rounded as they are drawn. */
final class EstimateJson {
  static final int TIME_DECIMALS = 6;
  static final int VALUE_DECIMALS = 4;
  private static final double MOST_S = MarksJson.MOST_S;
  private static final double MOST = 1e9;
  private static final double MOST_PX = 1e6;
  private static final double FULL_CIRCLE_DEG = 360;

  private EstimateJson() {}

  static Estimate read(Keys keys) throws JsonException {
    return new Estimate(
        keys.parsed("clipSha256", TrialJson::sha256),
        sources(keys),
        keys.number("fps", 0, MOST),
        keys.flag("variableRate", false),
        keys.above0OrNull("captureFps", 100_000),
        keys.flag("trialFound", false),
        keys.list("slaps", EstimateJson::slap),
        keys.numberOrNull("rateSlapsPerS", 0, MOST),
        keys.numberOrNull("intervalCvPct", 0, MOST),
        keys.numberOrNull("timingFloorPct", 0, MOST),
        or(keys.objectOrNull("rotation", EstimateJson::rotation), Estimate.Rotation.UNKNOWN),
        or(keys.objectOrNull("turn", EstimateJson::curve), Curve.EMPTY),
        or(keys.objectOrNull("sound", EstimateJson::curve), Curve.EMPTY),
        keys.objectOrNull("elbow", EstimateJson::elbow),
        keys.objectOrNull("shape", EstimateJson::shape),
        keys.objectOrNull("handRegion", EstimateJson::region),
        keys.list("spans", EstimateJson::span),
        keys.list("bursts", EstimateJson::burst),
        keys.numberOrNull("soundOffsetS", -60, 60),
        keys.texts("warnings", text -> text),
        keys.rest());
  }

  private static <T> T or(@Nullable T value, T otherwise) {
    return value == null ? otherwise : value;
  }

  private static Set<Estimate.Source> sources(Keys keys) throws JsonException {
    return Set.copyOf(keys.texts("sources", code -> Coded.parse(Estimate.Source.class, code)));
  }

  private static EstimatedSlap slap(Keys keys) throws JsonException {
    EstimatedSlap slap =
        new EstimatedSlap(
            keys.number("timeS", -MOST_S, MOST_S),
            keys.parsed("timedBy", code -> Coded.parse(TimedBy.class, code)),
            keys.number("resolutionS", 0, 60),
            keys.integer("pose", -1, 1),
            keys.parsed("side", code -> Coded.parse(Side.class, code)),
            keys.number("sideConfidence", 0, 1),
            keys.parsed("zone", code -> Coded.parse(Zone.class, code)),
            keys.number("zoneConfidence", 0, 1),
            keys.flag("double", false),
            sources(keys),
            keys.number("confidence", 0, 1),
            keys.numberOrNull("pictureS", -MOST_S, MOST_S),
            keys.numberOrNull("soundS", -MOST_S, MOST_S),
            keys.textOrEmpty("why"));
    keys.refuseRest();
    return slap;
  }

  private static Estimate.Rotation rotation(Keys keys) throws JsonException {
    Estimate.Rotation rotation =
        new Estimate.Rotation(
            keys.numberOrNull("frequencyHz", 0, MOST),
            or(keys.objectOrNull("series", EstimateJson::curve), Curve.EMPTY),
            keys.numberOrNull("spectrumHz", 0, MOST),
            keys.numberOrNull("autocorrelationHz", 0, MOST));
    keys.refuseRest();
    return rotation;
  }

  private static Curve curve(Keys keys) throws JsonException {
    List<Double> timesS = keys.numbers("timesS", -MOST_S, MOST_S);
    List<Double> values = keys.numbers("values", -MOST, MOST);
    keys.refuseRest();
    return keys.make(() -> new Curve(timesS, values));
  }

  private static ElbowPath elbow(Keys keys) throws JsonException {
    ElbowPath path =
        new ElbowPath(
            keys.numberOrNull("maxCm", 0, MOST),
            keys.numberOrNull("maxForearms", 0, MOST),
            keys.text("scale"),
            keys.above0OrNull("cmPerPixel", MOST),
            keys.above0OrNull("forearmPx", MOST_PX),
            keys.number("startXPx", -MOST_PX, MOST_PX),
            keys.number("startYPx", -MOST_PX, MOST_PX),
            keys.numbers("timesS", -MOST_S, MOST_S),
            keys.numbers("rightPx", -MOST_PX, MOST_PX),
            keys.numbers("downPx", -MOST_PX, MOST_PX),
            keys.numbers("distancePx", 0, MOST_PX),
            keys.list("gaps", EstimateJson::burst),
            keys.list("unseen", EstimateJson::unseen));
    keys.refuseRest();
    int n = path.timesS().size();
    if (path.rightPx().size() != n || path.downPx().size() != n || path.distancePx().size() != n) {
      throw keys.fault("timesS, rightPx, downPx and distancePx must be equally long");
    }
    return path;
  }

  private static ElbowPath.Unseen unseen(Keys keys) throws JsonException {
    ElbowPath.Unseen unseen =
        new ElbowPath.Unseen(
            keys.number("timeS", -MOST_S, MOST_S),
            keys.number("rightPx", -MOST_PX, MOST_PX),
            keys.number("downPx", -MOST_PX, MOST_PX),
            keys.number("sdPx", 0, MOST_PX));
    keys.refuseRest();
    return unseen;
  }

  private static Estimate.Shape shape(Keys keys) throws JsonException {
    Estimate.Shape shape =
        new Estimate.Shape(
            or(keys.objectOrNull("wristBendDeg", EstimateJson::curve), Curve.EMPTY),
            keys.objectOrNull("turnRange", EstimateJson::turnRange),
            keys.objectOrNull("targetElbow", EstimateJson::elbow),
            keys.objectOrNull("elbowInSpace", EstimateJson::inSpace));
    keys.refuseRest();
    return shape;
  }

  private static Estimate.ElbowInSpace inSpace(Keys keys) throws JsonException {
    Estimate.ElbowInSpace space =
        new Estimate.ElbowInSpace(
            keys.number("perOut", 1, MOST),
            keys.flag("outIsRight", false),
            keys.number("maxCm", 0, MOST),
            keys.number("lowCm", 0, MOST),
            keys.number("highCm", 0, MOST));
    keys.refuseRest();
    return space;
  }

  private static Estimate.TurnRange turnRange(Keys keys) throws JsonException {
    Estimate.TurnRange range =
        new Estimate.TurnRange(
            or(keys.objectOrNull("deg", EstimateJson::curve), Curve.EMPTY),
            keys.number("usualDeg", 0, FULL_CIRCLE_DEG),
            keys.objectOrNull("change", EstimateJson::turnChange));
    keys.refuseRest();
    return range;
  }

  private static Estimate.TurnChange turnChange(Keys keys) throws JsonException {
    Estimate.TurnChange change =
        new Estimate.TurnChange(
            keys.number("firstThirdDeg", 0, FULL_CIRCLE_DEG),
            keys.number("lastThirdDeg", 0, FULL_CIRCLE_DEG),
            keys.number("lowDeg", -MOST, MOST),
            keys.number("highDeg", -MOST, MOST));
    keys.refuseRest();
    return change;
  }

  static Estimate.Region region(Keys keys) throws JsonException {
    Estimate.Region region =
        new Estimate.Region(
            keys.number("x", -MOST_PX, MOST_PX),
            keys.number("y", -MOST_PX, MOST_PX),
            keys.number("width", 0, MOST_PX),
            keys.number("height", 0, MOST_PX));
    keys.refuseRest();
    return region;
  }

  private static Estimate.EstimatedSpan span(Keys keys) throws JsonException {
    Span.Kind kind = keys.parsed("kind", code -> Coded.parse(Span.Kind.class, code));
    double startS = keys.number("startS", -MOST_S, MOST_S);
    double endS = keys.number("endS", -MOST_S, MOST_S);
    double confidence = keys.number("confidence", 0, 1);
    keys.refuseRest();
    return keys.make(() -> new Estimate.EstimatedSpan(kind, startS, endS, confidence));
  }

  private static Estimate.Burst burst(Keys keys) throws JsonException {
    Estimate.Burst burst =
        new Estimate.Burst(
            keys.number("startS", -MOST_S, MOST_S), keys.number("endS", -MOST_S, MOST_S));
    keys.refuseRest();
    return burst;
  }

  static ObjectNode write(Estimate estimate) {
    ObjectNode node = JsonText.object();
    node.put("clipSha256", estimate.clipSha256());
    node.set("sources", sources(estimate.sources()));
    Put.number(node, "fps", estimate.fps());
    node.put("variableRate", estimate.variableRate());
    Put.number(node, "captureFps", estimate.captureFps());
    node.put("trialFound", estimate.trialFound());
    Put.number(node, "rateSlapsPerS", estimate.rateSlapsPerS());
    Put.number(node, "intervalCvPct", estimate.intervalCvPct());
    Put.number(node, "timingFloorPct", estimate.timingFloorPct());
    Put.number(node, "soundOffsetS", estimate.soundOffsetS());
    ArrayNode slaps = node.putArray("slaps");
    estimate.slaps().forEach(slap -> slaps.add(write(slap)));
    node.set("spans", spans(estimate.spans()));
    node.set("bursts", bursts(estimate.bursts()));
    ArrayNode warnings = node.putArray("warnings");
    estimate.warnings().forEach(warnings::add);
    if (estimate.handRegion() != null) {
      node.set("handRegion", write(estimate.handRegion()));
    }
    if (estimate.elbow() != null) {
      node.set("elbow", write(estimate.elbow()));
    }
    if (estimate.shape() != null) {
      node.set("shape", write(estimate.shape()));
    }
    ObjectNode rotation = node.putObject("rotation");
    Put.number(rotation, "frequencyHz", estimate.rotation().frequencyHz());
    Put.number(rotation, "spectrumHz", estimate.rotation().spectrumHz());
    Put.number(rotation, "autocorrelationHz", estimate.rotation().autocorrelationHz());
    rotation.set("series", write(estimate.rotation().series()));
    node.set("turn", write(estimate.turn()));
    node.set("sound", write(estimate.sound()));
    return Put.extra(node, estimate.extra());
  }

  static ArrayNode sources(Set<Estimate.Source> sources) {
    ArrayNode array = JsonText.array();
    Arrays.stream(Estimate.Source.values())
        .filter(sources::contains)
        .forEach(source -> array.add(source.code()));
    return array;
  }

  private static ObjectNode write(EstimatedSlap slap) {
    ObjectNode node = begin(slap);
    Put.number(node, "pictureS", slap.pictureS());
    Put.number(node, "soundS", slap.soundS());
    Put.words(node, "why", slap.why());
    return node;
  }

  /** Returns the keys of a contact that are always there, both in a file and printed. */
  static ObjectNode begin(EstimatedSlap slap) {
    ObjectNode node = JsonText.object();
    Put.number(node, "timeS", slap.timeS());
    node.put("side", slap.side().code());
    Put.number(node, "sideConfidence", slap.sideConfidence());
    node.put("zone", slap.zone().code());
    Put.number(node, "zoneConfidence", slap.zoneConfidence());
    node.put("double", slap.isDouble());
    node.set("sources", sources(slap.sources()));
    Put.number(node, "confidence", slap.confidence());
    node.put("timedBy", slap.timedBy().code());
    Put.number(node, "resolutionS", slap.resolutionS());
    node.put("pose", slap.pose());
    return node;
  }

  static ArrayNode spans(List<Estimate.EstimatedSpan> spans) {
    ArrayNode array = JsonText.array();
    for (Estimate.EstimatedSpan span : spans) {
      ObjectNode node = array.addObject();
      node.put("kind", span.kind().code());
      Put.number(node, "startS", span.startS());
      Put.number(node, "endS", span.endS());
      Put.number(node, "confidence", span.confidence());
    }
    return array;
  }

  static ArrayNode bursts(List<Estimate.Burst> bursts) {
    ArrayNode array = JsonText.array();
    for (Estimate.Burst burst : bursts) {
      ObjectNode node = array.addObject();
      Put.number(node, "startS", burst.startS());
      Put.number(node, "endS", burst.endS());
    }
    return array;
  }

  static ObjectNode write(Estimate.Region region) {
    ObjectNode node = JsonText.object();
    Put.number(node, "x", region.x());
    Put.number(node, "y", region.y());
    Put.number(node, "width", region.width());
    Put.number(node, "height", region.height());
    return node;
  }

  private static ObjectNode write(ElbowPath path) {
    ObjectNode node = JsonText.object();
    Put.number(node, "maxCm", path.maxCm());
    Put.number(node, "maxForearms", path.maxForearms());
    node.put("scale", path.scale());
    Put.number(node, "cmPerPixel", path.cmPerPixel());
    Put.number(node, "forearmPx", path.forearmPx());
    Put.number(node, "startXPx", path.startXPx());
    Put.number(node, "startYPx", path.startYPx());
    node.set("gaps", bursts(path.gaps()));
    if (!path.unseen().isEmpty()) {
      node.set("unseen", unseen(path.unseen()));
    }
    node.set("timesS", JsonText.numbers(path.timesS(), TIME_DECIMALS));
    node.set("rightPx", JsonText.numbers(path.rightPx(), VALUE_DECIMALS));
    node.set("downPx", JsonText.numbers(path.downPx(), VALUE_DECIMALS));
    node.set("distancePx", JsonText.numbers(path.distancePx(), VALUE_DECIMALS));
    return node;
  }

  private static ArrayNode unseen(List<ElbowPath.Unseen> all) {
    ArrayNode array = JsonText.array();
    for (ElbowPath.Unseen each : all) {
      ObjectNode node = array.addObject();
      node.put("timeS", JsonText.rounded(each.timeS(), TIME_DECIMALS));
      node.put("rightPx", JsonText.rounded(each.rightPx(), VALUE_DECIMALS));
      node.put("downPx", JsonText.rounded(each.downPx(), VALUE_DECIMALS));
      node.put("sdPx", JsonText.rounded(each.sdPx(), VALUE_DECIMALS));
    }
    return array;
  }

  private static ObjectNode write(Estimate.Shape shape) {
    ObjectNode node = JsonText.object();
    node.set("wristBendDeg", write(shape.wristBendDeg()));
    Estimate.TurnRange turns = shape.turnRange();
    if (turns != null) {
      ObjectNode range = node.putObject("turnRange");
      Put.number(range, "usualDeg", turns.usualDeg());
      if (turns.change() != null) {
        range.set("change", write(turns.change()));
      }
      range.set("deg", write(turns.deg()));
    }
    if (shape.targetElbow() != null) {
      node.set("targetElbow", write(shape.targetElbow()));
    }
    if (shape.elbowInSpace() != null) {
      node.set("elbowInSpace", write(shape.elbowInSpace()));
    }
    return node;
  }

  static ObjectNode write(Estimate.ElbowInSpace space) {
    ObjectNode node = JsonText.object();
    Put.number(node, "perOut", space.perOut());
    node.put("outIsRight", space.outIsRight());
    Put.number(node, "maxCm", space.maxCm());
    Put.number(node, "lowCm", space.lowCm());
    Put.number(node, "highCm", space.highCm());
    return node;
  }

  private static ObjectNode write(Estimate.TurnChange change) {
    ObjectNode node = JsonText.object();
    Put.number(node, "firstThirdDeg", change.firstThirdDeg());
    Put.number(node, "lastThirdDeg", change.lastThirdDeg());
    Put.number(node, "lowDeg", change.lowDeg());
    Put.number(node, "highDeg", change.highDeg());
    return node;
  }

  private static ObjectNode write(Curve curve) {
    ObjectNode node = JsonText.object();
    node.set("timesS", JsonText.numbers(curve.timesS(), TIME_DECIMALS));
    node.set("values", JsonText.numbers(curve.values(), VALUE_DECIMALS));
    return node;
  }
}
