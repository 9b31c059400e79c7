package palmturn.estimate;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Robust;
import palmturn.trial.Estimate.Source;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Side;
import palmturn.trial.TimedBy;
import palmturn.trial.Zone;

/**
 * One list of contacts from motion and sound, each with its evidence.
 *
 * @param slaps in media seconds, on the picture's clock
 * @param beats the figures of the list
 * @param soundOffsetS how much later the sound is, null where it was not used
 * @param warnings what speaks against something
 */
record SlapList(
    List<EstimatedSlap> slaps, Beats beats, @Nullable Double soundOffsetS, List<String> warnings) {
  private static final double STRENGTH_SHARE = 0.4;
  private static final double HEARD_SHARE = 0.3;
  private static final double HALF_SHARE = 0.2;
  private static final double REGULAR_SHARE = 0.1;
  private static final double LIKELY_S = 0.01;
  private static final double ODD_S = 0.012;
  private static final double SNAP = 0.4;

  /** With less agreement, and hardly anything else to hear, nothing was touched. */
  private static final double NOTHING_HEARD = 0.2;

  /**
   * Puts the sources together.
   *
   * @param frameS median distance between frames, media seconds
   */
  static SlapList of(Estimator.Attempt attempt, Onsets onsets, Request request, double frameS) {
    List<String> warnings = new ArrayList<>();
    Motion motion = attempt.motion();
    Heard laid = attempt.heard();
    Heard heard = null;
    if (laid != null) {
      if (laid.trusted()) {
        heard = laid;
      } else if (laid.agreement() < NOTHING_HEARD && onsets.clear().size() < motion.size() / 3) {
        return new SlapList(
            List.of(),
            Beats.of(List.of()),
            null,
            List.of(
                "A hand turns to and fro, but no contact can be heard where the room is quiet: no"
                    + " slaps are given. Use the motion alone if the microphone was off."));
      } else {
        warnings.add(laid.why());
      }
    }
    List<EstimatedSlap> slaps = new ArrayList<>();
    for (int j = 0; j < motion.size(); j++) {
      slaps.add(slap(motion, heard, j, request.realPerMediaS(), frameS));
    }
    Beats beats = Beats.of(contacts(motion, slaps, request.realPerMediaS()));
    List<EstimatedSlap> named = named(slaps, motion, request, warnings);
    return new SlapList(named, beats, heard == null ? null : heard.offsetS(), warnings);
  }

  private static EstimatedSlap slap(
      Motion motion, @Nullable Heard heard, int j, double realPerMediaS, double frameS) {
    double pictureS = motion.stops().pictureS()[j];
    Onset onset = heard == null ? null : heard.onsets().get(j);
    double off = onset == null || heard == null ? 0 : onset.timeS() - heard.offsetS() - pictureS;
    Set<Source> sources = EnumSet.of(Source.MOTION);
    if (onset != null) {
      sources.add(Source.SOUND);
    }
    boolean isDouble = j > 0 && motion.turns().noTurn()[j - 1];
    Contacts contacts = motion.contacts();
    double confidence =
        STRENGTH_SHARE * Math.min(1, motion.stops().strengths()[j])
            + (onset == null ? 0 : HEARD_SHARE * Math.exp(-0.5 * off * off / (LIKELY_S * LIKELY_S)))
            + HALF_SHARE * Math.min(1, contacts.lead() / 2)
            + REGULAR_SHARE * contacts.regularity();
    return new EstimatedSlap(
        onset == null || heard == null ? pictureS / realPerMediaS : onset.timeS() - heard.offsetS(),
        onset == null ? TimedBy.MOTION : TimedBy.SOUND,
        onset == null ? frameS : Onsets.ONSET_SD_S,
        motion.turns().poses()[j],
        Side.UNKNOWN,
        motion.turns().confidences()[j],
        Zone.UNKNOWN,
        0,
        isDouble,
        sources,
        Math.max(0, Math.min(1, confidence)),
        pictureS / realPerMediaS,
        onset == null ? null : onset.timeS(),
        why(heard, onset, off));
  }

  private static String why(@Nullable Heard heard, @Nullable Onset onset, double off) {
    if (heard != null && onset == null) {
      return "seen, not heard";
    }
    return Math.abs(off) > ODD_S
        ? String.format(Locale.ROOT, "sound and picture are %.0f ms apart", 1000 * Math.abs(off))
        : "";
  }

  private static List<Beats.Contact> contacts(
      Motion motion, List<EstimatedSlap> slaps, double realPerMediaS) {
    List<Beats.Contact> contacts = new ArrayList<>();
    int pose = 0;
    for (EstimatedSlap slap : slaps) {
      double frame = motion.contacts().motion().footage().medianFrameS();
      double pictureS = slap.pictureS() == null ? slap.timeS() : slap.pictureS();
      contacts.add(
          new Beats.Contact(
              slap.timeS() * realPerMediaS,
              pictureS * realPerMediaS,
              frame * frame / 12,
              slap.soundS(),
              Onsets.ONSET_SD_S * Onsets.ONSET_SD_S,
              pose != 0 && slap.pose() != pose,
              slap.isDouble()));
      pose = slap.isDouble() ? pose : slap.pose();
    }
    return contacts;
  }

  /** Names palm and back if one slap's side is known; else says that it is open which is which. */
  private static List<EstimatedSlap> named(
      List<EstimatedSlap> slaps, Motion motion, Request request, List<String> warnings) {
    KnownSide known = request.known();
    if (known == null) {
      warnings.add("Which slaps are palm and which are back is open: name the side of one.");
      return slaps;
    }
    EstimatedSlap nearest = slaps.get(0);
    for (EstimatedSlap slap : slaps) {
      if (Math.abs(slap.timeS() - known.timeS()) < Math.abs(nearest.timeS() - known.timeS())) {
        nearest = slap;
      }
    }
    double typicalS = Robust.median(motion.poses().intervals()) / request.realPerMediaS();
    if (Math.abs(nearest.timeS() - known.timeS()) > SNAP * typicalS) {
      warnings.add(
          String.format(
              Locale.ROOT,
              "No slap was found near the known one at %.3f s: which are palm and which are back"
                  + " is open.",
              known.timeS()));
      return slaps;
    }
    int palmPose = known.side() == Side.PALM ? nearest.pose() : -nearest.pose();
    return slaps.stream()
        .map(slap -> slap.withSide(slap.pose() == palmPose ? Side.PALM : Side.BACK))
        .toList();
  }
}
