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
import palmturn.trial.Point;

/**
 * The elbows of a trial: their places, the scale there, and their paths.
 *
 * @param slaps of the trial, in order, at least one
 * @param networks how they are used, null where they are not
 * @param shape what the networks saw, null where they were not used
 * @param place of the moving elbow, null where unknown
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
    @Nullable Point place,
    ElbowScale scale) {
  /** Time after the last slap for which the elbow is tracked, to show it come to rest. */
  private static final double AFTER_S = 0.5;

  /** Share of the progress that tracking has before the gaps are filled, by time taken. */
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
    Point place = ElbowLocator.of(request, motion, shape);
    ElbowScale scale = place == null ? ElbowScale.NONE : scale(request, motion, place, shape);
    return new ElbowSearch(clip, request, stretch, motion, slaps, networks, shape, place, scale);
  }

  private static ElbowScale scale(
      Request request, Motion motion, Point elbow, LandmarkPass.@Nullable Landmarks shape) {
    BlobMotion blobs = motion.contacts().motion();
    return ElbowScale.from(
        request.hints().plausible(),
        ElbowFinder.forearmPx(elbow, blobs.blob(), blobs.footage().pxPerCell()),
        shape == null ? null : HandLength.px(shape.paths()));
  }

  /** Tracks the moving arm's elbow. */
  public ElbowTracker.TrackedElbow followMoving(Progress watch) throws ClipException {
    if (place == null) {
      return new ElbowTracker.TrackedElbow(
          null,
          List.of(
              "The elbow was not followed: it could not be found. Give its place to have its"
                  + " drift."));
    }
    ElbowTracker.TrackedElbow followed = follow(place, new PartProgress(watch, 0, FOLLOWING_SHARE));
    List<String> warnings = new ArrayList<>(followed.warnings());
    String caution = scale.caution();
    if (followed.path() != null && caution != null) {
      warnings.add(caution);
    }
    if (followed.path() != null && request.hints().elbow() == null) {
      warnings.add("The elbow's place was found by the program: check it in the picture.");
    }
    ElbowPath path = followed.path();
    return new ElbowTracker.TrackedElbow(
        path == null
            ? null
            : fillGaps(path, new PartProgress(watch, FOLLOWING_SHARE, 1 - FOLLOWING_SHARE)),
        warnings);
  }

  private ElbowPath fillGaps(ElbowPath path, Progress watch) throws ClipException {
    double radiusPx = ElbowTracker.discFullPx(scale, clip.facts().width(), clip.facts().height());
    return new GapFiller(clip, motion.contacts().motion().footage(), request.realPerMediaS())
        .fillGaps(path, radiusPx, networks, shape == null ? null : shape.paths(), watch);
  }

  /** Returns the moving elbow's displacement in space; null where unknown. */
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

  /** Tracks the target arm's elbow; null where it was not found. */
  @Nullable
  public ElbowPath followTarget(Progress watch) throws ClipException {
    if (shape == null || shape.targetElbow() == null) {
      return null;
    }
    return follow(shape.targetElbow(), watch).path();
  }

  private ElbowTracker.TrackedElbow follow(Point elbow, Progress watch) throws ClipException {
    double firstS = slaps.get(0).timeS();
    double lastS = slaps.get(slaps.size() - 1).timeS();
    int end = Math.min(stretch.to(), clip.frames().indexAt(lastS + AFTER_S) + 1);
    return ElbowTracker.follow(
        clip,
        new LivelyParts.FrameRange(stretch.from(), end),
        new ElbowTracker.Start(elbow, firstS, request.hints().trunk(), scale),
        watch);
  }
}
