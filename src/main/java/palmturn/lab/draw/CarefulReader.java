package palmturn.lab.draw;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import palmturn.trial.Extra;
import palmturn.trial.Reading;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.StartedFrom;
import palmturn.trial.TimedBy;
import palmturn.trial.Zone;

/** An invented reader who marks a drawn clip with care: nearly all of the truth, a little off. */
public final class CarefulReader {
  /** Placing a mark on a waveform at full zoom scatters about so much. */
  private static final double SOUND_SD_S = 0.0007;

  /** The resolution stated for marks by sound. */
  private static final double SOUND_RESOLUTION_S = 0.001;

  /** Share of off-centre slaps marked as on the centre: few, as by an attentive reader. */
  private static final double OVERLOOKED = 0.05;

  /** About two frames at 60 frames a second. */
  private static final double SPAN_SD_S = 0.03;

  private CarefulReader() {}

  /** Returns the reader's marks; the same truth and seed give the same ones. */
  public static Reading read(Truth truth, String reader, long seed) {
    Random random = new Random(seed);
    List<Slap> slaps = new ArrayList<>();
    int contacts = truth.contacts().size();
    // At most one mark by picture, so that the series by sound stays whole enough.
    int byPicture = random.nextInt(Math.max(1, 2 * contacts));
    for (int i = 0; i < contacts; i++) {
      Contact contact = truth.contacts().get(i);
      double error = Math.max(-2.5, Math.min(2.5, random.nextGaussian())) * SOUND_SD_S;
      boolean overlooked = random.nextDouble() < OVERLOOKED && contact.zone().offCentre();
      boolean heard = truth.parameters().sound().hasTrack() && contact.kind() != Slap.Kind.MISSED;
      boolean picture = i == byPicture || !heard;
      slaps.add(mark(truth, contact, picture, error, overlooked));
    }
    List<Span> spans = new ArrayList<>();
    for (Span span : truth.spans()) {
      double start = rounded(span.startS() + SPAN_SD_S * random.nextGaussian());
      double end = rounded(span.endS() + SPAN_SD_S * random.nextGaussian());
      spans.add(new Span(span.kind(), start, Math.max(end, start + 0.1), "", Extra.NONE));
    }
    return new Reading(reader, true, StartedFrom.NOTHING, slaps, spans, Extra.NONE);
  }

  private static Slap mark(
      Truth truth, Contact contact, boolean picture, double errorS, boolean overlooked) {
    Zone zone = overlooked ? Zone.CENTRE : contact.zone();
    if (picture) {
      double[] shownS = truth.frameTimesS();
      int frame = 1;
      while (frame + 1 < shownS.length && shownS[frame] < contact.timeS() - 1e-9) {
        frame++;
      }
      double resolutionS = rounded(shownS[frame] - shownS[frame - 1]);
      return Slap.onFrame(
          contact.kind(), rounded(shownS[frame]), resolutionS, contact.side(), zone);
    }
    double heard = rounded(contact.timeS() + errorS);
    return new Slap(
        contact.kind(),
        heard,
        contact.side(),
        zone,
        TimedBy.SOUND,
        SOUND_RESOLUTION_S,
        null,
        rounded(heard + truth.soundDelayS()),
        true,
        "",
        Extra.NONE);
  }

  private static double rounded(double seconds) {
    return Math.rint(seconds * 1e5) / 1e5;
  }
}
