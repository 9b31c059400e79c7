package palmturn.work;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import palmturn.estimate.request.KnownSide;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Trial;

/**
 * Which slap tells palm from back, and who says so.
 *
 * @param known the slap
 * @param who in words
 */
record SideSource(KnownSide known, String who) {
  static SideSource given(KnownSide known) {
    return new SideSource(known, "the side given");
  }

  /** Returns the first slap of a trial whose side a reader has seen, finished readings first. */
  static @Nullable SideSource of(Trial trial) {
    List<Reading> readings =
        trial.readings().stream()
            .sorted(Comparator.comparing(Reading::finished).reversed())
            .toList();
    for (Reading reading : readings) {
      for (Slap slap : reading.slaps()) {
        if (slap.seen() && slap.counts() && slap.side() != Side.UNKNOWN && inside(trial, slap)) {
          return new SideSource(
              new KnownSide(slap.timeS(), slap.side()), reading.reader() + "'s mark");
        }
      }
    }
    return null;
  }

  private static boolean inside(Trial trial, Slap slap) {
    return (trial.fromS() == null || slap.timeS() >= trial.fromS())
        && (trial.toS() == null || slap.timeS() <= trial.toS());
  }

  String sentence() {
    return String.format(
        Locale.ROOT,
        "Palm and back follow %s at %.3f s: %s.",
        who,
        known.timeS(),
        known.side().code());
  }
}
