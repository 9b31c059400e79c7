package palmturn.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import palmturn.measure.Decimals;
import palmturn.measure.Measures;
import palmturn.measure.Phrases;
import palmturn.measure.Scores;
import palmturn.numbers.BlandAltman;
import palmturn.numbers.Kappa;
import palmturn.settle.Agreement;
import palmturn.settle.ComparedMarks;
import palmturn.settle.PooledAgreement;
import palmturn.settle.ReadingComparison;
import palmturn.settle.SettledTrial;
import palmturn.settle.TrialAgreement;
import palmturn.trial.Estimate;
import palmturn.trial.Reading;
import palmturn.trial.Settlement;
import palmturn.trial.Trial;
import palmturn.wording.AgreementSentences;
import palmturn.wording.Figures;
import palmturn.wording.Names;

/** The agreement of each pair of readings over the trials that both have read. */
final class AgreementParts {
  private static final double MS = 1000;

  private final ReportInput input;

  AgreementParts(ReportInput input) {
    this.input = input;
  }

  private record Pair(String first, String second) {}

  List<Page.AgreementPart> parts() {
    Map<Pair, List<ReportInput.Filmed>> pairs = new LinkedHashMap<>();
    for (ReportInput.Filmed filmed : input.trials()) {
      SettledTrial settled = filmed.settled();
      if (settled != null) {
        ReadingComparison comparison = settled.comparison();
        pairs
            .computeIfAbsent(
                new Pair(comparison.a().name(), comparison.b().name()), key -> new ArrayList<>())
            .add(filmed);
      }
    }
    return pairs.entrySet().stream().map(each -> part(each.getKey(), each.getValue())).toList();
  }

  private Page.AgreementPart part(Pair pair, List<ReportInput.Filmed> trials) {
    List<TrialAgreement> each = new ArrayList<>();
    List<Page.AgreementRow> rows = new ArrayList<>();
    for (ReportInput.Filmed filmed : trials) {
      SettledTrial settled = filmed.settled();
      if (settled != null) {
        ReadingComparison comparison = settled.comparison();
        Agreement agreement = Agreement.of(comparison);
        Trial trial = filmed.trial();
        each.add(
            new TrialAgreement(
                "",
                trial.id(),
                comparison,
                agreement,
                rate(trial, comparison.a()),
                rate(trial, comparison.b())));
        rows.add(row(trial, settled, agreement));
      }
    }
    PooledAgreement over = PooledAgreement.of(Measures.RATE.id(), each);
    Agreement together = over.pooled();
    List<String> sentences = new ArrayList<>();
    if (together == null) {
      sentences.add(
          "These readings are not independent on any trial, since one started from the other or"
              + " from the estimate, or had it in sight: how well they agree would say nothing.");
    } else {
      sentences.addAll(AgreementSentences.of(together, pair.first(), pair.second()));
      sentences.addAll(
          AgreementSentences.figure(
              over, Phrases.capital(Names.measure(Measures.RATE)), pair.first(), pair.second()));
    }
    return new Page.AgreementPart(pair.first(), pair.second(), sentences, rows);
  }

  private static Page.AgreementRow row(Trial trial, SettledTrial settled, Agreement agreement) {
    BlandAltman offset = agreement.offset();
    Kappa side = agreement.independent() ? agreement.side().kappa() : null;
    Double f = agreement.independent() ? agreement.counts().f() : null;
    return new Page.AgreementRow(
        Phrases.capital(Names.trial(trial.id())),
        String.valueOf(agreement.counts().pairs()),
        String.valueOf(agreement.counts().onlyA()),
        String.valueOf(agreement.counts().onlyB()),
        agreement.independent() ? Figures.number(f, 3) : "not independent",
        offset == null
            ? Figures.NONE
            : "%s (%s to %s)"
                .formatted(
                    Decimals.signed(MS * offset.bias(), 1),
                    Decimals.signed(MS * offset.limits().low(), 1),
                    Decimals.signed(MS * offset.limits().high(), 1)),
        side == null
            ? Figures.NONE
            : "%s (%s)"
                .formatted(Figures.number(side.kappa(), 2), Figures.range(side.range95(), 2)),
        settled.open() == 0
            ? "all decided"
            : String.format(
                Locale.ROOT, "%d of %d", settled.open(), settled.comparison().differences()));
  }

  private @Nullable Double rate(Trial trial, ComparedMarks marks) {
    Estimate estimate = trial.estimate();
    Reading reading =
        marks.name().equals(Settlement.ESTIMATE)
            ? estimate == null ? null : estimate.toReading(Settlement.ESTIMATE)
            : trial.reading(marks.name()).orElse(null);
    return reading == null
        ? null
        : Scores.trial(trial, reading, input.session().windowS(), input.limits())
            .speed()
            .rateSlapsPerS();
  }
}
