package palmturn.app.estimate;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Curve;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Extra;
import palmturn.trial.Side;
import palmturn.trial.TimedBy;
import palmturn.trial.Zone;

/** Invented estimates. */
public final class MadeEstimates {
  private MadeEstimates() {}

  /** Returns four contacts, twelve sixtieths of a second apart, whose sides only alternate. */
  public static Estimate fourSlaps() {
    List<EstimatedSlap> slaps = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      slaps.add(
          new EstimatedSlap(
              12 * (i + 1) / 60.0,
              TimedBy.MOTION,
              1 / 60.0,
              i % 2 == 0 ? 1 : -1,
              Side.UNKNOWN,
              0.9,
              Zone.UNKNOWN,
              0,
              false,
              Set.of(Estimate.Source.MOTION),
              0.9,
              12 * (i + 1) / 60.0,
              null,
              ""));
    }
    return of(slaps, null);
  }

  /** Returns an estimate of some contacts and an elbow. */
  public static Estimate of(List<EstimatedSlap> slaps, @Nullable ElbowPath elbow) {
    return of(slaps, elbow, List.of());
  }

  /** Returns an estimate of a clip with several stretches of slapping. */
  public static Estimate withBursts(List<Estimate.Burst> bursts) {
    return of(List.of(), null, bursts);
  }

  private static Estimate of(
      List<EstimatedSlap> slaps, @Nullable ElbowPath elbow, List<Estimate.Burst> bursts) {
    return new Estimate(
        "0".repeat(64),
        Set.of(Estimate.Source.MOTION),
        60,
        false,
        null,
        true,
        slaps,
        5.0,
        null,
        null,
        new Estimate.Rotation(2.5, Curve.EMPTY, null, null),
        Curve.EMPTY,
        Curve.EMPTY,
        elbow,
        null,
        new Estimate.Region(100, 50, 40, 30),
        List.of(),
        bursts,
        0.012,
        List.of(),
        Extra.NONE);
  }
}
