package palmturn.advise;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import palmturn.measure.CeilingScore;
import palmturn.measure.HandScore;
import palmturn.measure.Limits;
import palmturn.measure.Quality;
import palmturn.measure.SessionScore;
import palmturn.trial.Hand;
import palmturn.trial.TrialId;

/**
 * The evidence for advice.
 *
 * @param score the session's figures
 * @param limits limits that they were judged by
 * @param ownBest each hand's highest rate on file beside this session, where there is one
 * @param warnings obstacles to scoring a trial's clip, where it was inspected
 */
public record Evidence(
    SessionScore score,
    Limits limits,
    Map<Hand, Double> ownBest,
    Map<TrialId, List<String>> warnings) {

  public Evidence {
    ownBest = Map.copyOf(ownBest);
    warnings = Map.copyOf(warnings);
  }

  /** Returns evidence of figures alone: no other session, no look at the clips. */
  public static Evidence of(SessionScore score, Limits limits) {
    return new Evidence(score, limits, Map.of(), Map.of());
  }

  /** Returns what is known of a hand's clean ceiling; null where it was not asked for. */
  @Nullable CeilingScore ceiling(Hand hand) {
    return score.ceilings().stream().filter(each -> each.hand() == hand).findFirst().orElse(null);
  }

  /** Returns a hand's highest rate on file, this session included; null without one. */
  @Nullable Double best(Hand hand) {
    Double best = ownBest.get(hand);
    for (HandScore each : score.hands()) {
      if (each.hand() == hand
          && each.quality() == Quality.SPEED
          && each.best() != null
          && (best == null || each.best() > best)) {
        best = each.best();
      }
    }
    return best;
  }
}
