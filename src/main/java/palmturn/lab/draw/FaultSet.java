package palmturn.lab.draw;

import static palmturn.lab.draw.ClipParameters.FaultKind.EDGE;
import static palmturn.lab.draw.ClipParameters.FaultKind.FINGERS;
import static palmturn.lab.draw.ClipParameters.FaultKind.WRIST;
import static palmturn.lab.draw.ClipParameters.StretchKind.BENT_WRIST;
import static palmturn.lab.draw.ClipParameters.StretchKind.ELBOW_OUT;
import static palmturn.lab.draw.ClipParameters.StretchKind.SHORT_TURN;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import palmturn.trial.Hand;

/**
 * Clips to measure on what an estimate says of where the hand came down, of the wrist, of the elbow
 * and of the turn: each fault on both sides of both hands, in wide and in upright pictures.
 */
public final class FaultSet {
  /** Long enough for a stretch of faults with clean slaps before and after it. */
  private static final double SLAPPING_S = 4.2;

  private static final List<ClipParameters.Fault> NONE = List.of();

  private static final List<NamedClip> CLIPS =
      List.of(
          clip(Hand.RIGHT, 4.0, false, 1, SoundKind.SLAPS, off(4, 3, 8, 13)),
          clip(Hand.LEFT, 4.0, false, 2, SoundKind.SLAPS, off(4, 2, 7, 12)),
          clip(Hand.RIGHT, 4.5, true, 3, SoundKind.SLAPS, off(4.5, 2, 6, 11, 15)),
          clip(Hand.LEFT, 4.5, true, 4, SoundKind.NONE, off(4.5, 3, 7, 10, 14)),
          clip(Hand.RIGHT, 5.0, false, 5, SoundKind.NONE, off(5, 3, 4), bent(1.6, 3.2, 45)),
          clip(Hand.LEFT, 5.0, false, 6, SoundKind.SLAPS, off(5, 15, 16), bent(0.8, 2.4, 35)),
          clip(Hand.RIGHT, 3.5, true, 7, SoundKind.SLAPS, off(3.5, 2, 3), bent(1.6, 3.4, 25)),
          clip(Hand.LEFT, 3.5, true, 8, SoundKind.SLAPS, off(3.5, 10, 11), bent(0.6, 2.4, 50)),
          clip(Hand.RIGHT, 4.0, true, 9, SoundKind.SLAPS, off(4, 2, 12), out(1.1, 2.6, 7)),
          clip(Hand.LEFT, 4.0, false, 10, SoundKind.SLAPS, off(4, 3, 13), out(1.2, 2.8, 8)),
          clip(Hand.RIGHT, 5.0, false, 11, SoundKind.SLAPS, NONE, shortFrom(2.6, 40)),
          clip(
              Hand.LEFT,
              4.5,
              false,
              12,
              SoundKind.SLAPS,
              NONE,
              shortFrom(1.3, 20),
              shortFrom(2.7, 25)),
          clip(Hand.RIGHT, 4.0, true, 13, SoundKind.SLAPS, NONE, shortFrom(-0.5, 40)),
          clip(Hand.LEFT, 5.0, true, 14, SoundKind.SLAPS, NONE, shortFrom(2.6, 20)),
          clip(Hand.RIGHT, 4.5, true, 15, SoundKind.NONE, NONE, shortFrom(2.6, 60)),
          clip(Hand.LEFT, 5.5, false, 16, SoundKind.SLAPS, NONE, shortFrom(4.5, 0)));

  private FaultSet() {}

  /** Returns the clips. */
  public static List<NamedClip> clips() {
    return CLIPS;
  }

  /** Plants three off-centre slaps from each slap on: a fingers, a wrist and an edge, in turn. */
  private static List<ClipParameters.Fault> off(double rate, int... slaps) {
    List<ClipParameters.Fault> faults = new ArrayList<>();
    for (int i = 0; i < slaps.length; i++) {
      ClipParameters.FaultKind[] kinds = {FINGERS, WRIST, EDGE};
      for (int k = 0; k < kinds.length; k++) {
        faults.add(new ClipParameters.Fault(kinds[(i + k) % kinds.length], (slaps[i] + k) / rate));
      }
    }
    return faults;
  }

  private static ClipParameters.FaultStretch bent(double fromS, double toS, double deg) {
    return new ClipParameters.FaultStretch(BENT_WRIST, fromS, toS, deg);
  }

  private static ClipParameters.FaultStretch out(double fromS, double toS, double cm) {
    return new ClipParameters.FaultStretch(ELBOW_OUT, fromS, toS, cm);
  }

  /** Turns that fall short from a moment to the end. */
  private static ClipParameters.FaultStretch shortFrom(double fromS, double deg) {
    return new ClipParameters.FaultStretch(SHORT_TURN, fromS, SLAPPING_S + 0.4, deg);
  }

  private static NamedClip clip(
      Hand hand,
      double rate,
      boolean upright,
      long seed,
      SoundKind sound,
      List<ClipParameters.Fault> faults,
      ClipParameters.FaultStretch... stretches) {
    String what =
        stretches.length == 0
            ? "zones"
            : stretches[0].kind().name().toLowerCase(Locale.ROOT).replace('_', '-');
    String name =
        String.format(
            Locale.ROOT, "%s-%s-%s-%d", what, hand.code(), upright ? "upright" : "wide", seed);
    Filming filming = new Filming(60, upright ? 480 : 640, upright ? 640 : 480, 0.5, 0);
    return new NamedClip(
        name,
        new ClipParameters(
            ClipContent.SLAPS,
            hand,
            new ClipParameters.Tempo(rate, 4, 3, 0),
            faults,
            List.of(stretches),
            filming,
            sound,
            new ClipParameters.Length(0.7, SLAPPING_S, 0.6),
            seed));
  }
}
