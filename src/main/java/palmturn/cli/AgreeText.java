package palmturn.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import palmturn.measure.Measures;
import palmturn.measure.Phrases;
import palmturn.numbers.BlandAltman;
import palmturn.numbers.Kappa;
import palmturn.settle.Agreement;
import palmturn.settle.PooledAgreement;
import palmturn.settle.TrialAgreement;
import palmturn.wording.AgreementSentences;
import palmturn.wording.Figures;
import palmturn.wording.Names;
import palmturn.work.settle.ReaderAgreement;

/** The agreement of two readers as plain text. */
final class AgreeText {
  private AgreeText() {}

  static String of(ReaderAgreement.AgreementResult result) {
    String a = result.request().first();
    String b = result.request().second();
    PooledAgreement over = result.over();
    List<String> lines = new ArrayList<>();
    lines.add("%s and %s".formatted(a, b));
    lines.add("");
    lines.addAll(TextTable.lines(rows(over.trials(), a, b)));
    if (over.trials().stream().anyMatch(each -> each.comparison().tolerance().tooFewFrames())) {
      lines.add("too few frames: one frame is over a quarter of the interval between slaps, so");
      lines.add("that marks match by chance.");
    }
    lines.add("");
    Agreement together = over.pooled();
    if (together == null) {
      lines.add("No trial has independent readings, so agreement is not given.");
      return String.join("\n", lines);
    }
    long independent = over.trials().stream().filter(e -> e.agreement().independent()).count();
    lines.add(
        independent == 1
            ? "On the one trial with independent readings:"
            : String.format(
                Locale.ROOT, "On the %d trials with independent readings together:", independent));
    lines.addAll(AgreementSentences.of(together, a, b));
    lines.addAll(
        AgreementSentences.figure(over, Phrases.capital(Names.measure(Measures.RATE)), a, b));
    lines.add("");
    lines.addAll(TextTable.lines(curve(over.curve())));
    return String.join("\n", lines);
  }

  private static List<List<String>> rows(List<TrialAgreement> trials, String a, String b) {
    List<List<String>> rows = new ArrayList<>();
    rows.add(
        List.of(
            "trial",
            "within ms",
            "both",
            "only " + a,
            "only " + b,
            b + " later, ms",
            "SD",
            "F",
            "side kappa (SE)",
            "zone kappa (SE)",
            ""));
    for (TrialAgreement trial : trials) {
      Agreement agreement = trial.agreement();
      BlandAltman offset = agreement.offset();
      boolean given = agreement.independent();
      rows.add(
          List.of(
              trial.session() + "/" + trial.trial().name(),
              Figures.ms(trial.comparison().tolerance().seconds()),
              String.valueOf(agreement.counts().pairs()),
              String.valueOf(agreement.counts().onlyA()),
              String.valueOf(agreement.counts().onlyB()),
              Figures.ms(offset == null ? null : offset.bias()),
              Figures.ms(offset == null ? null : offset.sd()),
              Figures.number(given ? agreement.counts().f() : null, 3),
              kappa(given ? agreement.side().kappa() : null),
              kappa(given ? agreement.zone().kappa() : null),
              remark(trial)));
    }
    return rows;
  }

  private static String remark(TrialAgreement trial) {
    String remark = trial.agreement().independent() ? "" : "not independent";
    if (!trial.comparison().tolerance().tooFewFrames()) {
      return remark;
    }
    return remark.isEmpty() ? "too few frames" : remark + ", too few frames";
  }

  private static String kappa(@Nullable Kappa kappa) {
    return kappa == null
        ? Figures.NONE
        : "%s (%s)".formatted(Figures.number(kappa.kappa(), 2), Figures.number(kappa.se(), 2));
  }

  private static List<List<String>> curve(List<Agreement.CurvePoint> curve) {
    List<String> within = new ArrayList<>(List.of("within ms"));
    List<String> f = new ArrayList<>(List.of("F"));
    for (Agreement.CurvePoint point : curve) {
      within.add(Figures.number(1000 * point.toleranceS(), 0));
      f.add(Figures.number(point.f(), 3));
    }
    return List.of(within, f);
  }
}
