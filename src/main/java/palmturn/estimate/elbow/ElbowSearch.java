package palmturn.estimate.elbow;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.PartProgress;
import palmturn.clip.Progress;
import palmturn.estimate.hands.HandLength;
import palmturn.estimate.hands.LandmarkPass;
import palmturn.estimate.hands.NetworkUse;
import palmturn.estimate.motion.BlobMotion;
import palmturn.estimate.motion.LivelyParts;
import palmturn.estimate.motion.Motion;
import palmturn.estimate.request.Request;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate.ElbowInSpace;
import palmturn.trial.EstimatedSlap;

/**
 * The elbows of a trial: where they are, how long a pixel is there, and their paths.
 *
 * @param slaps of the trial, in order, at least one
 * @param networks how they are used, null where they are not
 * @param shape what the networks saw, null where they were not used
 * @param place of the moving elbow, null where nothing tells it
 * @param scale at the moving elbow
 */
public record ElbowSearch(
    ClipFile clip,
    Request request,
    LivelyParts.FrameRange stretch,
    Motion motion,
    List<EstimatedSlap> slaps,
    @Nullable NetworkUse networks,
    LandmarkPass.@Nullable Landmarks shape,
    @Nullable ElbowPosition place,
    ElbowScale scale) {
  /** The elbow is followed for this long after the last slap, to show it come to rest. */
  private static final double AFTER_S = 0.5;

  /**
   * Confidence of the target arm's elbow, which only the body's landmarks show: Palmturn's choice.
   */
  private static final double BY_SHAPE_CONFIDENCE = 0.5;

  /** Share of the progress, by the time it takes, that following has before the gaps are filled. */
  private static final double FOLLOWING_SHARE = 0.6;

  /** Finds the moving arm's elbow. */
  public static ElbowSearch of(
      ClipFile clip,
      Request request,
      LivelyParts.FrameRange stretch,
      Motion motion,
      List<EstimatedSlap> slaps,
      @Nullable NetworkUse networks,
      LandmarkPass.@Nullable Landmarks shape) {
    ElbowPosition place = ElbowLocator.of(request, motion, shape);
    ElbowScale scale = place == null ? ElbowScale.NONE : scale(request, motion, place, shape);
    return new ElbowSearch(clip, request, stretch, motion, slaps, networks, shape, place, scale);
  }

  private static ElbowScale scale(
      Request request, Motion motion, ElbowPosition elbow, LandmarkPass.@Nullable Landmarks shape) {
    BlobMotion blobs = motion.contacts().motion();
    return ElbowScale.from(
        request.hints().plausible(),
        ElbowFinder.forearmPx(elbow.at(), blobs.blob(), blobs.footage().pxPerCell()),
        shape == null ? null : HandLength.px(shape.paths()));
  }

  /** Follows the moving arm's elbow. */
  public ElbowTracker.TrackedElbow followMoving(Progress watch) throws ClipException {
    if (place == null) {
      return new ElbowTracker.TrackedElbow(
          null,
          List.of(
              "The elbow was not followed: it could not be found. Give its place to have its"
                  + " drift."));
    }
    ElbowTracker.TrackedElbow followed = follow(place, new PartProgress(watch, 0, FOLLOWING_SHARE));
    List<String> said = new ArrayList<>(followed.warnings());
    String caution = scale.caution();
    if (followed.path() != null && caution != null) {
      said.add(caution);
    }
    if (followed.path() != null && request.hints().elbow() == null) {
      said.add("The elbow's place was found by the program: check it in the picture.");
    }
    ElbowPath path = followed.path();
    return new ElbowTracker.TrackedElbow(
        path == null
            ? null
            : taken(path, new PartProgress(watch, FOLLOWING_SHARE, 1 - FOLLOWING_SHARE)),
        said);
  }

  private ElbowPath taken(ElbowPath path, Progress watch) throws ClipException {
    double radiusPx = ElbowTracker.discFullPx(scale, clip.facts().width(), clip.facts().height());
    return new GapFiller(clip, motion.contacts().motion().footage(), request.realPerMediaS())
        .fillGaps(path, radiusPx, networks, shape == null ? null : shape.paths(), watch);
  }

  /** Returns how far the moving elbow went in space; null where that can't be told. */
  @Nullable
  public ElbowInSpace inSpace(@Nullable ElbowPath moving) {
    return shape == null || moving == null
        ? null
        : ElbowDepth.of(
            moving,
            shape.paths(),
            request.realPerMediaS(),
            slaps.get(0).timeS(),
            scale,
            request.hints());
  }

  /** Follows the target arm's elbow; null where it was not found. */
  @Nullable
  public ElbowPath followTarget(Progress watch) throws ClipException {
    if (shape == null || shape.targetElbow() == null) {
      return null;
    }
    return follow(new ElbowPosition(shape.targetElbow(), BY_SHAPE_CONFIDENCE), watch).path();
  }

  private ElbowTracker.TrackedElbow follow(ElbowPosition elbow, Progress watch)
      throws ClipException {
    double firstS = slaps.get(0).timeS();
    double lastS = slaps.get(slaps.size() - 1).timeS();
    int end = Math.min(stretch.to(), clip.frames().indexAt(lastS + AFTER_S) + 1);
    return ElbowTracker.follow(
        clip, stretch.from(), end, firstS, elbow, request.hints().trunk(), scale, watch);
  }
}
