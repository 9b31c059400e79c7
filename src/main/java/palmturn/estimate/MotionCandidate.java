package palmturn.estimate;

import org.jspecify.annotations.Nullable;
import palmturn.estimate.motion.LivelyParts;
import palmturn.estimate.motion.Motion;
import palmturn.estimate.sound.SoundMatch;
import palmturn.trial.Estimate.Stretch;

/**
 * A stretch in which something oscillates, and may be a trial.
 *
 * @param frames in which it was looked for
 * @param motion of the hand
 * @param sound compared with its stops, null without sound
 */
record MotionCandidate(LivelyParts.FrameRange frames, Motion motion, @Nullable SoundMatch sound) {
  /** Returns from its first to its last contact, media seconds. */
  Stretch stretch(double realPerMediaS) {
    double[] times = motion.stops().pictureS();
    return new Stretch(times[0] / realPerMediaS, times[times.length - 1] / realPerMediaS);
  }
}
