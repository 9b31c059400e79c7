package palmturn.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.BlandAltman;
import palmturn.settle.Agreement;
import palmturn.settle.ComparedMarks;
import palmturn.settle.Difference;
import palmturn.settle.DifferenceState;
import palmturn.settle.ReadingComparison;
import palmturn.settle.SettledTrial;
import palmturn.trial.Decision;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.Zone;
import palmturn.wording.Figures;
import palmturn.wording.Names;
import palmturn.work.settle.Settling;

/** The differences of two readings of a trial as plain text. */
final class SettleText {
  private SettleText() {}

  static String of(Settling.SettlementResult result) {
    SettledTrial settled = result.settled();
    ReadingComparison comparison = settled.comparison();
    List<String> lines = new ArrayList<>();
    lines.add(
        "%s: a is %s, b is %s"
            .formatted(result.trial().id().name(), named(comparison.a()), named(comparison.b())));
    lines.add(
        String.format(
            Locale.ROOT,
            "%d marks of both, %d only of a, %d only of b, within %s ms%s",
            comparison.matching().pairs().size(),
            comparison.matching().onlyA().size(),
            comparison.matching().onlyB().size(),
            Figures.ms(comparison.tolerance().seconds()),
            comparison.tolerance().tooFewFrames() ? ": too few frames to match" : ""));
    BlandAltman offset = Agreement.of(comparison).offset();
    if (offset != null) {
      lines.add(
          "b is %s ms later than a (SD %s)%s"
              .formatted(
                  Figures.ms(offset.bias()),
                  Figures.ms(offset.sd()),
                  comparison.removedS() == 0
                      ? ""
                      : ", of which %s ms was taken off"
                          .formatted(Figures.ms(comparison.removedS()))));
    }
    lines.add("");
    if (comparison.differences() == 0) {
      lines.add("Nothing differs.");
    } else {
      lines.add(
          String.format(
              Locale.ROOT,
              "%s, %d open",
              Figures.count(comparison.differences(), "difference"),
              settled.open()));
      lines.addAll(TextTable.lines(rows(settled)));
    }
    lines.add("");
    return String.join("\n", lines);
  }

  private static String named(ComparedMarks marks) {
    return marks.independent() ? marks.name() : marks.name() + " (not independent)";
  }

  private static List<List<String>> rows(SettledTrial settled) {
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("no.", "at s", "differs", "a", "b", "stands"));
    add(rows, settled.slaps(), SettleText::words);
    add(rows, settled.spans(), SettleText::words);
    return rows;
  }

  private static <M> void add(
      List<List<String>> rows, List<DifferenceState<M>> rulings, Function<M, String> words) {
    for (DifferenceState<M> ruling : rulings) {
      Difference<M> difference = ruling.difference();
      rows.add(
          List.of(
              String.valueOf(rows.size()),
              Figures.number(difference.timeS(), 3),
              difference.what().stream()
                  .map(Difference.What::words)
                  .collect(Collectors.joining(", ")),
              said(difference.a(), words),
              said(difference.b(), words),
              stands(ruling.decision())));
    }
  }

  private static <M> String said(@Nullable M mark, Function<M, String> words) {
    return mark == null ? Figures.NONE : words.apply(mark);
  }

  private static String words(Slap slap) {
    StringBuilder words = new StringBuilder(slap.kind().code());
    if (slap.side() != Side.UNKNOWN) {
      words.append(' ').append(slap.side().code());
    }
    if (slap.zone() != Zone.UNKNOWN) {
      words.append(' ').append(slap.zone().code());
    }
    return words.append(' ').append(Figures.number(slap.timeS(), 3)).toString();
  }

  private static String words(Span span) {
    return "%s %s to %s"
        .formatted(
            span.kind().code(), Figures.number(span.startS(), 3), Figures.number(span.endS(), 3));
  }

  private static String stands(@Nullable Decision<?> decision) {
    if (decision == null) {
      return "open";
    }
    String choice =
        switch (decision.choice()) {
          case FIRST -> "a";
          case SECOND -> "b";
          case NEITHER -> decision.anew() == null ? "neither" : "neither, marked anew";
          case OPEN -> "open";
        };
    return "%s, %s %s%s"
        .formatted(
            choice,
            Names.decider(decision),
            decision.at(),
            decision.why().isEmpty() ? "" : ": " + decision.why());
  }
}
