package palmturn.report;

import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.measure.RetestScore;
import palmturn.measure.RetestScore.Control;
import palmturn.numbers.Range;
import palmturn.trial.Block;

/** Says what changed from one block to the next, and what of it may be the drill's. */
final class ChangeParts {
  private final ReportInput input;
  private final Readers readers;
  private final ChangeSentences said;

  ChangeParts(ReportInput input) {
    this.input = input;
    this.readers = new Readers(input);
    said = new ChangeSentences(input.session(), input.score());
  }

  List<Page.ChangePart> parts() {
    return input.score().retest().stream()
        .map(RetestScore::block)
        .distinct()
        .sorted(Comparator.comparingInt(Block::order))
        .map(this::part)
        .toList();
  }

  private Page.ChangePart part(String block) {
    List<RetestScore> scores = said.scores(block);
    return new Page.ChangePart(
        "%s against %s".formatted(Words.heading(input.session(), block), said.before(block)),
        said.sentences(block),
        scores.stream().map(this::row).toList(),
        ChangeSentences.PRACTICE);
  }

  private Page.ChangeRow row(RetestScore score) {
    int decimals = BlockParts.decimals(score.quality());
    boolean controlled = score.control() != Control.NONE;
    return new Page.ChangeRow(
        Words.hand(score.hand()),
        "%s, %s".formatted(Words.quality(score.quality()), BlockParts.difference(score.quality())),
        number(score.before(), decimals),
        number(score.after(), decimals),
        change(score.difference(), score.difference95(), decimals),
        Verdict.of(score.verdict()),
        controlled ? change(score.netDifference(), score.net95(), decimals) : "no control",
        controlled ? Verdict.of(score.netVerdict()) : null,
        readers.of(score.readings(), ""));
  }

  private static String change(@Nullable Double value, @Nullable Range range, int decimals) {
    if (value == null || range == null) {
      return Figures.NONE;
    }
    return "%s (%s)".formatted(Figures.signed(value, decimals), range(range, decimals));
  }

  static String range(Range range, int decimals) {
    return Figures.number(range.low(), decimals) + " to " + Figures.number(range.high(), decimals);
  }

  private static String number(@Nullable Double value, int decimals) {
    return value == null ? Figures.NONE : Figures.number(value, decimals);
  }
}
