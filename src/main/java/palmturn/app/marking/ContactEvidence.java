package palmturn.app.marking;

import org.jspecify.annotations.Nullable;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Slap;
import palmturn.trial.TimedBy;

/**
 * Evidence of a contact, with the uncertainty of its time.
 *
 * @param timeS on the picture's clock, media seconds
 * @param timedBy what the time rests on
 * @param resolutionS standard deviation by sound, distance of frames by motion, seconds
 * @param pictureS time by the picture alone, if it was seen
 * @param soundS time of the onset on the sound's own clock, if it was heard
 */
public record ContactEvidence(
    double timeS,
    TimedBy timedBy,
    double resolutionS,
    @Nullable Double pictureS,
    @Nullable Double soundS) {

  /** Returns a slap of the estimate. */
  public static ContactEvidence of(EstimatedSlap found) {
    return new ContactEvidence(
        found.timeS(), found.timedBy(), found.resolutionS(), found.pictureS(), found.soundS());
  }

  /**
   * Returns an onset in the sound.
   *
   * @param onsetS on the sound's own clock
   * @param offsetS how much later the sound is than the picture
   * @param sdS standard deviation of the onset's time
   */
  public static ContactEvidence heard(double onsetS, double offsetS, double sdS) {
    return new ContactEvidence(onsetS - offsetS, TimedBy.SOUND, sdS, null, onsetS);
  }

  /** Returns a mark with this time. */
  Slap applyTo(Slap mark) {
    return new Slap(
        mark.kind(),
        timeS,
        mark.side(),
        mark.zone(),
        timedBy,
        resolutionS,
        pictureS,
        soundS,
        true,
        mark.note(),
        mark.extra());
  }
}
