package palmturn.measure;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import palmturn.measure.RetestScore.ChangeVerdict;
import palmturn.measure.RetestScore.Control;
import palmturn.numbers.Stats;
import palmturn.trial.Block;
import palmturn.trial.Drill;
import palmturn.trial.DrillHand;
import palmturn.trial.Hand;
import palmturn.trial.Session;

/** Compares each block with the block before, and the drill between them with its control. */
final class Retests {
  private static final double LENGTHS_WITHIN = 0.1;

  /** The trials of one hand in one block. */
  private record Place(Hand hand, String block) {}

  private final Session session;
  private final List<TrialScore> scores;
  private final List<String> blocks;
  private final Limits.Margins margins;

  private Retests(Session session, List<TrialScore> scores, Limits.Margins margins) {
    this.session = session;
    this.scores = scores;
    this.margins = margins;
    this.blocks =
        Stream.concat(
                session.blocks().stream().map(Block::name),
                scores.stream().map(score -> score.trial().block()))
            .distinct()
            .sorted(Comparator.comparingInt(Block::order))
            .toList();
  }

  /** Returns each later block, quality and hand that has a trial, paced trials already left out. */
  static List<RetestScore> of(Session session, List<TrialScore> scores, Limits.Margins margins) {
    Retests retests = new Retests(session, scores, margins);
    List<RetestScore> all = new ArrayList<>();
    for (String block :
        retests.blocks.subList(Math.min(1, retests.blocks.size()), retests.blocks.size())) {
      for (Quality quality : Contrast.COMPARED) {
        for (Hand hand : List.of(Hand.RIGHT, Hand.LEFT)) {
          if (retests.filmed(hand, block)) {
            all.add(retests.of(hand, quality, block));
          }
        }
      }
    }
    return all;
  }

  private RetestScore of(Hand hand, Quality quality, String block) {
    Measure measure = Measures.headline(quality);
    String before = before(block);
    Drill drill = drill(block);
    Contrast change = contrast(quality, change(hand, block, 1));
    Map<Place, Integer> net = change(hand, block, 1);
    Control control = Control.NONE;
    if (drill != null && !drill.isRest()) {
      String rest = rest(drill, hand, block);
      if (trains(drill, hand) && filmed(hand.other(), block) && filmed(hand.other(), before)) {
        control = Control.OTHER_HAND;
        change(hand.other(), block, -1).forEach((place, w) -> net.merge(place, w, Integer::sum));
      } else if (!trains(drill, hand.other()) && rest != null) {
        control = Control.REST;
        change(hand, rest, -1).forEach((place, w) -> net.merge(place, w, Integer::sum));
      }
    }
    Contrast effect = control == Control.NONE ? null : contrast(quality, net);
    return new RetestScore(
        hand,
        quality,
        measure,
        block,
        Stats.mean(Contrast.values(measure, trials(new Place(hand, before)))),
        Stats.mean(Contrast.values(measure, trials(new Place(hand, block)))),
        change.value(),
        change.range95(),
        change.margin(),
        verdict(change.outcome()),
        change.furtherTrials(),
        drill == null ? null : drill.code(),
        control,
        effect == null ? null : effect.value(),
        effect == null ? null : effect.range95(),
        effect == null ? ChangeVerdict.CANNOT_TELL : verdict(effect.outcome()),
        Contrast.readings(
            measure, net.keySet().stream().flatMap(place -> trials(place).stream()).toList()));
  }

  /** After − before, as weights of the two blocks' means. */
  private Map<Place, Integer> change(Hand hand, String block, int weight) {
    Map<Place, Integer> weights = new LinkedHashMap<>();
    weights.put(new Place(hand, block), weight);
    weights.put(new Place(hand, before(block)), -weight);
    return weights;
  }

  private Contrast contrast(Quality quality, Map<Place, Integer> weights) {
    List<Contrast.Group> groups = new ArrayList<>();
    weights.forEach((place, weight) -> groups.add(new Contrast.Group(weight, trials(place))));
    return Contrast.of(quality, margins, groups);
  }

  /** The nearest rest that is as long as the drill and was filmed on both its ends, if any. */
  private @Nullable String rest(Drill drill, Hand hand, String block) {
    return blocks.stream()
        .skip(1)
        .filter(each -> filmed(hand, each) && filmed(hand, before(each)))
        .filter(each -> isRestAsLong(drill(each), drill))
        .min(Comparator.comparingInt(each -> Math.abs(Block.order(each) - Block.order(block))))
        .orElse(null);
  }

  private static boolean isRestAsLong(@Nullable Drill rest, Drill drill) {
    if (rest == null || !rest.isRest()) {
      return false;
    }
    Duration rested = rest.length();
    Duration drilled = drill.length();
    if (rested == null || drilled == null) {
      return !drill.dose().isBlank() && drill.dose().strip().equals(rest.dose().strip());
    }
    long difference = Math.abs(rested.toSeconds() - drilled.toSeconds());
    return difference <= LENGTHS_WITHIN * drilled.toSeconds();
  }

  private static boolean trains(Drill drill, Hand hand) {
    return drill.hand() == (hand == Hand.LEFT ? DrillHand.LEFT : DrillHand.RIGHT);
  }

  private @Nullable Drill drill(String block) {
    return session.block(block).map(Block::drill).orElse(null);
  }

  private String before(String block) {
    return blocks.get(blocks.indexOf(block) - 1);
  }

  private boolean filmed(Hand hand, String block) {
    return !trials(new Place(hand, block)).isEmpty();
  }

  private List<TrialScore> trials(Place place) {
    return scores.stream()
        .filter(score -> score.trial().hand() == place.hand())
        .filter(score -> score.trial().block().equals(place.block()))
        .toList();
  }

  static ChangeVerdict verdict(Contrast.Outcome outcome) {
    return switch (outcome) {
      case SMALL -> ChangeVerdict.NO_CHANGE;
      case BETTER -> ChangeVerdict.BETTER;
      case WORSE -> ChangeVerdict.WORSE;
      case UNCLEAR -> ChangeVerdict.UNCLEAR;
      case CANNOT_TELL -> ChangeVerdict.CANNOT_TELL;
    };
  }
}
