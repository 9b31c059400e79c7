package palmturn.estimate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import palmturn.clip.FrameTable;
import palmturn.estimate.hands.ShapeEvidence;
import palmturn.estimate.motion.Contacts;
import palmturn.estimate.motion.Motion;
import palmturn.estimate.request.KnownSide;
import palmturn.estimate.request.Request;
import palmturn.estimate.sound.Onset;
import palmturn.estimate.sound.SoundMatch;
import palmturn.numbers.Robust;
import palmturn.trial.Estimate.Source;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.EstimatedSlap.EstimatedSide;
import palmturn.trial.EstimatedSlap.EstimatedZone;
import palmturn.trial.EstimatedSlap.Timing;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.TimedBy;

/**
 * One list of contacts from motion and sound, each with its evidence.
 *
 * @param slaps in media seconds, on the picture's clock
 * @param beats the figures of the list
 * @param soundOffsetS how much later the sound is, null where it was not used
 * @param warnings sentences for the reader
 */
record SlapList(
    List<EstimatedSlap> slaps, Beats beats, @Nullable Double soundOffsetS, List<String> warnings) {
  /**
   * Shares of a confidence: how hard the stop is, how well its sound fits, how clearly the half of
   * the cycle is settled, how even the beat is. Palmturn's choice; they add up to 1.
   */
  private static final double STRENGTH_SHARE = 0.4;

  private static final double HEARD_SHARE = 0.3;
  private static final double HALF_SHARE = 0.2;
  private static final double REGULAR_SHARE = 0.1;

  /** Usual distance of a contact's sound from its place, the offset taken out; from drawn clips. */
  private static final double LIKELY_S = 0.01;

  /** From this distance of sound and picture on, a doubt is noted: Palmturn's choice. */
  private static final double ODD_S = 0.012;

  /**
   * A known side belongs to the nearest contact within this share of the median interval, so that
   * it can't be the neighbour's.
   */
  private static final double SNAP = 0.4;

  /**
   * Puts the sources together.
   *
   * @param frames of the clip: a contact seen between two of them is known to their distance
   */
  static SlapList of(MotionCandidate candidate, Request request, FrameTable frames) {
    List<String> warnings = new ArrayList<>();
    Motion motion = candidate.motion();
    SoundMatch laid = candidate.sound();
    SoundMatch heard = null;
    if (laid != null) {
      if (laid.trusted()) {
        heard = laid;
      } else {
        warnings.add(laid.rejection());
      }
    }
    List<EstimatedSlap> slaps = new ArrayList<>();
    for (int j = 0; j < motion.size(); j++) {
      slaps.add(slap(motion, heard, j, request.realPerMediaS(), frames));
    }
    Beats beats = Beats.of(contacts(slaps, frames, request.realPerMediaS()));
    return new SlapList(slaps, beats, heard == null ? null : heard.offsetS(), warnings);
  }

  /** Returns the list with what the hand's shape says of each contact. */
  SlapList withShape(ShapeEvidence shape, FrameTable frames, double realPerMediaS) {
    List<EstimatedSlap> told = shape.addTo(slaps);
    return new SlapList(
        told, Beats.of(contacts(told, frames, realPerMediaS)), soundOffsetS, warnings);
  }

  private static EstimatedSlap slap(
      Motion motion, @Nullable SoundMatch heard, int j, double realPerMediaS, FrameTable frames) {
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
    double mediaS = pictureS / realPerMediaS;
    return new EstimatedSlap(
        onset == null || heard == null
            ? Timing.seen(mediaS, frames.spacingAtS(mediaS))
            : new Timing(
                onset.timeS() - heard.offsetS(),
                TimedBy.SOUND,
                Slap.SOUND_SD_S,
                mediaS,
                onset.timeS()),
        EstimatedSide.of(motion.turns().poses()[j], motion.turns().confidences()[j]),
        EstimatedZone.UNKNOWN,
        isDouble,
        sources,
        Math.max(0, Math.min(1, confidence)),
        why(heard, onset, off));
  }

  private static String why(@Nullable SoundMatch heard, @Nullable Onset onset, double off) {
    if (heard != null && onset == null) {
      return "seen, not heard";
    }
    return Math.abs(off) > ODD_S
        ? String.format(Locale.ROOT, "sound and picture are %.0f ms apart", 1000 * Math.abs(off))
        : "";
  }

  private static List<Beats.Contact> contacts(
      List<EstimatedSlap> slaps, FrameTable frames, double realPerMediaS) {
    List<Beats.Contact> contacts = new ArrayList<>();
    int pose = 0;
    for (EstimatedSlap slap : slaps) {
      double pictureS = slap.pictureS() == null ? slap.timeS() : slap.pictureS();
      double frame = frames.spacingAtS(pictureS) * realPerMediaS;
      contacts.add(
          new Beats.Contact(
              slap.timeS() * realPerMediaS,
              pictureS * realPerMediaS,
              frame * frame / 12,
              slap.soundS(),
              Slap.SOUND_SD_S * Slap.SOUND_SD_S,
              pose != 0 && slap.pose() != pose,
              slap.isDouble()));
      pose = slap.isDouble() ? pose : slap.pose();
    }
    return contacts;
  }

  /** Returns whether a slap was found where one is known to be. */
  boolean hasSlapNear(KnownSide known) {
    double[] intervalsS =
        IntStream.range(1, slaps.size())
            .mapToDouble(i -> slaps.get(i).timeS() - slaps.get(i - 1).timeS())
            .toArray();
    double nearS = SNAP * Robust.median(intervalsS);
    return slaps.stream().anyMatch(slap -> Math.abs(slap.timeS() - known.timeS()) <= nearS);
  }

  /** Returns whether the slap nearest to a known one was given the other side. */
  boolean contradicts(KnownSide known) {
    Side side =
        slaps.stream()
            .min(Comparator.comparingDouble(slap -> Math.abs(slap.timeS() - known.timeS())))
            .map(EstimatedSlap::side)
            .orElse(Side.UNKNOWN);
    return side != Side.UNKNOWN && side != known.side();
  }
}
