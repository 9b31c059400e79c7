package palmturn.measure;

import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import palmturn.measure.SideScore.SideVerdict;
import palmturn.numbers.Stats;

/** Puts the two hands' trials of one block side by side. */
final class Sides {
  private Sides() {}

  static SideScore of(
      String block,
      Quality quality,
      List<TrialScore> rights,
      List<TrialScore> lefts,
      Limits.Margins margins) {
    Measure measure = Measures.headline(quality);
    Double right = Stats.mean(Contrast.values(measure, rights));
    Double left = Stats.mean(Contrast.values(measure, lefts));
    Contrast contrast =
        Contrast.of(
            quality,
            margins,
            List.of(new Contrast.Group(1, rights), new Contrast.Group(-1, lefts)));
    return new SideScore(
        block,
        quality,
        measure,
        right,
        left,
        contrast.value(),
        quality == Quality.SPEED ? percent(contrast.value(), right, left) : null,
        contrast.range95(),
        contrast.margin(),
        verdict(contrast.outcome()),
        contrast.furtherTrials(),
        Contrast.readings(measure, Stream.concat(rights.stream(), lefts.stream()).toList()));
  }

  private static @Nullable Double percent(
      @Nullable Double difference, @Nullable Double right, @Nullable Double left) {
    if (difference == null || right == null || left == null || right + left == 0) {
      return null;
    }
    return 100 * difference / ((right + left) / 2);
  }

  private static SideVerdict verdict(Contrast.Outcome outcome) {
    return switch (outcome) {
      case SMALL -> SideVerdict.BALANCED;
      case BETTER -> SideVerdict.WEAKER_LEFT;
      case WORSE -> SideVerdict.WEAKER_RIGHT;
      case UNCLEAR -> SideVerdict.UNCLEAR;
      case CANNOT_TELL -> SideVerdict.CANNOT_TELL;
    };
  }
}
