package palmturn.estimate;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import palmturn.estimate.hands.ShapeEvidence;
import palmturn.estimate.request.KnownSide;
import palmturn.trial.Estimate;
import palmturn.trial.Estimate.Stretch;

/** Sentences for the reader about what a trial's sources leave in doubt. */
final class EstimateWarnings {
  static final String TURN_BY_SHAPE =
      "The turn of the hand shows in its shape but not in its motion: check the slaps.";
  static final String NO_SOURCE = "No source was allowed that can find slaps: use sound or motion.";

  /** A smaller decrease of the turn is not mentioned: Palmturn's choice. */
  private static final double SHRUNK_DEG = 10;

  private EstimateWarnings() {}

  /** Warns of several stretches of slapping in what should be one trial. */
  static List<String> ofStretches(List<Stretch> stretches) {
    if (stretches.size() < 2) {
      return List.of();
    }
    String list =
        stretches.stream()
            .map(each -> String.format(Locale.ROOT, "%.2f–%.2f s", each.startS(), each.endS()))
            .collect(Collectors.joining(", "));
    return List.of(
        stretches.size()
            + " attempts were found ("
            + list
            + "): all figures are of the first; name a stretch for another.");
  }

  /** Warns of unknown sides, and of a known one that the shape contradicts. */
  static List<String> ofSides(
      SlapList slaps, @Nullable KnownSide known, @Nullable ShapeEvidence shape) {
    List<String> warnings = new ArrayList<>();
    boolean near = known != null && slaps.hasSlapNear(known);
    if (!near && (shape == null || shape.sides() == null)) {
      warnings.add(
          known == null
              ? "Which slaps are palm and which are back is unknown: name the side of one."
              : String.format(
                  Locale.ROOT,
                  "No slap was found near the known one at %.3f s: which are palm and which are"
                      + " back is unknown.",
                  known.timeS()));
    }
    if (known != null && near && slaps.contradicts(known)) {
      warnings.add(
          "By the hand's shape the named slap was by the other side: the name counts, check it.");
    }
    return warnings;
  }

  /** Warns of a turn that became clearly smaller over the trial. */
  static List<String> ofTurn(ShapeEvidence.@Nullable Measured measured) {
    Estimate.TurnRange turns = measured == null ? null : measured.shape().turnRange();
    Estimate.TurnChange change = turns == null ? null : turns.change();
    boolean certain = change != null && change.deg() < -SHRUNK_DEG && change.highDeg() < 0;
    return change == null || !certain
        ? List.of()
        : List.of(
            String.format(
                Locale.ROOT,
                "The turn shrank: %.0f° from side to side in the first third, %.0f° in the last.",
                change.firstThirdDeg(),
                change.lastThirdDeg()));
  }
}
