package palmturn.estimate.hands;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import palmturn.estimate.hands.HandFollower.TimedHand;

/**
 * Both hands of a trial over time, on the stage.
 *
 * @param right whether the moving hand is a right one, in a picture that is not mirrored
 * @param moving where the moving hand was seen, in order of time
 * @param target where the target hand was seen uncovered, in order of time
 * @param rest the target hand over the whole trial
 */
public record HandPaths(
    boolean right, List<TimedHand> moving, List<TimedHand> target, HandMarks rest) {
  /** Time to either side over which the target's landmarks are the median. */
  private static final double AROUND_S = 0.5;

  /** Fewest frames for a stable median. */
  private static final int FEWEST = 3;

  public HandPaths {
    moving = List.copyOf(moving);
    target = List.copyOf(target);
  }

  /**
   * Returns the moving hand's landmarks around a moment.
   *
   * @param beforeS how long before it, seconds
   * @param afterS how long after it, seconds
   */
  List<HandMarks> around(double timeS, double beforeS, double afterS) {
    return moving.stream()
        .filter(seen -> seen.timeS() >= timeS - beforeS && seen.timeS() <= timeS + afterS)
        .map(TimedHand::marks)
        .toList();
  }

  /**
   * Returns the target hand's landmarks at a moment, the median of the frames around it that show
   * it.
   */
  HandMarks targetAt(double timeS) {
    List<HandMarks> near =
        target.stream()
            .filter(seen -> Math.abs(seen.timeS() - timeS) <= AROUND_S)
            .map(TimedHand::marks)
            .toList();
    return near.size() < FEWEST ? rest : HandMarks.median(near);
  }

  /** Returns how much of its palm the moving hand shows the camera: above 0 palm, below 0 back. */
  double palmShown(HandMarks marks) {
    return right ? -marks.face() : marks.face();
  }

  /** Returns how wide the moving palm looks, pixels: above 0 the palm, below 0 the back. */
  double palmAcross(HandMarks marks) {
    return right ? -marks.across() : marks.across();
  }

  /**
   * Returns the mean over the frames around a moment, weighted by presence; null where the hand was
   * not seen in one.
   *
   * @param aroundS how long before and after it, seconds
   */
  @Nullable Double mean(double timeS, double aroundS, ToDoubleFunction<HandMarks> of) {
    double sum = 0;
    double weights = 0;
    for (HandMarks marks : around(timeS, aroundS, aroundS)) {
      sum += marks.presence() * of.applyAsDouble(marks);
      weights += marks.presence();
    }
    return weights > 0 ? sum / weights : null;
  }

  /** Returns how much of its palm the target hand shows: above 0 palm, below 0 back. */
  double targetPalmShown() {
    return right ? rest.face() : -rest.face();
  }
}
