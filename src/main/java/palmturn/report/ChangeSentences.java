package palmturn.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import palmturn.measure.Measure;
import palmturn.measure.Phrases;
import palmturn.measure.RetestScore;
import palmturn.measure.RetestScore.Control;
import palmturn.measure.SessionScore;
import palmturn.trial.Block;
import palmturn.trial.Hand;
import palmturn.trial.Session;
import palmturn.wording.Figures;
import palmturn.wording.Names;

/** Sentences on what changed from one block to the next, and what of it may be the drill's. */
public final class ChangeSentences {
  /** The caveat beside every change that is shown. */
  public static final String PRACTICE =
      "Practice alone improves scores: only what is left with the control’s change taken off may"
          + " be the drill’s.";

  private final Session session;
  private final SessionScore score;

  ChangeSentences(Session session, SessionScore score) {
    this.session = session;
    this.score = score;
  }

  /** Returns a line for each later block; none where there is no later block. */
  public static List<String> of(Session session, SessionScore score) {
    ChangeSentences said = new ChangeSentences(session, score);
    List<String> lines = new ArrayList<>();
    score.retest().stream()
        .map(RetestScore::block)
        .distinct()
        .sorted(Comparator.comparingInt(Block::order))
        .forEach(
            block -> {
              StringBuilder line = new StringBuilder();
              for (Page.Sentence each : said.sentences(block)) {
                line.append(line.isEmpty() || line.toString().endsWith(" ") ? "" : " ")
                    .append(each.before())
                    .append(each.strong())
                    .append(each.after());
              }
              lines.add("%s: %s".formatted(Names.heading(session, block), line));
            });
    return lines;
  }

  /** Returns what changed since the block before, none for a block without one. */
  List<Page.Sentence> sentences(String block) {
    List<RetestScore> scores = scores(block);
    if (scores.isEmpty()) {
      return List.of();
    }
    List<Page.Sentence> sentences = new ArrayList<>();
    sentences.add(
        hand("Since %s".formatted(before(block)), scores, Hand.LEFT, ", practice included; "));
    sentences.add(hand("", scores, Hand.RIGHT, "."));
    List<RetestScore> held =
        scores.stream().filter(score -> score.control() != Control.NONE).toList();
    String drill = scores.get(0).drill();
    if (drill == null) {
      return sentences;
    }
    if (held.isEmpty()) {
      sentences.add(
          new Page.Sentence(
              "What %s did ".formatted(drill),
              "can’t be told",
              " from practice: there is no control to hold it against."));
      return sentences;
    }
    for (RetestScore score : held) {
      if (decided(score.netVerdict()) && score.netDifference() != null && score.net95() != null) {
        Measure.Form form = score.measure().form();
        sentences.add(
            new Page.Sentence(
                "Held against %s, ".formatted(control(score)),
                "%s of the %s got %s with %s"
                    .formatted(
                        Names.quality(score.quality()),
                        Names.hand(score.hand()),
                        score.netVerdict() == RetestScore.ChangeVerdict.BETTER ? "better" : "worse",
                        drill),
                ": by %s (%s)."
                    .formatted(
                        Figures.withUnit(
                            form.size(score.netDifference()), score.quality().differenceUnit()),
                        form.size(score.netDifference(), score.net95()))));
      }
    }
    if (sentences.size() == 2) {
      sentences.add(
          new Page.Sentence(
              "Held against %s, ".formatted(control(held.get(0))),
              "nothing that %s did can be told".formatted(drill),
              " from practice."));
    }
    return sentences;
  }

  private static boolean decided(RetestScore.ChangeVerdict verdict) {
    return verdict == RetestScore.ChangeVerdict.BETTER
        || verdict == RetestScore.ChangeVerdict.WORSE;
  }

  private static Page.Sentence hand(
      String since, List<RetestScore> scores, Hand hand, String after) {
    List<RetestScore> own = scores.stream().filter(score -> score.hand() == hand).toList();
    String name = "%s the %s ".formatted(since, Names.hand(hand)).stripLeading();
    if (own.isEmpty()) {
      return new Page.Sentence(name, "was not filmed again", after);
    }
    List<String> parts = new ArrayList<>();
    for (RetestScore.ChangeVerdict verdict :
        List.of(RetestScore.ChangeVerdict.BETTER, RetestScore.ChangeVerdict.WORSE)) {
      List<String> qualities =
          own.stream()
              .filter(score -> score.verdict() == verdict)
              .map(score -> Names.quality(score.quality()))
              .toList();
      if (!qualities.isEmpty()) {
        parts.add("%s in %s".formatted(verdict.code(), Phrases.list(qualities)));
      }
    }
    if (!parts.isEmpty()) {
      return new Page.Sentence(name + "is ", String.join(" and ", parts), after);
    }
    boolean compared =
        own.stream().anyMatch(score -> score.verdict() != RetestScore.ChangeVerdict.CANNOT_TELL);
    return compared
        ? new Page.Sentence(name + "shows ", "no clear change", after)
        : new Page.Sentence(name, "can’t be compared", after);
  }

  private static String control(RetestScore score) {
    return score.control() == Control.REST ? "a rest of the same length" : "the other hand";
  }

  List<RetestScore> scores(String block) {
    return score.retest().stream().filter(each -> each.block().equals(block)).toList();
  }

  String before(String block) {
    return session.blocks().stream()
        .map(Block::name)
        .filter(name -> Block.order(name) < Block.order(block))
        .max(Comparator.comparingInt(Block::order))
        .map(Names::block)
        .orElse("the block before");
  }
}
