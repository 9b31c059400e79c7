package palmturn.estimate;

import java.util.List;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.SoundTrack;
import palmturn.estimate.motion.LivelyParts.FrameRange;
import palmturn.estimate.request.Request;
import palmturn.estimate.sound.Onsets;
import palmturn.trial.Estimate.Source;

/**
 * The onsets in a trial's sound.
 *
 * @param onsets none where the sound is not used
 * @param warnings why it is not
 */
record TrialSound(Onsets onsets, List<String> warnings) {
  /** Searched before and after the picture, for the largest offset between the two. */
  private static final double AROUND_S = 0.3;

  private static final TrialSound UNUSED = new TrialSound(Onsets.NONE, List.of());

  /**
   * Finds the onsets.
   *
   * @throws ClipException if the sound can't be read
   */
  static TrialSound of(ClipFile clip, Request request) throws ClipException {
    if (!request.use().contains(Source.SOUND)) {
      return UNUSED;
    }
    if (request.realPerMediaS() != 1) {
      return silent("The clip is in slow motion: its sound is stretched, and was not used.");
    }
    SoundTrack sound = clip.soundTrack();
    if (sound == null) {
      return silent("The clip has no sound: times are by the picture, contacts are not confirmed.");
    }
    FrameRange frames = MotionSearch.frames(clip, request);
    if (frames.to() <= frames.from()) {
      return UNUSED;
    }
    double fromS = clip.frames().timeS(frames.from()) - AROUND_S;
    double toS = clip.frames().timeS(frames.to() - 1) + AROUND_S;
    return new TrialSound(Onsets.of(sound, fromS, toS), List.of());
  }

  private static TrialSound silent(String why) {
    return new TrialSound(Onsets.NONE, List.of(why));
  }
}
