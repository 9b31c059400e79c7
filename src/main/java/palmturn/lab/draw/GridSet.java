package palmturn.lab.draw;

import static palmturn.lab.draw.ClipContent.NOBODY;
import static palmturn.lab.draw.ClipContent.STILL;
import static palmturn.lab.draw.ClipContent.TURNING;
import static palmturn.lab.draw.GridSet.Orientation.UPRIGHT;
import static palmturn.lab.draw.GridSet.Orientation.WIDE;
import static palmturn.lab.draw.SoundKind.METRONOME;
import static palmturn.lab.draw.SoundKind.NONE;
import static palmturn.lab.draw.SoundKind.SLAPS;
import static palmturn.lab.draw.SoundKind.TALK;
import static palmturn.trial.Hand.LEFT;
import static palmturn.trial.Hand.RIGHT;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import palmturn.trial.Hand;

/**
 * Clips to measure the estimate on. Not every combination is there: each level of each factor is
 * there at least three times and nearly every pair of levels once, with the worst corners.
 */
public final class GridSet {
  /** The phone's orientation, with the size of its picture in pixels. */
  enum Orientation {
    WIDE(640, 360),
    UPRIGHT(360, 640);

    private final int width;
    private final int height;

    Orientation(int width, int height) {
      this.width = width;
      this.height = height;
    }
  }

  /** Short stillness and short trials: many clips have to be drawn and measured. */
  private static final double LEAD_IN_S = 0.7;

  private static final double SLAPPING_S = 3.4;
  private static final double IDLE_S = 2.4;
  private static final double TAIL_S = 0.6;

  private static final List<NamedClip> CLIPS =
      List.of(
          // hand, slaps/s, CV %, frames/s, held, shake px, share dropped, sound, doubles, elbow cm
          slapClip(RIGHT, 5, 5, 60, WIDE, 1, 0, SLAPS, 4, 0),
          slapClip(LEFT, 5, 10, 60, WIDE, 1, 0, NONE, 4, 0),
          slapClip(RIGHT, 8, 15, 30, UPRIGHT, 4, 0.25, NONE, 0, 0),
          slapClip(LEFT, 6, 15, 30, WIDE, 4, 0.25, NONE, 4, 0),
          slapClip(RIGHT, 8, 10, 120, UPRIGHT, 4, 0.25, METRONOME, 2, 0),
          slapClip(LEFT, 2, 15, 60, UPRIGHT, 4, 0, TALK, 2, 5),
          idleClip(TURNING, RIGHT, 3, 60, WIDE, 1, 0, METRONOME),
          idleClip(STILL, LEFT, 5, 60, WIDE, 1, 0, SLAPS),
          idleClip(NOBODY, RIGHT, 5, 60, WIDE, 4, 0, TALK),
          idleClip(TURNING, LEFT, 5, 60, UPRIGHT, 1, 0, NONE),
          slapClip(LEFT, 2, 10, 60, UPRIGHT, 0, 0.25, SLAPS, 2, 0),
          slapClip(LEFT, 4, 15, 60, WIDE, 4, 0, METRONOME, 0, 5),
          slapClip(LEFT, 5, 2, 30, WIDE, 4, 0.25, TALK, 4, 5),
          slapClip(RIGHT, 5, 15, 120, UPRIGHT, 0, 0, SLAPS, 4, 0),
          slapClip(RIGHT, 3, 15, 120, WIDE, 1, 0, SLAPS, 4, 0),
          slapClip(LEFT, 8, 2, 120, WIDE, 1, 0, TALK, 0, 0),
          slapClip(LEFT, 4, 5, 120, WIDE, 0, 0.25, NONE, 4, 0),
          slapClip(RIGHT, 3, 2, 30, UPRIGHT, 0, 0, METRONOME, 2, 0),
          slapClip(RIGHT, 7, 5, 120, WIDE, 0, 0, SLAPS, 2, 0),
          slapClip(LEFT, 2, 2, 120, WIDE, 1, 0, NONE, 2, 0),
          slapClip(RIGHT, 4, 10, 30, WIDE, 1, 0, SLAPS, 4, 0),
          slapClip(RIGHT, 6, 5, 60, UPRIGHT, 1, 0, METRONOME, 4, 5),
          slapClip(LEFT, 7, 2, 30, WIDE, 4, 0.25, SLAPS, 0, 0),
          slapClip(LEFT, 7, 15, 30, WIDE, 1, 0, METRONOME, 0, 0),
          slapClip(RIGHT, 3, 10, 60, UPRIGHT, 1, 0.25, SLAPS, 4, 0),
          slapClip(RIGHT, 2, 5, 30, WIDE, 1, 0, METRONOME, 0, 0),
          slapClip(LEFT, 3, 5, 30, WIDE, 4, 0, TALK, 4, 0),
          slapClip(LEFT, 6, 10, 60, WIDE, 0, 0, TALK, 4, 0),
          slapClip(LEFT, 6, 2, 120, WIDE, 1, 0, SLAPS, 4, 0),
          slapClip(RIGHT, 7, 10, 60, UPRIGHT, 0, 0, NONE, 0, 5),
          slapClip(RIGHT, 8, 5, 60, WIDE, 0, 0, SLAPS, 0, 5),
          slapClip(RIGHT, 4, 2, 60, UPRIGHT, 0, 0, TALK, 4, 0),
          idleClip(TURNING, LEFT, 1, 30, WIDE, 4, 0.25, TALK),
          idleClip(STILL, RIGHT, 5, 30, UPRIGHT, 4, 0.25, METRONOME),
          idleClip(STILL, RIGHT, 5, 120, WIDE, 0, 0, TALK),
          idleClip(NOBODY, RIGHT, 5, 30, UPRIGHT, 1, 0.25, METRONOME),
          idleClip(NOBODY, RIGHT, 5, 120, WIDE, 0, 0, NONE));

  private GridSet() {}

  /** Returns the clips, the most telling first. */
  public static List<NamedClip> clips() {
    return CLIPS;
  }

  private static NamedClip slapClip(
      Hand hand,
      int rate,
      int cvPct,
      int fps,
      Orientation held,
      int shakePx,
      double drop,
      SoundKind sound,
      int doubles,
      int elbowCm) {
    String name =
        String.format(
            Locale.ROOT,
            "%ds-cv%d-%s-d%d-e%d",
            rate,
            cvPct,
            filmingName(hand, fps, held, shakePx, drop, sound),
            doubles,
            elbowCm);
    List<ClipParameters.Fault> faults = new ArrayList<>();
    for (int i = 1; i <= doubles; i++) {
      double at = SLAPPING_S * i / (doubles + 1);
      faults.add(new ClipParameters.Fault(ClipParameters.FaultKind.DOUBLE, at));
    }
    ClipParameters.StretchKind out = ClipParameters.StretchKind.ELBOW_OUT;
    List<ClipParameters.FaultStretch> stretches =
        elbowCm == 0 ? List.of() : List.of(new ClipParameters.FaultStretch(out, 1.2, 2.6, elbowCm));
    return new NamedClip(
        name,
        new ClipParameters(
            ClipContent.SLAPS,
            hand,
            new ClipParameters.Tempo(rate, cvPct, 4, 1),
            faults,
            stretches,
            new Filming(fps, held.width, held.height, shakePx, drop),
            sound,
            new ClipParameters.Length(LEAD_IN_S, SLAPPING_S, TAIL_S),
            seed(name)));
  }

  private static NamedClip idleClip(
      ClipContent shown,
      Hand hand,
      int rate,
      int fps,
      Orientation held,
      int shakePx,
      double drop,
      SoundKind sound) {
    String name =
        String.format(
            Locale.ROOT,
            "%s-%ds-%s",
            shown.name().toLowerCase(Locale.ROOT),
            rate,
            filmingName(hand, fps, held, shakePx, drop, sound));
    return new NamedClip(
        name,
        new ClipParameters(
            shown,
            hand,
            new ClipParameters.Tempo(rate, 0, 0, 0),
            List.of(),
            List.of(),
            new Filming(fps, held.width, held.height, shakePx, drop),
            sound,
            new ClipParameters.Length(LEAD_IN_S, IDLE_S, TAIL_S),
            seed(name)));
  }

  private static String filmingName(
      Hand hand, int fps, Orientation held, int shakePx, double drop, SoundKind sound) {
    return String.format(
        Locale.ROOT,
        "%s-%dfps-%s-shake%d-drop%.0f-%s",
        hand.code(),
        fps,
        held.name().toLowerCase(Locale.ROOT),
        shakePx,
        100 * drop,
        sound.name().toLowerCase(Locale.ROOT));
  }

  private static long seed(String name) {
    return Math.abs(name.hashCode()) % 100_000;
  }
}
