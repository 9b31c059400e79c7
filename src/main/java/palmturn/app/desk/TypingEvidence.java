package palmturn.app.desk;

import java.util.ArrayList;
import java.util.List;
import palmturn.app.estimate.ShownEstimate;
import palmturn.app.marking.ContactEvidence;
import palmturn.app.marking.Typing;
import palmturn.app.strip.Strip;
import palmturn.clip.Sound;
import palmturn.estimate.sound.SlapSounds;
import palmturn.trial.Estimate;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Slap;
import palmturn.trial.TimeScale;

/** Evidence that typed marks settle on: onsets, and contacts of the estimate if it is visible. */
record TypingEvidence(OpenSession session, ClipLoader loader, ShownEstimate estimate, Strip strip)
    implements Typing.EvidenceSource {
  /** An onset nearer to a contact than this is the contact's own, seconds. */
  private static final double SAME_S = 0.03;

  @Override
  public List<ContactEvidence> between(double fromS, double toS) {
    Estimate shown = estimate.visibleProperty().getValue();
    List<ContactEvidence> all = new ArrayList<>();
    if (shown != null) {
      for (EstimatedSlap each : shown.slaps()) {
        if (each.timeS() >= fromS && each.timeS() <= toS) {
          all.add(ContactEvidence.of(each));
        }
      }
    }
    List<ContactEvidence> contacts = List.copyOf(all);
    Sound sound = loader.soundProperty().get();
    Estimate made = estimate.estimateProperty().get();
    boolean setAside = made != null && made.soundOffsetS() == null;
    // The sound of a stretched clip tells nothing about its slaps.
    if (sound != null && !setAside && session.timeScale().equals(TimeScale.REAL)) {
      double offsetS = strip.soundOffsetS();
      for (double onsetS : SlapSounds.clearS(sound, fromS + offsetS, toS + offsetS)) {
        ContactEvidence heard = ContactEvidence.heard(onsetS, offsetS, Slap.SOUND_SD_S);
        if (contacts.stream().noneMatch(c -> Math.abs(c.timeS() - heard.timeS()) < SAME_S)) {
          all.add(heard);
        }
      }
    }
    return all;
  }

  @Override
  public String assumption() {
    boolean heard =
        loader.soundProperty().get() != null && session.timeScale().equals(TimeScale.REAL);
    boolean estimated = estimate.estimateProperty().get() != null;
    return heard && !estimated
        ? "the sound is taken to be in step with the picture, since nothing is estimated"
        : "";
  }
}
