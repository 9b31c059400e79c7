package palmturn.estimate.request;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import palmturn.trial.BodyLength;
import palmturn.trial.Estimate;
import palmturn.trial.KnownLength;
import palmturn.trial.PlacedPoints;
import palmturn.trial.Point;

/**
 * Hints from somebody who knows the clip, all optional. Places are in pixels of the upright
 * full-size picture.
 *
 * @param handRegion where the moving hand is
 * @param elbow the moving arm's elbow before the first slap
 * @param trunk a place on the trunk before the first slap
 * @param scale two places a known length apart
 * @param forearmCm measured length of the athlete's forearm
 * @param handCm measured length of the athlete's hand, wrist crease to tip of the middle finger
 * @param statureCm the athlete's standing height
 */
public record Hints(
    Estimate.@Nullable Region handRegion,
    @Nullable Point elbow,
    @Nullable Point trunk,
    @Nullable KnownLength scale,
    @Nullable Double forearmCm,
    @Nullable Double handCm,
    @Nullable Double statureCm) {
  /** No hints. */
  public static final Hints NONE = new Hints(null, null, null, null, null, null, null);

  /** Returns these hints with what was pointed at in the picture, where none was given. */
  public Hints withPlaces(PlacedPoints places) {
    return new Hints(
        handRegion == null ? places.handRegion() : handRegion,
        elbow == null ? places.elbow() : elbow,
        trunk == null ? places.trunk() : trunk,
        scale == null ? places.scale() : scale,
        forearmCm,
        handCm,
        statureCm);
  }

  /** Returns these hints with the athlete's lengths, where none were given. */
  public Hints withLengths(
      @Nullable Double newForearmCm, @Nullable Double newHandCm, @Nullable Double newStatureCm) {
    return new Hints(
        handRegion,
        elbow,
        trunk,
        scale,
        forearmCm == null ? newForearmCm : forearmCm,
        handCm == null ? newHandCm : handCm,
        statureCm == null ? newStatureCm : statureCm);
  }

  /** Returns these hints without the lengths that nobody's can be. */
  public Hints plausible() {
    return new Hints(
        handRegion,
        elbow,
        trunk,
        scale,
        fits(BodyLength.FOREARM) ? forearmCm : null,
        fits(BodyLength.HAND) ? handCm : null,
        fits(BodyLength.STATURE) ? statureCm : null);
  }

  /** Returns a sentence for each length that nobody's can be. */
  public List<String> warnings() {
    return Arrays.stream(BodyLength.values())
        .filter(what -> !fits(what))
        .map(
            what ->
                String.format(
                    Locale.ROOT,
                    "The %s of %s cm was not used: it should be %s cm.",
                    name(what),
                    length(what),
                    what.bounds()))
        .toList();
  }

  private boolean fits(BodyLength what) {
    Double cm = length(what);
    return cm == null || what.fits(cm);
  }

  private @Nullable Double length(BodyLength what) {
    return switch (what) {
      case FOREARM -> forearmCm;
      case HAND -> handCm;
      case STATURE -> statureCm;
    };
  }

  private static String name(BodyLength what) {
    return switch (what) {
      case FOREARM -> "forearm";
      case HAND -> "hand";
      case STATURE -> "height";
    };
  }
}
