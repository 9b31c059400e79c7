package palmturn.lab.bench;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Confidence;
import palmturn.numbers.Range;
import palmturn.trial.Side;
import palmturn.trial.Zone;

/** How often what was said with some confidence is right. */
final class Calibration {
  /** Most of what is said is said with much confidence, so that the bins are narrower there. */
  private static final double[] FROM = {0, 0.5, 0.75, 0.9, 0.95, 0.99};

  /**
   * What was said.
   *
   * @param confidence 0 to 1
   * @param right whether it is so
   */
  record Said(double confidence, boolean right) {}

  /**
   * What was said with about the same confidence.
   *
   * @param from least confidence
   * @param below least of the next bin; more than 1 in the last
   * @param said how often
   * @param right how often it was right
   * @param meanStated mean confidence; null without any
   */
  record Bin(double from, double below, int said, int right, @Nullable Double meanStated) {
    /** Returns the share that was right; null without any. */
    @Nullable Double share() {
      return said == 0 ? null : (double) right / said;
    }

    /** Returns its 95 % score interval; null without any. */
    @Nullable Range interval() {
      return Confidence.wilson(right, said);
    }
  }

  private Calibration() {}

  /** Returns the sides that were said of contacts; an unknown one says nothing. */
  static List<Said> sides(List<ShapeComparison> clips) {
    return clips.stream()
        .flatMap(clip -> clip.pairs().stream())
        .filter(pair -> pair.slap().side() != Side.UNKNOWN)
        .map(
            pair ->
                new Said(pair.slap().sideConfidence(), pair.slap().side() == pair.truth().side()))
        .toList();
  }

  /** Returns the zones that were said of contacts; an unknown one says nothing. */
  static List<Said> zones(List<ShapeComparison> clips) {
    return clips.stream()
        .flatMap(clip -> clip.pairs().stream())
        .filter(pair -> pair.slap().zone() != Zone.UNKNOWN && pair.truth().zone() != Zone.UNKNOWN)
        .map(
            pair ->
                new Said(pair.slap().zoneConfidence(), pair.slap().zone() == pair.truth().zone()))
        .toList();
  }

  /** Returns all bins, from the least confidence to the most. */
  static List<Bin> bins(List<Said> said) {
    List<Bin> bins = new ArrayList<>();
    for (int i = 0; i < FROM.length; i++) {
      double from = FROM[i];
      double below = i + 1 < FROM.length ? FROM[i + 1] : Double.POSITIVE_INFINITY;
      List<Said> in =
          said.stream()
              .filter(each -> each.confidence() >= from && each.confidence() < below)
              .toList();
      bins.add(
          new Bin(
              from,
              below,
              in.size(),
              (int) in.stream().filter(Said::right).count(),
              in.isEmpty() ? null : in.stream().mapToDouble(Said::confidence).sum() / in.size()));
    }
    return bins;
  }
}
