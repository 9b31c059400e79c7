package palmturn.estimate.elbow;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.PartProgress;
import palmturn.clip.Progress;
import palmturn.estimate.hands.HandLength;
import palmturn.estimate.hands.NetworkUse;
import palmturn.estimate.hands.ShapePass;
import palmturn.estimate.motion.BlobMotion;
import palmturn.estimate.motion.Motion;
import palmturn.estimate.motion.Stretches;
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
public record Arms(
    ClipFile clip,
    Request request,
    Stretches.Stretch stretch,
    Motion motion,
    List<EstimatedSlap> slaps,
    @Nullable NetworkUse networks,
    ShapePass.@Nullable Seen shape,
    @Nullable Place place,
    ScaleOf scale) {
  private static final double AFTER_S = 0.5;
  private static final double BY_SHAPE_CONFIDENCE = 0.5;
  private static final double FOLLOWING_SHARE = 0.6;

  /** Finds the moving arm's elbow. */
  public static Arms of(
      ClipFile clip,
      Request request,
      Stretches.Stretch stretch,
      Motion motion,
      List<EstimatedSlap> slaps,
      @Nullable NetworkUse networks,
      ShapePass.@Nullable Seen shape) {
    Place place = ElbowPlace.of(request, motion, shape);
    ScaleOf scale = place == null ? ScaleOf.NONE : scale(request, motion, place, shape);
    return new Arms(clip, request, stretch, motion, slaps, networks, shape, place, scale);
  }

  private static ScaleOf scale(
      Request request, Motion motion, Place elbow, ShapePass.@Nullable Seen shape) {
    BlobMotion blobs = motion.contacts().motion();
    return ScaleOf.from(
        request.hints().likely(),
        ElbowFinder.forearmPx(elbow.at(), blobs.blob(), blobs.footage().pxPerCell()),
        shape == null ? null : HandLength.px(shape.paths()));
  }

  /** Follows the moving arm's elbow. */
  public ElbowTracker.Followed moving(Progress watch) throws ClipException {
    if (place == null) {
      return new ElbowTracker.Followed(
          null,
          List.of(
              "The elbow was not followed: it could not be found. Give its place to have its"
                  + " drift."));
    }
    ElbowTracker.Followed followed = follow(place, new PartProgress(watch, 0, FOLLOWING_SHARE));
    List<String> said = new ArrayList<>(followed.warnings());
    String caution = scale.caution();
    if (followed.path() != null && caution != null) {
      said.add(caution);
    }
    if (followed.path() != null && request.hints().elbow() == null) {
      said.add("The elbow's place was found by the program: check it in the picture.");
    }
    ElbowPath path = followed.path();
    return new ElbowTracker.Followed(
        path == null
            ? null
            : taken(path, new PartProgress(watch, FOLLOWING_SHARE, 1 - FOLLOWING_SHARE)),
        said);
  }

  private ElbowPath taken(ElbowPath path, Progress watch) throws ClipException {
    double radiusPx = ElbowTracker.discFullPx(scale, clip.facts().width(), clip.facts().height());
    return new LostElbow(clip, motion.contacts().motion().footage(), request.realPerMediaS())
        .taken(path, radiusPx, networks, shape == null ? null : shape.paths(), watch);
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
  public ElbowPath target(Progress watch) throws ClipException {
    if (shape == null || shape.targetElbow() == null) {
      return null;
    }
    return follow(new Place(shape.targetElbow(), BY_SHAPE_CONFIDENCE), watch).path();
  }

  private ElbowTracker.Followed follow(Place elbow, Progress watch) throws ClipException {
    double firstS = slaps.get(0).timeS();
    double lastS = slaps.get(slaps.size() - 1).timeS();
    int end = Math.min(stretch.to(), clip.frames().indexAt(lastS + AFTER_S) + 1);
    return ElbowTracker.follow(
        clip, stretch.from(), end, firstS, elbow, request.hints().trunk(), scale, watch);
  }
}
