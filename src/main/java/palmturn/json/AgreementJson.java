package palmturn.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.BlandAltman;
import palmturn.numbers.Kappa;
import palmturn.numbers.Reliability;
import palmturn.settle.Agreement;
import palmturn.settle.LabelAgreement;
import palmturn.settle.MatchCounts;
import palmturn.settle.PooledAgreement;
import palmturn.settle.SpanAgreement;
import palmturn.settle.TrialAgreement;

/**
 * The agreement of two readers as a script reads it. Of a trial whose readings are not independent
 * only the counts and the times are given.
 */
public final class AgreementJson {
  private AgreementJson() {}

  /**
   * Returns the text that {@code agree --json} prints.
   *
   * @param leftOut why, by session and trial
   */
  public static String write(
      String first, String second, PooledAgreement over, Map<String, String> leftOut) {
    ObjectNode root = JsonText.object();
    root.put("a", first);
    root.put("b", second);
    ArrayNode trials = root.putArray("trials");
    over.trials().forEach(each -> trials.add(trial(each)));
    ObjectNode overall = root.putObject("overall");
    Agreement together = over.pooled();
    overall.put(
        "trials", (int) over.trials().stream().filter(e -> e.agreement().independent()).count());
    figures(overall, together);
    overall.set("fByTolerance", RecordForm.all(over.curve(), "toleranceS f"));
    overall.set("blandAltman", limits(over.measure(), over.limits()));
    overall.set("icc21", icc(over.measure(), over.icc21()));
    Reliability reliability = over.reliability();
    Put.figure(overall, "typicalError", reliability == null ? null : reliability.typicalError());
    Put.figure(
        overall,
        "smallestDetectableChange",
        reliability == null ? null : reliability.smallestDetectableChange());
    ArrayNode out = root.putArray("leftOut");
    leftOut.forEach((trial, why) -> out.addObject().put("trial", trial).put("why", why));
    return JsonText.page(root);
  }

  private static ObjectNode trial(TrialAgreement trial) {
    Agreement agreement = trial.agreement();
    ObjectNode node = JsonText.object();
    node.put("session", trial.session());
    node.put("trial", trial.trial().name());
    node.put("independent", agreement.independent());
    Put.figure(node, "toleranceS", trial.comparison().tolerance().seconds());
    node.put("tooFewFrames", trial.comparison().tolerance().tooFewFrames());
    RecordForm.put(node, agreement.counts(), "pairs onlyA onlyB");
    Put.figure(node, "offsetRemovedS", trial.comparison().removedS());
    offset(node, agreement);
    figures(node, agreement.independent() ? agreement : null);
    return node;
  }

  private static void offset(ObjectNode node, @Nullable Agreement agreement) {
    BlandAltman offset = agreement == null ? null : agreement.offset();
    Put.figure(node, "offsetMeanS", offset == null ? null : offset.bias());
    Put.figure(node, "offsetSdS", offset == null ? null : offset.sd());
    Put.range(node, "offsetLowS", "offsetHighS", offset == null ? null : offset.limits());
  }

  /** Puts what is given for independent readings alone; null for others. */
  private static void figures(ObjectNode node, @Nullable Agreement agreement) {
    MatchCounts counts = agreement == null ? null : agreement.counts();
    Put.figure(node, "precision", counts == null ? null : counts.precision());
    Put.figure(node, "recall", counts == null ? null : counts.recall());
    Put.figure(node, "f", counts == null ? null : counts.f());
    labels(node, "Side", agreement == null ? null : agreement.side());
    labels(node, "Zone", agreement == null ? null : agreement.zone());
    labels(node, "Double", agreement == null ? null : agreement.doubles());
    ObjectNode spans = node.putObject("spans");
    if (agreement != null) {
      agreement.spans().forEach(each -> spans.set(each.kind().code(), span(each)));
    }
  }

  private static void labels(ObjectNode node, String what, @Nullable LabelAgreement labels) {
    Kappa kappa = labels == null ? null : labels.kappa();
    Put.figure(node, "kappa" + what, kappa == null ? null : kappa.kappa());
    Put.figure(node, "kappa" + what + "Se", kappa == null ? null : kappa.se());
    Put.range(
        node,
        "kappa" + what + "Low",
        "kappa" + what + "High",
        kappa == null ? null : kappa.range95());
    Put.figure(node, "same" + what + "Pct", labels == null ? null : labels.agreementPct());
  }

  private static ObjectNode span(SpanAgreement spans) {
    ObjectNode node = RecordForm.of(spans, "same onlyA onlyB");
    Put.figure(node, "iou", spans.iou());
    return node;
  }

  private static @Nullable ObjectNode limits(String measure, @Nullable BlandAltman limits) {
    if (limits == null) {
      return null;
    }
    ObjectNode node = JsonText.object();
    node.put("measure", measure);
    RecordForm.put(node, limits, "n bias sd");
    Put.range(node, "low", "high", limits.limits());
    Put.range(node, "biasLow", "biasHigh", limits.bias95());
    Put.range(node, "lowLow", "lowHigh", limits.low95());
    Put.range(node, "highLow", "highHigh", limits.high95());
    return node;
  }

  private static @Nullable ObjectNode icc(String measure, Reliability.@Nullable Icc icc) {
    if (icc == null) {
      return null;
    }
    ObjectNode node = JsonText.object();
    node.put("measure", measure);
    Put.figure(node, "value", icc.value());
    Put.range(node, "low", "high", icc.range95());
    return node;
  }
}
