package palmturn.work.estimate;

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
 * The slap whose known side tells palm from back in all others.
 *
 * @param known the slap
 * @param who whose word that is
 */
record LabelledSlap(KnownSide known, String who) {
  static LabelledSlap given(KnownSide known) {
    return new LabelledSlap(known, "the side given");
  }

  /** Returns the first slap of a trial whose side a reader has seen, finished readings first. */
  static @Nullable LabelledSlap of(Trial trial) {
    List<Reading> readings =
        trial.readings().stream()
            .sorted(Comparator.comparing(Reading::finished).reversed())
            .toList();
    for (Reading reading : readings) {
      for (Slap slap : reading.slaps()) {
        if (slap.seen() && slap.counts() && slap.side() != Side.UNKNOWN && inside(trial, slap)) {
          return new LabelledSlap(
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
