package palmturn.lab.draw;

import static palmturn.lab.draw.ClipParameters.FaultKind.DOUBLE;
import static palmturn.lab.draw.ClipParameters.FaultKind.EDGE;
import static palmturn.lab.draw.ClipParameters.FaultKind.FINGERS;
import static palmturn.lab.draw.ClipParameters.FaultKind.PART_TURN;
import static palmturn.lab.draw.ClipParameters.FaultKind.WRIST;
import static palmturn.lab.draw.ClipParameters.StretchKind.BENT_WRIST;
import static palmturn.lab.draw.ClipParameters.StretchKind.ELBOW_OUT;

import java.util.ArrayList;
import java.util.List;
import palmturn.trial.Hand;

/**
 * One invented session of twelve trials: both hands, then both again after a drill of the left. The
 * left hand is slower, less even and off-centre late in the trial; the drill helps it to the
 * middle.
 */
public final class DemoSet {
  /** The clips that have a second reader's marks too. */
  static final List<String> READ_TWICE = List.of("right-baseline-1", "left-baseline-1");

  /** An arbitrary seed; the bundled marks were drawn with this one. */
  static final long SECOND_READER_SEED = 7;

  private DemoSet() {}

  /** Returns the clips in the order they are told to have been filmed in: right, left, in turn. */
  public static List<NamedClip> clips() {
    List<NamedClip> all = new ArrayList<>();
    all.add(
        clip(
            "right-baseline-1",
            5.15,
            5.0,
            3,
            0.9,
            at(FINGERS, 1.9),
            at(DOUBLE, 3.2),
            at(FINGERS, 4.3)));
    all.add(
        clip(
            "left-baseline-1",
            4.45,
            8.2,
            7,
            2.1,
            at(FINGERS, 0.9),
            at(FINGERS, 2.1),
            at(EDGE, 2.75),
            at(DOUBLE, 3.1),
            at(FINGERS, 3.6),
            at(WRIST, 4.1),
            at(FINGERS, 4.6)));
    all.add(
        clip(
            "right-baseline-2",
            5.05,
            5.4,
            2,
            1.4,
            at(FINGERS, 1.2),
            at(EDGE, 2.8),
            at(WRIST, 4.0),
            at(DOUBLE, 4.6)));
    all.add(
        with(
            clip(
                "left-baseline-2",
                4.3,
                8.6,
                8,
                2.6,
                at(FINGERS, 1.4),
                at(PART_TURN, 2.0),
                at(FINGERS, 2.9),
                at(EDGE, 3.45)),
            new ClipParameters.FaultStretch(ELBOW_OUT, 3.6, 4.9, 8.5)));
    all.add(
        clip(
            "right-baseline-3",
            5.25,
            4.8,
            3,
            1.1,
            at(FINGERS, 2.4),
            at(FINGERS, 3.9),
            at(EDGE, 4.7)));
    all.add(
        with(
            clip(
                "left-baseline-3",
                4.5,
                7.8,
                6,
                2.3,
                at(FINGERS, 1.1),
                at(DOUBLE, 1.7),
                at(FINGERS, 3.8),
                at(WRIST, 4.25),
                at(FINGERS, 4.7)),
            new ClipParameters.FaultStretch(BENT_WRIST, 2.1, 3.3, 36)));
    all.add(
        clip(
            "right-after-1-1",
            5.2,
            5.1,
            3,
            1.0,
            at(FINGERS, 2.2),
            at(WRIST, 3.4),
            at(FINGERS, 4.4)));
    all.add(clip("left-after-1-1", 4.75, 6.5, 5, 1.5, at(EDGE, 3.0)));
    all.add(
        clip(
            "right-after-1-2",
            5.1,
            5.3,
            2,
            1.3,
            at(FINGERS, 1.5),
            at(DOUBLE, 2.6),
            at(EDGE, 3.7),
            at(FINGERS, 4.5)));
    all.add(
        with(
            clip("left-after-1-2", 4.4, 6.9, 5, 1.8, at(FINGERS, 1.2)),
            new ClipParameters.FaultStretch(ELBOW_OUT, 3.3, 3.7, 7.5)));
    all.add(clip("right-after-1-3", 5.25, 4.9, 3, 0.8, at(FINGERS, 2.9), at(FINGERS, 4.1)));
    all.add(clip("left-after-1-3", 4.65, 6.3, 5, 1.4, at(DOUBLE, 2.4), at(FINGERS, 4.2)));
    return List.copyOf(all);
  }

  private static ClipParameters.Fault at(ClipParameters.FaultKind kind, double atS) {
    return new ClipParameters.Fault(kind, atS);
  }

  private static NamedClip clip(
      String name,
      double rate,
      double cvPct,
      double biasPct,
      double slowPct,
      ClipParameters.Fault... faults) {
    Hand hand = name.startsWith("right") ? Hand.RIGHT : Hand.LEFT;
    ClipParameters parameters =
        new ClipParameters(
            ClipContent.SLAPS,
            hand,
            new ClipParameters.Tempo(rate, cvPct, biasPct, slowPct),
            List.of(faults),
            List.of(),
            new Filming(60, 640, 480, 0.5, 0),
            SoundKind.SLAPS,
            new ClipParameters.Length(0.95, 5.15, 0.9),
            Math.abs(name.hashCode()) % 100_000);
    return new NamedClip(name, parameters);
  }

  private static NamedClip with(NamedClip named, ClipParameters.FaultStretch stretch) {
    return new NamedClip(named.name(), named.parameters().with(stretch));
  }
}
