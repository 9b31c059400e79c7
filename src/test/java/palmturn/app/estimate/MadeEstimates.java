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

/** Invented estimates. */
public final class MadeEstimates {
  private MadeEstimates() {}

  /** Returns four contacts, twelve sixtieths of a second apart, whose sides only alternate. */
  public static Estimate fourSlaps() {
    List<EstimatedSlap> slaps = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      slaps.add(
          new EstimatedSlap(
              EstimatedSlap.Timing.seen(12 * (i + 1) / 60.0, 1 / 60.0),
              EstimatedSlap.EstimatedSide.of(i % 2 == 0 ? 1 : -1, 0.9),
              EstimatedSlap.EstimatedZone.UNKNOWN,
              false,
              Set.of(Estimate.Source.MOTION),
              0.9,
              ""));
    }
    return of(slaps, null);
  }

  /** Returns an estimate of some contacts and an elbow. */
  public static Estimate of(List<EstimatedSlap> slaps, @Nullable ElbowPath elbow) {
    return of(slaps, elbow, List.of());
  }

  /** Returns an estimate of a clip with several stretches of slapping. */
  public static Estimate withBursts(List<Estimate.Stretch> bursts) {
    return of(List.of(), null, bursts);
  }

  private static Estimate of(
      List<EstimatedSlap> slaps, @Nullable ElbowPath elbow, List<Estimate.Stretch> bursts) {
    return new Estimate(
        new Estimate.Basis("0".repeat(64), Set.of(Estimate.Source.MOTION), 60, false, null),
        new Estimate.Findings(true, slaps, List.of(), bursts),
        new Estimate.Figures(5.0, null, null, new Estimate.Rotation(2.5, Curve.EMPTY, null, null)),
        new Estimate.Traces(Curve.EMPTY, Curve.EMPTY, 0.012, new Estimate.Region(100, 50, 40, 30)),
        new Estimate.Limbs(elbow, null),
        List.of(),
        Extra.NONE);
  }
}
