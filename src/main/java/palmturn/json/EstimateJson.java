package palmturn.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Coded;
import palmturn.trial.Curve;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Point;
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
        new Estimate.Basis(
            keys.parsed("clipSha256", TrialJson::sha256),
            sources(keys),
            keys.number("fps", 0, MOST),
            keys.flag("variableRate", false),
            keys.above0OrNull("captureFps", 100_000)),
        new Estimate.Findings(
            keys.flag("trialFound", false),
            keys.list("slaps", EstimateJson::slap),
            keys.list("spans", EstimateJson::span),
            keys.list("bursts", EstimateJson::stretch)),
        new Estimate.Figures(
            keys.numberOrNull("rateSlapsPerS", 0, MOST),
            keys.numberOrNull("intervalCvPct", 0, MOST),
            keys.numberOrNull("timingFloorPct", 0, MOST),
            or(keys.objectOrNull("rotation", EstimateJson::rotation), Estimate.Rotation.UNKNOWN)),
        new Estimate.Traces(
            or(keys.objectOrNull("turn", EstimateJson::curve), Curve.EMPTY),
            or(keys.objectOrNull("sound", EstimateJson::curve), Curve.EMPTY),
            keys.numberOrNull("soundOffsetS", -60, 60),
            keys.objectOrNull("handRegion", EstimateJson::region)),
        new Estimate.Limbs(
            keys.objectOrNull("elbow", EstimateJson::elbow),
            keys.objectOrNull("shape", EstimateJson::shape)),
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
            new EstimatedSlap.Timing(
                keys.number("timeS", -MOST_S, MOST_S),
                keys.parsed("timedBy", code -> Coded.parse(TimedBy.class, code)),
                keys.number("resolutionS", 0, 60),
                keys.numberOrNull("pictureS", -MOST_S, MOST_S),
                keys.numberOrNull("soundS", -MOST_S, MOST_S)),
            new EstimatedSlap.EstimatedSide(
                keys.integer("pose", -1, 1),
                keys.parsed("side", code -> Coded.parse(Side.class, code)),
                keys.number("sideConfidence", 0, 1)),
            new EstimatedSlap.EstimatedZone(
                keys.parsed("zone", code -> Coded.parse(Zone.class, code)),
                keys.number("zoneConfidence", 0, 1)),
            keys.flag("double", false),
            sources(keys),
            keys.number("confidence", 0, 1),
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
            new ElbowPath.PictureScale(
                keys.text("scale"),
                keys.above0OrNull("cmPerPixel", MOST),
                keys.above0OrNull("forearmPx", MOST_PX)),
            new Point(
                keys.number("startXPx", -MOST_PX, MOST_PX),
                keys.number("startYPx", -MOST_PX, MOST_PX)),
            samples(keys),
            keys.list("gaps", EstimateJson::stretch),
            keys.list("unseen", EstimateJson::gapEstimate));
    keys.refuseRest();
    return path;
  }

  private static List<ElbowPath.Sample> samples(Keys keys) throws JsonException {
    List<Double> timesS = keys.numbers("timesS", -MOST_S, MOST_S);
    List<Double> right = keys.numbers("rightPx", -MOST_PX, MOST_PX);
    List<Double> down = keys.numbers("downPx", -MOST_PX, MOST_PX);
    List<Double> distance = keys.numbers("distancePx", 0, MOST_PX);
    int n = timesS.size();
    if (right.size() != n || down.size() != n || distance.size() != n) {
      throw keys.fault("timesS, rightPx, downPx and distancePx must be equally long");
    }
    List<ElbowPath.Sample> samples = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      samples.add(new ElbowPath.Sample(timesS.get(i), right.get(i), down.get(i), distance.get(i)));
    }
    return samples;
  }

  private static ElbowPath.GapEstimate gapEstimate(Keys keys) throws JsonException {
    ElbowPath.GapEstimate estimate =
        new ElbowPath.GapEstimate(
            keys.number("timeS", -MOST_S, MOST_S),
            keys.number("rightPx", -MOST_PX, MOST_PX),
            keys.number("downPx", -MOST_PX, MOST_PX),
            keys.number("sdPx", 0, MOST_PX));
    keys.refuseRest();
    return estimate;
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

  private static Estimate.Stretch stretch(Keys keys) throws JsonException {
    Estimate.Stretch stretch =
        new Estimate.Stretch(
            keys.number("startS", -MOST_S, MOST_S), keys.number("endS", -MOST_S, MOST_S));
    keys.refuseRest();
    return stretch;
  }

  static ObjectNode write(Estimate estimate) {
    ObjectNode node = JsonText.object();
    node.put("clipSha256", estimate.clipSha256());
    node.set("sources", sources(estimate.sources()));
    Put.number(node, "fps", estimate.basis().fps());
    node.put("variableRate", estimate.basis().variableRate());
    Put.number(node, "captureFps", estimate.basis().captureFps());
    node.put("trialFound", estimate.trialFound());
    Put.number(node, "rateSlapsPerS", estimate.figures().rateSlapsPerS());
    Put.number(node, "intervalCvPct", estimate.figures().intervalCvPct());
    Put.number(node, "timingFloorPct", estimate.figures().timingFloorPct());
    Put.number(node, "soundOffsetS", estimate.soundOffsetS());
    ArrayNode slaps = node.putArray("slaps");
    estimate.slaps().forEach(slap -> slaps.add(write(slap)));
    node.set("spans", spans(estimate.spans()));
    node.set("bursts", stretches(estimate.stretches()));
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
    Estimate.Rotation turns = estimate.figures().rotation();
    ObjectNode rotation = node.putObject("rotation");
    Put.number(rotation, "frequencyHz", turns.frequencyHz());
    Put.number(rotation, "spectrumHz", turns.spectrumHz());
    Put.number(rotation, "autocorrelationHz", turns.autocorrelationHz());
    rotation.set("series", write(turns.series()));
    node.set("turn", write(estimate.traces().turn()));
    node.set("sound", write(estimate.traces().sound()));
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
    Put.words(node, "why", slap.doubt());
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
    return RecordForm.all(spans, "kind startS endS confidence");
  }

  static ArrayNode stretches(List<Estimate.Stretch> stretches) {
    return RecordForm.all(stretches, "startS endS");
  }

  static ObjectNode write(Estimate.Region region) {
    return RecordForm.of(region, "x y width height");
  }

  private static ObjectNode write(ElbowPath path) {
    ObjectNode node = JsonText.object();
    Put.number(node, "maxCm", path.maxCm());
    Put.number(node, "maxForearms", path.maxForearms());
    node.put("scale", path.pictureScale().source());
    Put.number(node, "cmPerPixel", path.cmPerPixel());
    Put.number(node, "forearmPx", path.forearmPx());
    Put.number(node, "startXPx", path.start().x());
    Put.number(node, "startYPx", path.start().y());
    node.set("gaps", stretches(path.gaps()));
    if (!path.gapEstimates().isEmpty()) {
      node.set("unseen", gapEstimates(path.gapEstimates()));
    }
    node.set("timesS", column(path, ElbowPath.Sample::timeS, TIME_DECIMALS));
    node.set("rightPx", column(path, ElbowPath.Sample::rightPx, VALUE_DECIMALS));
    node.set("downPx", column(path, ElbowPath.Sample::downPx, VALUE_DECIMALS));
    node.set("distancePx", column(path, ElbowPath.Sample::distancePx, VALUE_DECIMALS));
    return node;
  }

  private static ArrayNode column(
      ElbowPath path, Function<ElbowPath.Sample, Double> value, int decimals) {
    return JsonText.numbers(path.samples().stream().map(value).toList(), decimals);
  }

  private static ArrayNode gapEstimates(List<ElbowPath.GapEstimate> all) {
    ArrayNode array = JsonText.array();
    for (ElbowPath.GapEstimate each : all) {
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
      Put.number(range, "usualDeg", turns.medianDeg());
      if (turns.change() != null) {
        range.set(
            "change", RecordForm.of(turns.change(), "firstThirdDeg lastThirdDeg lowDeg highDeg"));
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
    return RecordForm.of(
        space, "perOut=outwardFactor outIsRight=outwardIsRight maxCm lowCm highCm");
  }

  private static ObjectNode write(Curve curve) {
    ObjectNode node = JsonText.object();
    node.set("timesS", JsonText.numbers(curve.timesS(), TIME_DECIMALS));
    node.set("values", JsonText.numbers(curve.values(), VALUE_DECIMALS));
    return node;
  }
}
