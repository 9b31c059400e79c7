package palmturn.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import palmturn.measure.Measures;
import palmturn.measure.Scores;
import palmturn.measure.TrialScore;
import palmturn.settle.Agreement;
import palmturn.settle.Difference;
import palmturn.settle.DifferenceState;
import palmturn.settle.ReadingComparison;
import palmturn.settle.SettledTrial;
import palmturn.trial.Decision;
import palmturn.trial.Estimate;
import palmturn.trial.Reading;
import palmturn.trial.Settlement;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.Trial;
import palmturn.trial.Zone;
import palmturn.wording.AgreementSentences;
import palmturn.wording.Figures;
import palmturn.wording.Names;

/** Differences between the readings of a trial, the decisions on them, and their agreement. */
final class ReadingParts {
  private ReadingParts() {}

  /** Returns the part of a trial, null where no two readings of it are compared. */
  static Page.@Nullable ReadingsPart of(ReportInput.Filmed filmed, ReportInput input) {
    SettledTrial settled = filmed.settled();
    if (settled == null) {
      return null;
    }
    ReadingComparison comparison = settled.comparison();
    String a = comparison.a().name();
    String b = comparison.b().name();
    List<Page.DifferenceRow> rows = new ArrayList<>();
    settled.slaps().forEach(each -> rows.add(row(each, ReadingParts::words)));
    settled.spans().forEach(each -> rows.add(row(each, ReadingParts::words)));
    return new Page.ReadingsPart(
        counts(filmed.trial(), settled, input),
        rows.isEmpty()
            ? "%s and %s differ nowhere.".formatted(a, b)
            : String.format(
                Locale.ROOT,
                "%s and %s differ in %s, worst first; %d still open.",
                a,
                b,
                Figures.count(rows.size(), "place"),
                settled.open()),
        a,
        b,
        rows,
        sentences(comparison, a, b));
  }

  private static List<String> sentences(ReadingComparison comparison, String a, String b) {
    List<String> sentences = new ArrayList<>(AgreementSentences.of(Agreement.of(comparison), a, b));
    sentences.add(
        "Marks count as the same within %s%s."
            .formatted(
                Figures.withUnit(Figures.ms(comparison.tolerance().seconds()), "ms"),
                comparison.tolerance().tooFewFrames()
                    ? ", over a quarter of the interval between slaps: too few frames to match, so"
                        + " that agreement means little"
                    : ""));
    return sentences;
  }

  private static List<Page.ReadingRow> counts(
      Trial trial, SettledTrial settled, ReportInput input) {
    List<Page.ReadingRow> rows = new ArrayList<>();
    for (Reading reading : trial.readings()) {
      rows.add(row(trial, reading, Names.provenance(reading), input));
    }
    Estimate estimate = trial.estimate();
    if (estimate != null) {
      rows.add(row(trial, estimate.toReading(Settlement.ESTIMATE), "found by the program", input));
    }
    rows.add(
        row(
            trial,
            settled.reading(),
            settled.open() == 0
                ? "every difference decided"
                : "open differences as %s has them".formatted(settled.comparison().a().name()),
            input));
    return rows;
  }

  private static Page.ReadingRow row(Trial trial, Reading reading, String how, ReportInput input) {
    TrialScore score = Scores.trial(trial, reading, input.session().windowS(), input.limits());
    return new Page.ReadingRow(
        reading.reader(),
        String.valueOf(score.accuracy().slaps()),
        String.valueOf(score.accuracy().doubles()),
        Figures.of(Measures.CLEAN_SHARE, score),
        Figures.of(Measures.RATE, score),
        how);
  }

  private static <M> Page.DifferenceRow row(DifferenceState<M> ruling, Function<M, String> words) {
    Difference<M> difference = ruling.difference();
    M a = difference.a();
    M b = difference.b();
    return new Page.DifferenceRow(
        Figures.seconds(difference.timeS(), 3),
        difference.what().stream().map(Difference.What::words).collect(Collectors.joining(", ")),
        a == null ? Figures.NONE : words.apply(a),
        b == null ? Figures.NONE : words.apply(b),
        decided(ruling));
  }

  private static String decided(DifferenceState<?> ruling) {
    Decision<?> decision = ruling.decision();
    if (decision == null) {
      return "open";
    }
    String choice =
        switch (decision.choice()) {
          case FIRST -> "the first";
          case SECOND -> "the second";
          case NEITHER -> decision.anew() == null ? "neither" : "neither, marked anew";
          case OPEN -> "left open";
        };
    return "%s (%s, %s)%s"
        .formatted(
            choice,
            Names.decider(decision),
            Names.date(decision.at()),
            decision.why().isEmpty() ? "" : ": " + decision.why());
  }

  private static String words(Slap slap) {
    List<String> words = new ArrayList<>(List.of(slap.kind().code()));
    if (slap.side() != Side.UNKNOWN) {
      words.add(slap.side().code());
    }
    if (slap.zone() != Zone.UNKNOWN) {
      words.add(slap.zone().code());
    }
    return "%s at %s".formatted(String.join(", ", words), Figures.number(slap.timeS(), 3));
  }

  private static String words(Span span) {
    return "%s, %s to %s"
        .formatted(
            span.kind().code(), Figures.number(span.startS(), 3), Figures.number(span.endS(), 3));
  }
}
