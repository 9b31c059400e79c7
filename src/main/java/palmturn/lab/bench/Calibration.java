package palmturn.lab.bench;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Confidence;
import palmturn.numbers.Range;
import palmturn.trial.Side;
import palmturn.trial.Zone;

/** The share of estimates that are right, by their stated confidence. */
final class Calibration {
  /** The bins' lower ends, closer at high confidences, where most estimates lie. */
  private static final double[] BIN_STARTS = {0, 0.5, 0.75, 0.9, 0.95, 0.99};

  /**
   * An estimate of one side or zone, stated with a confidence.
   *
   * @param confidence 0 to 1
   * @param right whether it is true
   */
  record Statement(double confidence, boolean right) {}

  /**
   * The estimates stated with about the same confidence.
   *
   * @param from least confidence
   * @param below least of the next bin; more than 1 in the last
   * @param count number of estimates
   * @param right number of right ones
   * @param meanStated mean confidence; null without any
   */
  record Bin(double from, double below, int count, int right, @Nullable Double meanStated) {
    /** Returns the share that was right; null without any. */
    @Nullable Double shareRight() {
      return count == 0 ? null : (double) right / count;
    }

    /** Returns its 95 % score interval; null without any. */
    @Nullable Range interval() {
      return Confidence.wilson(right, count);
    }
  }

  private Calibration() {}

  /** Returns the sides that were said of contacts; an unknown one says nothing. */
  static List<Statement> sides(List<ShapeComparison> clips) {
    return clips.stream()
        .flatMap(clip -> clip.pairs().stream())
        .filter(pair -> pair.slap().side() != Side.UNKNOWN)
        .map(
            pair ->
                new Statement(
                    pair.slap().sideConfidence(), pair.slap().side() == pair.truth().side()))
        .toList();
  }

  /** Returns the zones that were said of contacts; an unknown one says nothing. */
  static List<Statement> zones(List<ShapeComparison> clips) {
    return clips.stream()
        .flatMap(clip -> clip.pairs().stream())
        .filter(pair -> pair.slap().zone() != Zone.UNKNOWN && pair.truth().zone() != Zone.UNKNOWN)
        .map(
            pair ->
                new Statement(
                    pair.slap().zoneConfidence(), pair.slap().zone() == pair.truth().zone()))
        .toList();
  }

  /** Returns all bins, from the least confidence to the most. */
  static List<Bin> bins(List<Statement> said) {
    List<Bin> bins = new ArrayList<>();
    for (int i = 0; i < BIN_STARTS.length; i++) {
      double from = BIN_STARTS[i];
      double below = i + 1 < BIN_STARTS.length ? BIN_STARTS[i + 1] : Double.POSITIVE_INFINITY;
      List<Statement> in =
          said.stream()
              .filter(each -> each.confidence() >= from && each.confidence() < below)
              .toList();
      bins.add(
          new Bin(
              from,
              below,
              in.size(),
              (int) in.stream().filter(Statement::right).count(),
              in.isEmpty()
                  ? null
                  : in.stream().mapToDouble(Statement::confidence).sum() / in.size()));
    }
    return bins;
  }
}
