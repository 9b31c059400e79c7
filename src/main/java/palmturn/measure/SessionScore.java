package palmturn.measure;

import java.time.LocalDate;
import java.util.List;

/**
 * All figures of a session.
 *
 * @param athlete the athlete's code
 * @param date the day of filming
 * @param trials one for each trial that has a reading to score, in the order given
 * @param hands each block, hand and quality that has a trial, paced trials left out
 * @param sides each block and quality for which both hands were filmed
 * @param retest each later block, quality and hand that was filmed, against the block before
 */
public record SessionScore(
    String athlete,
    LocalDate date,
    List<TrialScore> trials,
    List<HandScore> hands,
    List<SideScore> sides,
    List<RetestScore> retest) {

  public SessionScore {
    trials = List.copyOf(trials);
    hands = List.copyOf(hands);
    sides = List.copyOf(sides);
    retest = List.copyOf(retest);
  }
}
