package palmturn.estimate;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.PartProgress;
import palmturn.clip.Progress;
import palmturn.estimate.elbow.ElbowSearch;
import palmturn.estimate.elbow.ElbowTracker.TrackedElbow;
import palmturn.estimate.hands.NetworkUse;
import palmturn.estimate.hands.ShapeEvidence;
import palmturn.estimate.request.Request;
import palmturn.estimate.sound.Onsets;
import palmturn.estimate.sound.SoundAlone;
import palmturn.trial.Estimate;
import palmturn.trial.Estimate.Source;
import palmturn.trial.Estimate.Stretch;

/**
 * Estimates a trial: the motion proposes contacts and turns, the sound times the contacts where it
 * fits the motion, the shape of the hands determines the sides, and the elbow is tracked. Anything
 * undetermined stays unknown, with the reason among the warnings. The steps are those of
 * docs/estimate.md.
 */
public final class Estimator {
  private final ClipFile clip;
  private final Request request;
  private final @Nullable NetworkUse networks;
  private final Progress progress;
  private final ProgressShares shares;
  private final List<String> warnings = new ArrayList<>();

  private Estimator(
      ClipFile clip, Request request, @Nullable NetworkUse networks, Progress progress) {
    this.clip = clip;
    this.request = request;
    this.networks = request.use().contains(Source.SHAPE) ? networks : null;
    this.progress = progress;
    shares = this.networks == null ? ProgressShares.WITHOUT_HANDS : ProgressShares.WITH_HANDS;
  }

  /**
   * Estimates the trial in a clip.
   *
   * @param networks how the landmark networks are used, null where they are not installed
   * @throws ClipException if it can't be read
   * @throws palmturn.clip.StoppedException if {@code progress} stops it
   */
  public static Estimate estimate(
      ClipFile clip, Request request, @Nullable NetworkUse networks, Progress progress)
      throws ClipException {
    return new Estimator(clip, request, networks, progress).estimate();
  }

  private Estimate estimate() throws ClipException {
    TrialSound sound = TrialSound.of(clip, request);
    warnings.addAll(sound.warnings());
    if (!request.use().contains(Source.MOTION)) {
      return withoutMotion(sound.onsets());
    }
    MotionSearch search = MotionSearch.of(clip, request, sound.onsets(), progress, shares.motion());
    warnings.addAll(search.warnings());
    MotionCandidate candidate = search.best();
    ShapeEvidence shape = candidate == null ? null : shape(candidate, search.found());
    if (candidate == null || !search.found() && (shape == null || !shape.alternates())) {
      warnings.addAll(search.reasons());
      return builder(sound.onsets(), null).withoutTrial(warnings);
    }
    if (!search.found()) {
      warnings.add(EstimateWarnings.TURN_BY_SHAPE);
    }
    SlapList slaps = SlapList.of(candidate, request, clip.frames());
    if (shape != null) {
      slaps = slaps.withShape(shape, clip.frames(), request.realPerMediaS());
    }
    warnings.addAll(slaps.warnings());
    List<Stretch> stretches = search.stretches(request.realPerMediaS());
    warnings.addAll(EstimateWarnings.ofStretches(stretches));
    warnings.addAll(EstimateWarnings.ofSides(slaps, request.known(), shape));
    return complete(sound.onsets(), candidate, shape, slaps, stretches);
  }

  private Estimate withoutMotion(Onsets onsets) throws ClipException {
    if (!request.use().contains(Source.SOUND)) {
      warnings.add(EstimateWarnings.NO_SOURCE);
      return builder(onsets, null).withoutTrial(warnings);
    }
    SoundAlone found = SoundAlone.of(onsets);
    warnings.addAll(found.warnings());
    return builder(onsets, null).fromSound(found.slaps(), warnings);
  }

  /** Returns what the hands' shape adds, null where the networks are not used or see no hands. */
  private @Nullable ShapeEvidence shape(MotionCandidate candidate, boolean turnsTrusted)
      throws ClipException {
    return networks == null
        ? null
        : ShapeEvidence.of(
            clip,
            candidate.motion(),
            request,
            networks,
            turnsTrusted,
            new PartProgress(progress, shares.motion(), shares.hands()),
            warnings);
  }

  /** Follows the elbows and puts everything together. */
  private Estimate complete(
      Onsets onsets,
      MotionCandidate candidate,
      @Nullable ShapeEvidence shape,
      SlapList slaps,
      List<Stretch> stretches)
      throws ClipException {
    ElbowSearch elbows =
        ElbowSearch.of(
            clip,
            request,
            candidate.frames(),
            candidate.motion(),
            slaps.slaps(),
            networks,
            shape == null ? null : shape.landmarks());
    warnings.addAll(request.hints().warnings());
    TrackedElbow elbow =
        elbows.followMoving(new PartProgress(progress, shares.elbowFrom(), shares.elbow()));
    warnings.addAll(elbow.warnings());
    ShapeEvidence.Measured measured =
        shape == null
            ? null
            : shape.measure(
                elbow.path(),
                elbows.inSpace(elbow.path()),
                elbows.followTarget(new PartProgress(progress, 1, 0)),
                request.realPerMediaS());
    warnings.addAll(EstimateWarnings.ofTurn(measured));
    Estimate estimate =
        builder(onsets, shape)
            .fromMotion(candidate.motion(), slaps, stretches, elbow.path(), measured, warnings);
    return request.known() != null && slaps.hasSlapNear(request.known())
        ? estimate.withKnownSide(request.known().timeS(), request.known().side())
        : estimate;
  }

  private EstimateBuilder builder(Onsets onsets, @Nullable ShapeEvidence shape)
      throws ClipException {
    return EstimateBuilder.of(clip.facts(), request, onsets.strength(), shape != null);
  }
}
