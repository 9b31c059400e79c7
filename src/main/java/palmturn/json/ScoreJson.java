package palmturn.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
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
    Put.range(node, "cleanShareLowPct", "cleanShareHighPct", score.accuracy().cleanShareRangePct());
    Put.range(node, "steadyCvLowPct", "steadyCvHighPct", score.rhythm().steadyCvRangePct());
    Put.range(
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
            (kind, count) ->
                faults.set(kind.code(), RecordForm.of(count, "palm back unknown per10")));
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
    ObjectNode node =
        RecordForm.of(score, "hand block quality measure n mean sd best typicalError");
    Put.range(node, "low", "high", score.mean95());
    node.put("unit", score.measure().unit());
    return RecordForm.put(node, score, "readings");
  }

  private static ObjectNode write(SideScore score) {
    ObjectNode node =
        RecordForm.of(score, "block quality measure right left difference differencePct");
    Put.range(node, "low", "high", score.difference95());
    Put.figure(node, "margin", score.margin());
    node.put("unit", score.measure().unit());
    return RecordForm.put(node, score, "verdict furtherTrials readings");
  }

  private static ObjectNode write(RetestScore score) {
    ObjectNode node = RecordForm.of(score, "hand quality measure block before after difference");
    Put.range(node, "low", "high", score.difference95());
    Put.figure(node, "margin", score.margin());
    node.put("unit", score.measure().unit());
    RecordForm.put(node, score, "verdict furtherTrials drill control netDifference");
    Put.range(node, "netLow", "netHigh", score.net95());
    return RecordForm.put(node, score, "netVerdict readings");
  }

  private static ObjectNode write(CeilingScore score) {
    HandMeasure measure = HandMeasure.CLEAN_CEILING;
    ObjectNode node = RecordForm.of(score, "hand outcome");
    Put.figure(node, measure.id(), measure.value(score));
    RecordForm.put(node, score, "low=lowSlapsPerS high=highSlapsPerS");
    Put.range(node, "slowestSlapsPerS", "fastestSlapsPerS", score.filmedSlapsPerS());
    RecordForm.put(node, score, "trials paced attempts faulty");
    node.put("unit", measure.unit());
    return RecordForm.put(node, score, "readings");
  }
}
