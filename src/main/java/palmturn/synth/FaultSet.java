package palmturn.synth;

import static palmturn.synth.Parameters.FaultKind.EDGE;
import static palmturn.synth.Parameters.FaultKind.FINGERS;
import static palmturn.synth.Parameters.FaultKind.WRIST;
import static palmturn.synth.Parameters.StretchKind.BENT_WRIST;
import static palmturn.synth.Parameters.StretchKind.ELBOW_OUT;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import palmturn.trial.Hand;

/**
 * Clips to measure on what an estimate says of where the hand came down, of the wrist and of the
 * elbow: each fault on both sides of both hands, in wide and in upright pictures.
 */
public final class FaultSet {
  private static final List<Named> CLIPS =
      List.of(
          clip(Hand.RIGHT, 4.0, false, 1, SoundKind.SLAPS, off(4, 3, 8, 13)),
          clip(Hand.LEFT, 4.0, false, 2, SoundKind.SLAPS, off(4, 2, 7, 12)),
          clip(Hand.RIGHT, 4.5, true, 3, SoundKind.SLAPS, off(4.5, 2, 6, 11, 15)),
          clip(Hand.LEFT, 4.5, true, 4, SoundKind.NONE, off(4.5, 3, 7, 10, 14)),
          clip(Hand.RIGHT, 5.0, false, 5, SoundKind.NONE, off(5, 3, 4), bent(1.6, 3.2, 45)),
          clip(Hand.LEFT, 5.0, false, 6, SoundKind.SLAPS, off(5, 15, 16), bent(0.8, 2.4, 35)),
          clip(Hand.RIGHT, 3.5, true, 7, SoundKind.SLAPS, off(3.5, 2, 3), bent(1.6, 3.4, 25)),
          clip(Hand.LEFT, 3.5, true, 8, SoundKind.SLAPS, off(3.5, 10, 11), bent(0.6, 2.4, 50)),
          clip(Hand.RIGHT, 4.0, true, 9, SoundKind.SLAPS, off(4, 2, 12), out(1.1, 2.6, 5)),
          clip(Hand.LEFT, 4.0, false, 10, SoundKind.SLAPS, off(4, 3, 13), out(1.2, 2.8, 6)));

  private FaultSet() {}

  /** Returns the clips. */
  public static List<Named> clips() {
    return CLIPS;
  }

  /** Plants three off-centre slaps from each slap on: a fingers, a wrist and an edge, in turn. */
  private static List<Parameters.Fault> off(double rate, int... slaps) {
    List<Parameters.Fault> faults = new ArrayList<>();
    for (int i = 0; i < slaps.length; i++) {
      Parameters.FaultKind[] kinds = {FINGERS, WRIST, EDGE};
      for (int k = 0; k < kinds.length; k++) {
        faults.add(new Parameters.Fault(kinds[(i + k) % kinds.length], (slaps[i] + k) / rate));
      }
    }
    return faults;
  }

  private static Parameters.Stretch bent(double fromS, double toS, double deg) {
    return new Parameters.Stretch(BENT_WRIST, fromS, toS, deg);
  }

  private static Parameters.Stretch out(double fromS, double toS, double cm) {
    return new Parameters.Stretch(ELBOW_OUT, fromS, toS, cm);
  }

  private static Named clip(
      Hand hand,
      double rate,
      boolean upright,
      long seed,
      SoundKind sound,
      List<Parameters.Fault> faults,
      Parameters.Stretch... stretches) {
    String what =
        stretches.length == 0
            ? "zones"
            : stretches[0].kind().name().toLowerCase(Locale.ROOT).replace('_', '-');
    String name = "%s-%s-%s-%d".formatted(what, hand.code(), upright ? "upright" : "wide", seed);
    Filming filming = new Filming(60, upright ? 480 : 640, upright ? 640 : 480, 0.5, 0);
    return new Named(
        name,
        new Parameters(
            Shown.SLAPS,
            hand,
            new Parameters.Tempo(rate, 4, 3, 0),
            faults,
            List.of(stretches),
            filming,
            sound,
            new Parameters.Length(0.7, 4.2, 0.6),
            seed));
  }
}
