package palmturn.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import palmturn.settle.Agreement;
import palmturn.settle.LabelAgreement;
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
    ObjectNode root = JsonText.object().put("a", first).put("b", second);
    root.set("trials", RecordForm.all(over.trials(), AgreementJson::trial));
    ObjectNode overall = root.putObject("overall");
    overall.put(
        "trials", (int) over.trials().stream().filter(e -> e.agreement().independent()).count());
    figures(overall, over.pooled());
    overall.set("fByTolerance", RecordForm.all(over.curve(), "toleranceS f"));
    overall.set(
        "blandAltman",
        over.limits() == null
            ? null
            : RecordForm.of(
                over,
                "measure n=limits.n bias=limits.bias sd=limits.sd low=limits.limits.low"
                    + " high=limits.limits.high biasLow=limits.bias95.low"
                    + " biasHigh=limits.bias95.high lowLow=limits.low95.low"
                    + " lowHigh=limits.low95.high highLow=limits.high95.low"
                    + " highHigh=limits.high95.high"));
    overall.set(
        "icc21",
        over.icc21() == null
            ? null
            : RecordForm.of(
                over, "measure value=icc21.value low=icc21.range95.low high=icc21.range95.high"));
    RecordForm.put(overall, over.reliability(), "typicalError smallestDetectableChange");
    ArrayNode out = root.putArray("leftOut");
    leftOut.forEach((trial, why) -> out.addObject().put("trial", trial).put("why", why));
    return JsonText.page(root);
  }

  private static ObjectNode trial(TrialAgreement trial) {
    ObjectNode node =
        RecordForm.of(
            trial,
            "session trial=trial.name independent=agreement.independent"
                + " toleranceS=comparison.tolerance.seconds"
                + " tooFewFrames=comparison.tolerance.tooFewFrames pairs=agreement.counts.pairs"
                + " onlyA=agreement.counts.onlyA onlyB=agreement.counts.onlyB"
                + " offsetRemovedS=comparison.removedS");
    Agreement agreement = trial.agreement();
    RecordForm.put(
        node,
        agreement.offset(),
        "offsetMeanS=bias offsetSdS=sd offsetLowS=limits.low offsetHighS=limits.high");
    figures(node, agreement.independent() ? agreement : null);
    return node;
  }

  /** Puts what is given for independent readings alone; null for others. */
  private static void figures(ObjectNode node, @Nullable Agreement agreement) {
    RecordForm.put(node, agreement, "precision=counts.precision recall=counts.recall f=counts.f");
    labels(node, "Side", agreement == null ? null : agreement.side());
    labels(node, "Zone", agreement == null ? null : agreement.zone());
    labels(node, "Double", agreement == null ? null : agreement.doubles());
    ObjectNode spans = node.putObject("spans");
    if (agreement != null) {
      for (SpanAgreement each : agreement.spans()) {
        spans.set(each.kind().code(), RecordForm.of(each, "same onlyA onlyB iou"));
      }
    }
  }

  private static void labels(ObjectNode node, String what, @Nullable LabelAgreement labels) {
    RecordForm.put(
        node,
        labels,
        ("kappa%1$s=kappa.kappa kappa%1$sSe=kappa.se kappa%1$sLow=kappa.range95.low"
                + " kappa%1$sHigh=kappa.range95.high same%1$sPct=agreementPct")
            .formatted(what));
  }
}
