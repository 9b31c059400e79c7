package palmturn.measure;

import java.time.LocalDate;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.stream.Stream;
import palmturn.trial.Hand;

/**
 * All figures of a session.
 *
 * @param athlete the athlete's code
 * @param date the day of filming
 * @param trials one for each trial that has a reading to score, in the order given
 * @param hands each block, hand and quality that has a trial, paced trials left out
 * @param sides each block and quality for which both hands were filmed
 * @param retest each later block, quality and hand that was filmed, against the block before
 * @param ceilings the clean ceiling of each hand that was filmed, right before left; none until
 *     they are asked for
 */
public record SessionScore(
    String athlete,
    LocalDate date,
    List<TrialScore> trials,
    List<HandScore> hands,
    List<SideScore> sides,
    List<RetestScore> retest,
    List<CeilingScore> ceilings) {

  public SessionScore {
    trials = List.copyOf(trials);
    hands = List.copyOf(hands);
    sides = List.copyOf(sides);
    retest = List.copyOf(retest);
    ceilings = List.copyOf(ceilings);
  }

  /**
   * Returns these figures with each hand's clean ceiling, over all its trials and its pace ladder.
   *
   * @param random draws the resamples of the interval
   */
  public SessionScore withCeilings(RandomGenerator random) {
    List<CeilingScore> found =
        Stream.of(Hand.RIGHT, Hand.LEFT)
            .map(hand -> trials.stream().filter(each -> each.trial().hand() == hand).toList())
            .filter(scores -> !scores.isEmpty())
            .map(scores -> Ceilings.of(scores.get(0).trial().hand(), scores, random))
            .toList();
    return new SessionScore(athlete, date, trials, hands, sides, retest, found);
  }
}
