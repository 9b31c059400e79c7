package palmturn.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
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
            keys.objectOr("rotation", EstimateJson::rotation, Estimate.Rotation.UNKNOWN)),
        new Estimate.Traces(
            keys.objectOr("turn", EstimateJson::curve, Curve.EMPTY),
            keys.objectOr("sound", EstimateJson::curve, Curve.EMPTY),
            keys.numberOrNull("soundOffsetS", -60, 60),
            keys.objectOrNull("handRegion", EstimateJson::region)),
        new Estimate.Limbs(
            keys.objectOrNull("elbow", EstimateJson::elbow),
            keys.objectOrNull("shape", EstimateJson::shape)),
        keys.texts("warnings", text -> text),
        keys.rest());
  }

  private static Set<Estimate.Source> sources(Keys keys) throws JsonException {
    return Set.copyOf(keys.texts("sources", code -> Coded.parse(Estimate.Source.class, code)));
  }

  private static EstimatedSlap slap(Keys keys) throws JsonException {
    return new EstimatedSlap(
        new EstimatedSlap.Timing(
            keys.number("timeS", -MOST_S, MOST_S),
            keys.coded("timedBy", TimedBy.class),
            keys.number("resolutionS", 0, 60),
            keys.numberOrNull("pictureS", -MOST_S, MOST_S),
            keys.numberOrNull("soundS", -MOST_S, MOST_S)),
        new EstimatedSlap.EstimatedSide(
            keys.integer("pose", -1, 1),
            keys.coded("side", Side.class),
            keys.number("sideConfidence", 0, 1)),
        new EstimatedSlap.EstimatedZone(
            keys.coded("zone", Zone.class), keys.number("zoneConfidence", 0, 1)),
        keys.flag("double", false),
        sources(keys),
        keys.number("confidence", 0, 1),
        keys.textOrEmpty("why"));
  }

  private static Estimate.Rotation rotation(Keys keys) throws JsonException {
    return new Estimate.Rotation(
        keys.numberOrNull("frequencyHz", 0, MOST),
        keys.objectOr("series", EstimateJson::curve, Curve.EMPTY),
        keys.numberOrNull("spectrumHz", 0, MOST),
        keys.numberOrNull("autocorrelationHz", 0, MOST));
  }

  private static Curve curve(Keys keys) throws JsonException {
    return new Curve(keys.numbers("timesS", -MOST_S, MOST_S), keys.numbers("values", -MOST, MOST));
  }

  private static ElbowPath elbow(Keys keys) throws JsonException {
    return new ElbowPath(
        keys.numberOrNull("maxCm", 0, MOST),
        keys.numberOrNull("maxForearms", 0, MOST),
        new ElbowPath.PictureScale(
            keys.text("scale"),
            keys.above0OrNull("cmPerPixel", MOST),
            keys.above0OrNull("forearmPx", MOST_PX)),
        new Point(
            keys.number("startXPx", -MOST_PX, MOST_PX), keys.number("startYPx", -MOST_PX, MOST_PX)),
        samples(keys),
        keys.list("gaps", EstimateJson::stretch),
        keys.list("unseen", EstimateJson::gapEstimate));
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
    return new ElbowPath.GapEstimate(
        keys.number("timeS", -MOST_S, MOST_S),
        keys.number("rightPx", -MOST_PX, MOST_PX),
        keys.number("downPx", -MOST_PX, MOST_PX),
        keys.number("sdPx", 0, MOST_PX));
  }

  private static Estimate.Shape shape(Keys keys) throws JsonException {
    return new Estimate.Shape(
        keys.objectOr("wristBendDeg", EstimateJson::curve, Curve.EMPTY),
        keys.objectOrNull("turnRange", EstimateJson::turnRange),
        keys.objectOrNull("targetElbow", EstimateJson::elbow),
        keys.objectOrNull("elbowInSpace", EstimateJson::inSpace));
  }

  private static Estimate.ElbowInSpace inSpace(Keys keys) throws JsonException {
    return new Estimate.ElbowInSpace(
        keys.number("perOut", 1, MOST),
        keys.flag("outIsRight", false),
        keys.number("maxCm", 0, MOST),
        keys.number("lowCm", 0, MOST),
        keys.number("highCm", 0, MOST));
  }

  private static Estimate.TurnRange turnRange(Keys keys) throws JsonException {
    return new Estimate.TurnRange(
        keys.objectOr("deg", EstimateJson::curve, Curve.EMPTY),
        keys.number("usualDeg", 0, FULL_CIRCLE_DEG),
        keys.objectOrNull("change", EstimateJson::turnChange));
  }

  private static Estimate.TurnChange turnChange(Keys keys) throws JsonException {
    return new Estimate.TurnChange(
        keys.number("firstThirdDeg", 0, FULL_CIRCLE_DEG),
        keys.number("lastThirdDeg", 0, FULL_CIRCLE_DEG),
        keys.number("lowDeg", -MOST, MOST),
        keys.number("highDeg", -MOST, MOST));
  }

  static Estimate.Region region(Keys keys) throws JsonException {
    return new Estimate.Region(
        keys.number("x", -MOST_PX, MOST_PX),
        keys.number("y", -MOST_PX, MOST_PX),
        keys.number("width", 0, MOST_PX),
        keys.number("height", 0, MOST_PX));
  }

  private static Estimate.EstimatedSpan span(Keys keys) throws JsonException {
    return new Estimate.EstimatedSpan(
        keys.coded("kind", Span.SpanKind.class),
        keys.number("startS", -MOST_S, MOST_S),
        keys.number("endS", -MOST_S, MOST_S),
        keys.number("confidence", 0, 1));
  }

  private static Estimate.Stretch stretch(Keys keys) throws JsonException {
    return new Estimate.Stretch(
        keys.number("startS", -MOST_S, MOST_S), keys.number("endS", -MOST_S, MOST_S));
  }

  static ObjectNode write(Estimate estimate) {
    ObjectNode node = JsonText.object();
    node.put("clipSha256", estimate.clipSha256());
    node.set("sources", sources(estimate.sources()));
    RecordForm.put(node, estimate.basis(), "fps variableRate captureFps?");
    RecordForm.put(node, estimate.findings(), "trialFound");
    RecordForm.put(node, estimate.figures(), "rateSlapsPerS? intervalCvPct? timingFloorPct?");
    RecordForm.put(node, estimate.traces(), "soundOffsetS?");
    node.set(
        "slaps",
        RecordForm.all(
            estimate.slaps(),
            slap -> RecordForm.put(begin(slap), slap, "pictureS? soundS? why=doubt*")));
    node.set("spans", spans(estimate.spans()));
    node.set("bursts", stretches(estimate.stretches()));
    RecordForm.put(node, estimate, "warnings");
    putIfAny(node, "handRegion", RecordForm.orNull(estimate.handRegion(), EstimateJson::write));
    putIfAny(node, "elbow", RecordForm.orNull(estimate.elbow(), EstimateJson::write));
    putIfAny(node, "shape", RecordForm.orNull(estimate.shape(), EstimateJson::write));
    Estimate.Rotation turns = estimate.figures().rotation();
    ObjectNode rotation = RecordForm.of(turns, "frequencyHz? spectrumHz? autocorrelationHz?");
    node.set("rotation", rotation.set("series", write(turns.series())));
    node.set("turn", write(estimate.traces().turn()));
    node.set("sound", write(estimate.traces().sound()));
    return RecordForm.extra(node, estimate.extra());
  }

  private static void putIfAny(ObjectNode node, String key, @Nullable ObjectNode part) {
    if (part != null) {
      node.set(key, part);
    }
  }

  static ArrayNode sources(Set<Estimate.Source> sources) {
    return RecordForm.all(
        sources.stream().sorted().toList(), source -> JsonText.tree(source.code()));
  }

  /** Returns the keys of a contact that are always there, both in a file and printed. */
  static ObjectNode begin(EstimatedSlap slap) {
    ObjectNode node =
        RecordForm.of(slap, "timeS side sideConfidence zone zoneConfidence double=isDouble");
    node.set("sources", sources(slap.sources()));
    return RecordForm.put(node, slap, "confidence timedBy resolutionS pose");
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
    ObjectNode node =
        RecordForm.of(
            path,
            "maxCm? maxForearms? scale=pictureScale.source cmPerPixel? forearmPx?"
                + " startXPx=start.x startYPx=start.y");
    node.set("gaps", stretches(path.gaps()));
    if (!path.gapEstimates().isEmpty()) {
      node.set(
          "unseen",
          RecordForm.all(path.gapEstimates(), each -> rounded(each, "timeS rightPx downPx sdPx")));
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

  /** Returns a record's form with its numbers rounded as a curve's are. */
  static ObjectNode rounded(Object form, String keys) {
    ObjectNode node = RecordForm.of(form, keys);
    node.fields()
        .forEachRemaining(
            field -> {
              int decimals = field.getKey().equals("timeS") ? TIME_DECIMALS : VALUE_DECIMALS;
              if (field.getValue().isDouble()) {
                double rounded = JsonText.rounded(field.getValue().doubleValue(), decimals);
                field.setValue(node.numberNode(rounded));
              }
            });
    return node;
  }

  private static ObjectNode write(Estimate.Shape shape) {
    ObjectNode node = JsonText.object();
    node.set("wristBendDeg", write(shape.wristBendDeg()));
    putIfAny(node, "turnRange", RecordForm.orNull(shape.turnRange(), EstimateJson::write));
    putIfAny(node, "targetElbow", RecordForm.orNull(shape.targetElbow(), EstimateJson::write));
    putIfAny(node, "elbowInSpace", RecordForm.orNull(shape.elbowInSpace(), EstimateJson::write));
    return node;
  }

  private static ObjectNode write(Estimate.TurnRange turns) {
    ObjectNode node = RecordForm.of(turns, "usualDeg=medianDeg");
    if (turns.change() != null) {
      node.set(
          "change", RecordForm.of(turns.change(), "firstThirdDeg lastThirdDeg lowDeg highDeg"));
    }
    return node.set("deg", write(turns.deg()));
  }

  static ObjectNode write(Estimate.ElbowInSpace space) {
    return RecordForm.of(
        space, "perOut=outwardFactor outIsRight=outwardIsRight maxCm lowCm highCm");
  }

  private static ObjectNode write(Curve curve) {
    ObjectNode node = JsonText.object();
    node.set("timesS", JsonText.numbers(curve.timesS(), TIME_DECIMALS));
    return node.set("values", JsonText.numbers(curve.values(), VALUE_DECIMALS));
  }
}
