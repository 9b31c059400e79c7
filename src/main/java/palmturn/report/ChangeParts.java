package palmturn.report;

import java.util.Comparator;
import java.util.List;
import palmturn.measure.Phrases;
import palmturn.measure.Quality;
import palmturn.measure.RetestScore;
import palmturn.measure.RetestScore.Control;
import palmturn.trial.Block;
import palmturn.wording.Figures;
import palmturn.wording.Names;
import palmturn.wording.VerdictLabel;

/** The changes from each block to the next, and what of them may be the drill's. */
final class ChangeParts {
  private final ReportInput input;
  private final MarkOrigin readers;
  private final ChangeSentences said;

  ChangeParts(ReportInput input) {
    this.input = input;
    this.readers = new MarkOrigin(input);
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
        "%s against %s".formatted(Names.heading(input.session(), block), said.before(block)),
        said.sentences(block),
        scores.stream().map(this::row).toList(),
        ChangeSentences.PRACTICE);
  }

  private Page.ChangeRow row(RetestScore score) {
    Quality quality = score.quality();
    boolean controlled = score.control() != Control.NONE;
    return new Page.ChangeRow(
        Phrases.capital(Names.hand(score.hand())),
        "%s, %s".formatted(quality.shownName(), quality.differenceUnit()),
        Figures.of(score.measure(), score.before()),
        Figures.of(score.measure(), score.after()),
        Figures.difference(quality, score.difference(), score.difference95()),
        VerdictLabel.of(score.verdict()),
        controlled
            ? Figures.difference(quality, score.netDifference(), score.net95())
            : "no control",
        controlled ? VerdictLabel.of(score.netVerdict()) : null,
        readers.of(score.readings(), ""));
  }
}
