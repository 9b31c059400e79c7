package palmturn.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import palmturn.advise.Training;
import palmturn.measure.CeilingScore;
import palmturn.measure.HandMeasure;
import palmturn.measure.HandScore;
import palmturn.measure.LimitVerdict;
import palmturn.measure.Measure;
import palmturn.measure.Measures;
import palmturn.measure.RetestScore;
import palmturn.measure.SessionScore;
import palmturn.measure.SideScore;
import palmturn.measure.TrialScore;
import palmturn.numbers.Range;

/**
 * The figures of a session as a script reads them: every key is there, null where a figure can't be
 * told.
 */
public final class ScoreJson {
  private static final Set<Measure> COUNTS =
      Set.of(Measures.SLAPS, Measures.DOUBLES, Measures.PAUSES);

  private ScoreJson() {}

  /** Returns the text that {@code score --json} prints of one session. */
  public static String write(SessionScore score, Training training) {
    return JsonText.page(put(JsonText.object(), score, training));
  }

  /** Returns the line that {@code score --json} prints of one of several sessions. */
  public static String line(String session, SessionScore score, Training training) {
    return JsonText.line(put(JsonText.object().put("session", session), score, training));
  }

  /** Returns the line of a session that has no figures. */
  public static String failed(String session, String error) {
    return JsonText.line(JsonText.object().put("session", session).put("error", error));
  }

  private static ObjectNode put(ObjectNode root, SessionScore score, Training training) {
    root.put("athlete", score.athlete());
    root.put("date", score.date().toString());
    ArrayNode trials = root.putArray("trials");
    score.trials().forEach(trial -> trials.add(write(trial)));
    ArrayNode hands = root.putArray("hands");
    score.hands().forEach(hand -> hands.add(write(hand)));
    ArrayNode sides = root.putArray("sides");
    score.sides().forEach(side -> sides.add(write(side)));
    ArrayNode retest = root.putArray("retest");
    score.retest().forEach(change -> retest.add(write(change)));
    ArrayNode ceiling = root.putArray("ceiling");
    score.ceilings().forEach(hand -> ceiling.add(write(hand)));
    TrainJson.put(root, training);
    return root;
  }

  private static ObjectNode write(TrialScore score) {
    ObjectNode node = JsonText.object();
    node.put("hand", score.trial().hand().code());
    node.put("block", score.trial().block());
    node.put("repeat", score.trial().repeat());
    node.put("reading", score.reading());
    node.put("independent", score.independent());
    Put.figure(node, "paceSlapsPerS", score.paceSlapsPerS());
    node.put("timedBy", score.rhythm().timedBy() == null ? null : score.rhythm().timedBy().code());
    for (Measure measure : Measures.ALL) {
      put(node, measure, measure.value(score));
    }
    node.put(
        "tenCycleExtrapolated",
        score.speed().tenCycleS() == null ? null : score.speed().tenCycleExtrapolated());
    range(node, "cleanShareLowPct", "cleanShareHighPct", score.accuracy().cleanShareRangePct());
    range(node, "steadyCvLowPct", "steadyCvHighPct", score.rhythm().steadyCvRangePct());
    range(
        node,
        "slowDownLowPctPerS",
        "slowDownHighPctPerS",
        score.endurance().slowDownRangePctPerS());
    node.put("rhythmResolved", score.rhythm().resolved());
    ObjectNode faults = node.putObject("faults");
    score
        .accuracy()
        .faults()
        .forEach(
            (kind, count) -> {
              ObjectNode fault = faults.putObject(kind.code());
              fault.put("palm", count.palm());
              fault.put("back", count.back());
              fault.put("unknown", count.unknown());
              Put.figure(fault, "per10", count.per10());
            });
    ObjectNode limits = node.putObject("limits");
    score.verdicts().forEach((quality, verdict) -> limits.put(quality.code(), code(verdict)));
    node.put("timeRefusedWhy", score.timeRefusedWhy());
    return node;
  }

  /** Puts a measure; a count as the whole number that it is. */
  private static void put(ObjectNode node, Measure measure, @Nullable Double value) {
    if (value != null && COUNTS.contains(measure)) {
      node.put(measure.id(), Math.toIntExact(Math.round(value)));
    } else {
      Put.figure(node, measure.id(), value);
    }
  }

  private static String code(LimitVerdict verdict) {
    return verdict.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static ObjectNode write(HandScore score) {
    ObjectNode node = JsonText.object();
    node.put("hand", score.hand().code());
    node.put("block", score.block());
    node.put("quality", score.quality().code());
    node.put("measure", score.measure().id());
    node.put("n", score.n());
    Put.figure(node, "mean", score.mean());
    Put.figure(node, "sd", score.sd());
    Put.figure(node, "best", score.best());
    Put.figure(node, "typicalError", score.typicalError());
    range(node, "low", "high", score.mean95());
    node.put("unit", score.measure().unit());
    readings(node, score.readings());
    return node;
  }

  private static ObjectNode write(SideScore score) {
    ObjectNode node = JsonText.object();
    node.put("block", score.block());
    node.put("quality", score.quality().code());
    node.put("measure", score.measure().id());
    Put.figure(node, "right", score.right());
    Put.figure(node, "left", score.left());
    Put.figure(node, "difference", score.difference());
    Put.figure(node, "differencePct", score.differencePct());
    range(node, "low", "high", score.difference95());
    Put.figure(node, "margin", score.margin());
    node.put("unit", score.measure().unit());
    node.put("verdict", score.verdict().code());
    node.put("furtherTrials", score.furtherTrials());
    readings(node, score.readings());
    return node;
  }

  private static ObjectNode write(RetestScore score) {
    ObjectNode node = JsonText.object();
    node.put("hand", score.hand().code());
    node.put("quality", score.quality().code());
    node.put("measure", score.measure().id());
    node.put("block", score.block());
    Put.figure(node, "before", score.before());
    Put.figure(node, "after", score.after());
    Put.figure(node, "difference", score.difference());
    range(node, "low", "high", score.difference95());
    Put.figure(node, "margin", score.margin());
    node.put("unit", score.measure().unit());
    node.put("verdict", score.verdict().code());
    node.put("furtherTrials", score.furtherTrials());
    node.put("drill", score.drill());
    node.put("control", score.control().code());
    Put.figure(node, "netDifference", score.netDifference());
    range(node, "netLow", "netHigh", score.net95());
    node.put("netVerdict", score.netVerdict().code());
    readings(node, score.readings());
    return node;
  }

  private static void readings(ObjectNode node, List<String> readings) {
    ArrayNode names = node.putArray("readings");
    readings.forEach(names::add);
  }

  private static ObjectNode write(CeilingScore score) {
    ObjectNode node = JsonText.object();
    node.put("hand", score.hand().code());
    node.put("outcome", score.outcome().code());
    HandMeasure measure = HandMeasure.CLEAN_CEILING;
    Put.figure(node, measure.id(), measure.value(score));
    Put.figure(node, "low", score.lowSlapsPerS());
    Put.figure(node, "high", score.highSlapsPerS());
    range(node, "slowestSlapsPerS", "fastestSlapsPerS", score.filmedSlapsPerS());
    node.put("trials", score.trials());
    node.put("paced", score.paced());
    node.put("attempts", score.attempts());
    node.put("faulty", score.faulty());
    node.put("unit", measure.unit());
    readings(node, score.readings());
    return node;
  }

  private static void range(ObjectNode node, String low, String high, @Nullable Range range) {
    Put.figure(node, low, range == null ? null : range.low());
    Put.figure(node, high, range == null ? null : range.high());
  }
}
