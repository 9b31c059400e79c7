package palmturn.wording;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import palmturn.measure.Decimals;
import palmturn.numbers.BlandAltman;
import palmturn.numbers.Kappa;
import palmturn.numbers.Reliability;
import palmturn.settle.Agreement;
import palmturn.settle.LabelAgreement;
import palmturn.settle.MatchCounts;
import palmturn.settle.PooledAgreement;

/** Sentences on the agreement of two readers. */
public final class AgreementSentences {
  private AgreementSentences() {}

  /**
   * Returns a sentence for each thing that can be told of one trial, or of several together.
   *
   * @param a name of the first
   * @param b name of the second
   */
  public static List<String> of(Agreement agreement, String a, String b) {
    List<String> sentences = new ArrayList<>();
    MatchCounts counts = agreement.counts();
    Double f = agreement.independent() ? counts.f() : null;
    sentences.add(
        String.format(
            Locale.ROOT,
            "%d marks are in both, %d only with %s, %d only with %s%s.",
            counts.pairs(),
            counts.onlyA(),
            a,
            counts.onlyB(),
            b,
            f == null
                ? ""
                : ": where one has a mark the other has it too in %s %% of cases (F %s)"
                    .formatted(Decimals.fixed(100 * f, 1), Decimals.fixed(f, 3))));
    BlandAltman offset = agreement.offset();
    if (offset != null) {
      sentences.add(
          "%s is %s ms %s than %s on average; 95 %% of its marks lie between %s and %s ms after."
              .formatted(
                  b,
                  Decimals.fixed(Math.abs(1000 * offset.bias()), 1),
                  offset.bias() < 0 ? "earlier" : "later",
                  a,
                  Decimals.fixed(1000 * offset.limits().low(), 1),
                  Decimals.fixed(1000 * offset.limits().high(), 1)));
    }
    if (!agreement.independent()) {
      sentences.add(
          "The readings are not independent, since one started from the other or from the estimate,"
              + " or had it in sight: how well they agree would say nothing.");
      return sentences;
    }
    labels(sentences, "side", agreement.side());
    labels(sentences, "zone", agreement.zone());
    return sentences;
  }

  private static void labels(List<String> sentences, String what, LabelAgreement labels) {
    Double same = labels.agreementPct();
    Kappa kappa = labels.kappa();
    if (same == null) {
      return;
    }
    sentences.add(
        String.format(
            Locale.ROOT,
            "The %s is the same for %s %% of %d slaps that both name%s.",
            what,
            Decimals.fixed(same, 1),
            labels.n(),
            kappa == null
                ? "; beyond chance can’t be told, since one used a single word for all"
                : ": kappa %s (%s), where 1 is full agreement and 0 what chance gives"
                    .formatted(
                        Decimals.fixed(kappa.kappa(), 2), Figures.range(kappa.range95(), 2))));
  }

  /**
   * Returns what can be told of a figure over trials.
   *
   * @param figure its name and unit, as in "rate, slaps/s"
   */
  public static List<String> figure(PooledAgreement over, String figure, String a, String b) {
    BlandAltman limits = over.limits();
    Reliability reliability = over.reliability();
    if (limits == null || reliability == null) {
      return List.of(
          "How well their figures agree over trials can’t be told under two trials of independent"
              + " readings.");
    }
    List<String> sentences = new ArrayList<>();
    sentences.add(
        String.format(
                Locale.ROOT,
                "%s: %s minus %s is %s on average (95 %%: %s) over %d trials; on a single trial it",
                figure,
                b,
                a,
                Decimals.fixed(limits.bias(), 3),
                Figures.range(limits.bias95(), 3),
                over.figures())
            + " lies between %s (%s) and %s (%s) in 95 %% of cases."
                .formatted(
                    Decimals.fixed(limits.limits().low(), 3),
                    Figures.range(limits.low95(), 3),
                    Decimals.fixed(limits.limits().high(), 3),
                    Figures.range(limits.high95(), 3)));
    Reliability.Icc icc = over.icc21();
    if (icc != null) {
      sentences.add(
          "ICC(2,1) %s (95 %%: %s): the share of all variation between trials and readers that is"
                  .formatted(Decimals.fixed(icc.value(), 3), Figures.range(icc.range95(), 3))
              + " the trials’ own.");
    }
    sentences.add(
        "Typical error of one reading, a constant between the two left aside, %s; a change under %s"
                .formatted(
                    Decimals.fixed(reliability.typicalError(), 3),
                    Decimals.fixed(reliability.smallestDetectableChange(), 3))
            + " may be the reader’s alone.");
    return sentences;
  }
}
