package palmturn.estimate.request;

import java.util.EnumSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Estimate;
import palmturn.trial.Hand;

/**
 * A request for an estimate: the stretch, the moving hand and the sources.
 *
 * @param hand the moving hand as an unmirrored picture shows it; for a mirrored one, the other than
 *     the athlete's own
 * @param fromS start of the stretch, media seconds; null for the clip's start
 * @param toS end of the stretch, media seconds; null for the clip's end
 * @param captureFps frames a second at which it was captured, if the file or the user says so
 * @param realPerMediaS real seconds in one media second: 1 but for slow motion
 * @param use the sources that may be used
 * @param hints what is known of the picture
 * @param elbowLimitCm how far the elbow may go from its place
 * @param known one slap whose side is known; null leaves the polarity unknown
 */
public record Request(
    Hand hand,
    @Nullable Double fromS,
    @Nullable Double toS,
    @Nullable Double captureFps,
    double realPerMediaS,
    Set<Estimate.Source> use,
    Hints hints,
    double elbowLimitCm,
    @Nullable KnownSide known) {
  public Request {
    use = Set.copyOf(use);
    if (!(realPerMediaS > 0) || !Double.isFinite(realPerMediaS)) {
      throw new IllegalArgumentException("a time factor must be above 0, not " + realPerMediaS);
    }
    if (fromS != null && toS != null && !(toS > fromS)) {
      throw new IllegalArgumentException(
          "a stretch must end after it starts: %s s to %s s".formatted(fromS, toS));
    }
  }

  /** Returns a request for a whole clip at real speed, with every source and no hint. */
  public static Request of(Hand hand, double elbowLimitCm) {
    return new Request(
        hand,
        null,
        null,
        null,
        1,
        EnumSet.allOf(Estimate.Source.class),
        Hints.NONE,
        elbowLimitCm,
        null);
  }
}
