package palmturn.estimate;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameTable;
import palmturn.clip.PartProgress;
import palmturn.clip.Progress;
import palmturn.estimate.image.Footage;
import palmturn.estimate.motion.FlowPass;
import palmturn.estimate.motion.LivelyParts;
import palmturn.estimate.motion.LivelyParts.FrameRange;
import palmturn.estimate.motion.Motion;
import palmturn.estimate.request.Request;
import palmturn.estimate.sound.Onsets;
import palmturn.estimate.sound.SoundMatch;
import palmturn.trial.ClipFacts;
import palmturn.trial.Estimate;
import palmturn.trial.Estimate.Stretch;

/**
 * The search of a clip for stretches of slapping, by motion with the sound beside it. The measured
 * motion of a part is large, so only one part's is held at a time.
 *
 * @param trials stretches that are trials, in order, media seconds
 * @param best the first trial, else the first stretch that only lacks a turn in its motion, null
 *     without either
 * @param reasons why there is no trial; empty where there is one
 * @param warnings sentences for the reader
 */
record MotionSearch(
    List<Stretch> trials,
    @Nullable MotionCandidate best,
    List<String> reasons,
    List<String> warnings) {
  /** Fewer frames can't hold the least number of contacts. */
  private static final int FEWEST_FRAMES = 12;

  /** Below 25 frames a second, less the rounding of its rate, a fast slap fits between frames. */
  private static final double FEW_FPS = 24.5;

  /** Returns the frames that a request asks for. */
  static FrameRange frames(ClipFile clip, Request request) {
    FrameTable frames = clip.frames();
    int from = 0;
    if (request.fromS() != null) {
      from = frames.indexAt(request.fromS());
      from = frames.timeS(from) < request.fromS() ? Math.min(from + 1, frames.size() - 1) : from;
    }
    int to = request.toS() == null ? frames.size() : frames.indexAt(request.toS()) + 1;
    return new FrameRange(from, to);
  }

  /**
   * Measures each lively part of the clip.
   *
   * @param onsets in the sound, none without it
   * @param share of the progress that the search has
   * @throws ClipException if the clip can't be read
   */
  static MotionSearch of(
      ClipFile clip, Request request, Onsets onsets, Progress progress, double share)
      throws ClipException {
    FrameRange frames = frames(clip, request);
    List<String> warnings = new ArrayList<>();
    int count = frames.to() - frames.from();
    if (count < FEWEST_FRAMES) {
      warnings.add(
          String.format(Locale.ROOT, "%d frames are too few to see slaps in.", Math.max(0, count)));
      return new MotionSearch(List.of(), null, List.of(), warnings);
    }
    double fps = 1 / (clip.frames().medianS() * request.realPerMediaS());
    if (fps < FEW_FPS) {
      warnings.add(
          String.format(
              Locale.ROOT,
              "%.1f frames a second are few: fast slaps can be missed, and sides are uncertain.",
              fps));
    }
    List<FrameRange> parts =
        LivelyParts.of(clip, frames.from(), frames.to(), request.realPerMediaS(), progress);
    PartByPart found = new PartByPart();
    for (int i = 0; i < parts.size(); i++) {
      found.forgetMotion();
      Progress within =
          new PartProgress(progress, i / (double) parts.size() * share, share / parts.size());
      found.add(candidates(clip, request, parts.get(i), onsets, within, warnings), request);
    }
    MotionCandidate best = found.best;
    if (best == null && found.place != null) {
      best =
          candidates(
                  clip,
                  request,
                  found.place.part(),
                  onsets,
                  new PartProgress(progress, share, 0),
                  new ArrayList<>())
              .get(found.place.index());
    }
    return new MotionSearch(
        List.copyOf(found.trials),
        best,
        found.trials.isEmpty() ? reasons(found.objections) : List.of(),
        warnings);
  }

  /**
   * Place of a candidate, by which it can be measured again.
   *
   * @param index among its part's
   */
  private record Place(FrameRange part, int index) {}

  /** The findings so far, without the motion of the parts that are done with. */
  private static final class PartByPart {
    private final List<Stretch> trials = new ArrayList<>();
    private List<String> objections = List.of();
    private @Nullable Place place;
    private @Nullable MotionCandidate best;

    void forgetMotion() {
      best = null;
    }

    void add(List<MotionCandidate> candidates, Request request) {
      for (int i = 0; i < candidates.size(); i++) {
        MotionCandidate candidate = candidates.get(i);
        List<String> against = TrialCheck.objections(candidate.motion(), candidate.sound());
        boolean first;
        if (against.isEmpty()) {
          first = trials.isEmpty();
          trials.add(candidate.stretch(request.realPerMediaS()));
        } else {
          objections = objections.isEmpty() ? against : objections;
          first = place == null && against.equals(List.of(TrialCheck.NO_TURN));
        }
        if (first) {
          place = new Place(candidate.frames(), i);
          best = candidate;
        }
      }
    }
  }

  private static List<MotionCandidate> candidates(
      ClipFile clip,
      Request request,
      FrameRange part,
      Onsets onsets,
      Progress within,
      List<String> warnings)
      throws ClipException {
    return motions(clip, request, part, within, warnings).stream()
        .map(
            motion ->
                new MotionCandidate(
                    part,
                    motion,
                    onsets.strength().isEmpty()
                        ? null
                        : SoundMatch.of(motion.stops().pictureS(), onsets)))
        .toList();
  }

  private static List<String> reasons(List<String> objections) {
    List<String> reasons = new ArrayList<>(List.of("No trial was found."));
    reasons.addAll(
        objections.isEmpty() ? List.of("Nothing in the picture moves to and fro.") : objections);
    return reasons;
  }

  private static List<Motion> motions(
      ClipFile clip, Request request, FrameRange part, Progress within, List<String> warnings)
      throws ClipException {
    ClipFacts facts = clip.facts();
    Footage footage =
        FlowPass.of(clip, part.from(), part.to(), Math.max(facts.width(), facts.height()), within);
    if (footage == null) {
      warnings.add("Not one frame could be decoded.");
      return List.of();
    }
    if (footage.unreadable() > 0) {
      warnings.add(
          footage.unreadable() == 1
              ? "One frame could not be decoded."
              : String.format(
                  Locale.ROOT, "%d frames could not be decoded.", footage.unreadable()));
    }
    Estimate.Region region = request.hints().handRegion();
    double cell = footage.pxPerCell();
    return Motion.find(
        footage.inRealTime(request.realPerMediaS()),
        region == null
            ? null
            : new Estimate.Region(
                region.x() / cell,
                region.y() / cell,
                region.width() / cell,
                region.height() / cell));
  }

  /** Returns whether a trial was found by motion and sound. */
  boolean found() {
    return !trials.isEmpty();
  }

  /** Returns the stretches of slapping, media seconds. */
  List<Stretch> stretches(double realPerMediaS) {
    return trials.isEmpty() && best != null ? List.of(best.stretch(realPerMediaS)) : trials;
  }
}
