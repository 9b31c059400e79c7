package palmturn.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import palmturn.advise.Training;
import palmturn.measure.CeilingScore;
import palmturn.measure.HandMeasure;
import palmturn.measure.LimitVerdict;
import palmturn.measure.Measure;
import palmturn.measure.Measures;
import palmturn.measure.SessionScore;
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
    RecordForm.put(root, score, "athlete date");
    root.set("trials", RecordForm.all(score.trials(), ScoreJson::write));
    root.set(
        "hands",
        RecordForm.all(
            score.hands(),
            "hand block quality measure n mean sd best typicalError low=mean95.low high=mean95.high"
                + " unit=measure.unit readings"));
    root.set(
        "sides",
        RecordForm.all(
            score.sides(),
            "block quality measure right left difference differencePct low=difference95.low"
                + " high=difference95.high margin unit=measure.unit verdict furtherTrials"
                + " readings"));
    root.set(
        "retest",
        RecordForm.all(
            score.retest(),
            "hand quality measure block before after difference low=difference95.low"
                + " high=difference95.high margin unit=measure.unit verdict furtherTrials drill"
                + " control netDifference netLow=net95.low netHigh=net95.high netVerdict"
                + " readings"));
    root.set("ceiling", RecordForm.all(score.ceilings(), ScoreJson::write));
    TrainJson.put(root, training);
    return root;
  }

  private static ObjectNode write(TrialScore score) {
    ObjectNode node =
        RecordForm.of(
            score,
            "hand=trial.hand block=trial.block repeat=trial.repeat reading independent"
                + " paceSlapsPerS timedBy=rhythm.timedBy");
    for (Measure measure : Measures.ALL) {
      put(node, measure, measure.value(score));
    }
    node.put(
        "tenCycleExtrapolated",
        score.speed().tenCycleS() == null ? null : score.speed().tenCycleExtrapolated());
    RecordForm.put(
        node,
        score,
        "cleanShareLowPct=accuracy.cleanShareRangePct.low"
            + " cleanShareHighPct=accuracy.cleanShareRangePct.high"
            + " steadyCvLowPct=rhythm.steadyCvRangePct.low"
            + " steadyCvHighPct=rhythm.steadyCvRangePct.high"
            + " slowDownLowPctPerS=endurance.slowDownRangePctPerS.low"
            + " slowDownHighPctPerS=endurance.slowDownRangePctPerS.high"
            + " rhythmResolved=rhythm.resolved");
    ObjectNode faults = node.putObject("faults");
    score
        .accuracy()
        .faults()
        .forEach(
            (kind, count) ->
                faults.set(kind.code(), RecordForm.of(count, "palm back unknown per10")));
    ObjectNode limits = node.putObject("limits");
    score.verdicts().forEach((quality, verdict) -> limits.put(quality.code(), code(verdict)));
    return RecordForm.put(node, score, "timeRefusedWhy");
  }

  /** Puts a measure; a count as the whole number that it is. */
  private static void put(ObjectNode node, Measure measure, @Nullable Double value) {
    if (value != null && COUNTS.contains(measure)) {
      node.put(measure.id(), Math.toIntExact(Math.round(value)));
    } else {
      RecordForm.figure(node, measure.id(), value);
    }
  }

  private static String code(LimitVerdict verdict) {
    return verdict.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static ObjectNode write(CeilingScore score) {
    HandMeasure measure = HandMeasure.CLEAN_CEILING;
    ObjectNode node = RecordForm.of(score, "hand outcome");
    RecordForm.figure(node, measure.id(), measure.value(score));
    RecordForm.put(
        node,
        score,
        "low=lowSlapsPerS high=highSlapsPerS slowestSlapsPerS=filmedSlapsPerS.low"
            + " fastestSlapsPerS=filmedSlapsPerS.high trials paced attempts faulty");
    return RecordForm.put(node.put("unit", measure.unit()), score, "readings");
  }
}
