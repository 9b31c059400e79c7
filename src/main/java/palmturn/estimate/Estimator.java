package palmturn.estimate;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameTable;
import palmturn.clip.PartProgress;
import palmturn.clip.Progress;
import palmturn.clip.Sound;
import palmturn.estimate.elbow.Arms;
import palmturn.estimate.elbow.ElbowTracker;
import palmturn.estimate.frames.Footage;
import palmturn.estimate.hands.NetworkUse;
import palmturn.estimate.hands.ShapeReading;
import palmturn.estimate.motion.FlowPass;
import palmturn.estimate.motion.Motion;
import palmturn.estimate.motion.Stretches;
import palmturn.estimate.request.KnownSide;
import palmturn.estimate.request.Request;
import palmturn.estimate.sound.Heard;
import palmturn.estimate.sound.Onsets;
import palmturn.estimate.sound.SoundAlone;
import palmturn.trial.ClipFacts;
import palmturn.trial.Estimate;
import palmturn.trial.Estimate.Source;
import palmturn.trial.Estimate.Stretch;

/**
 * Finds the slaps of a trial: the motion proposes contacts and turns, the sound times the contacts
 * where it fits the motion, the elbow is followed by points of its own. What can't be told stays
 * open, with the reason among the warnings.
 */
public final class Estimator {
  private static final int FEWEST_FRAMES = 12;
  private static final double FEW_FPS = 24.5;
  private static final double MOTION_SHARE = 0.6;
  private static final double MOTION_SHARE_WITH_SHAPE = 0.25;
  private static final double SHAPE_SHARE = 0.6;

  /** A turn that shrinks by more than this is told to have: Palmturn's choice. */
  private static final double SHRUNK_DEG = 10;

  private final ClipFile clip;
  private final Request request;
  private final Progress watch;
  private final @Nullable NetworkUse networks;
  private final FrameTable frames;
  private final int from;
  private final int to;
  private final List<String> warnings = new ArrayList<>();

  /** What is to be said if no trial is found in the end. */
  private final List<String> noTrial = new ArrayList<>();

  private @Nullable Attempt doubtful;

  /** A trial that was seen, and the sound laid beside it. */
  public record Attempt(Stretches.Stretch stretch, Motion motion, @Nullable Heard heard) {}

  private Estimator(ClipFile clip, Request request, @Nullable NetworkUse networks, Progress watch) {
    this.clip = clip;
    this.networks = request.use().contains(Source.SHAPE) ? networks : null;
    this.request = request;
    this.watch = watch;
    frames = clip.frames();
    from = request.fromS() == null ? 0 : firstAt(request.fromS());
    to = request.toS() == null ? frames.size() : frames.indexAt(request.toS()) + 1;
  }

  /**
   * Returns what is found in a clip.
   *
   * @param networks how the landmark networks are used, null where they are not installed
   * @throws ClipException if it can't be read
   * @throws StoppedException if {@code watch} stops it
   */
  public static Estimate estimate(
      ClipFile clip, Request request, @Nullable NetworkUse networks, Progress watch)
      throws ClipException {
    return new Estimator(clip, request, networks, watch).estimate();
  }

  private int firstAt(double timeS) {
    int at = frames.indexAt(timeS);
    return frames.timeS(at) < timeS ? Math.min(at + 1, frames.size() - 1) : at;
  }

  private Estimate estimate() throws ClipException {
    Onsets onsets = onsets();
    if (!request.use().contains(Source.MOTION)) {
      return request.use().contains(Source.SOUND) ? bySoundAlone(onsets) : byNothing(onsets);
    }
    List<Attempt> trials = trials(onsets);
    ShapeReading shape = shape(trials.isEmpty() ? doubtful : trials.get(0), !trials.isEmpty());
    if (trials.isEmpty()) {
      Attempt attempt = doubtful;
      if (attempt == null || shape == null || !shape.turns()) {
        warnings.addAll(noTrial);
        return builder(onsets, null).without(warnings);
      }
      trials = List.of(attempt);
      warnings.add(
          "That the hand turns was seen by its shape, not by its motion: check the slaps.");
    }
    SlapList slaps = SlapList.of(trials.get(0), request, frames);
    if (shape != null) {
      slaps = slaps.with(shape, frames, request.realPerMediaS());
    }
    warnings.addAll(slaps.warnings());
    List<Stretch> bursts = trials.stream().map(attempt -> burst(attempt.motion())).toList();
    if (bursts.size() > 1) {
      warnings.add(severalBursts(bursts));
    }
    KnownSide known = request.known();
    boolean near = known != null && slaps.near(known);
    if (!near && (shape == null || shape.sides() == null)) {
      warnings.add(sidesOpen(known));
    }
    if (known != null && near && slaps.saysOtherThan(known)) {
      warnings.add(
          "By the hand's shape the named slap was by the other side: the name counts, check it.");
    }
    Arms arms =
        Arms.of(
            clip,
            request,
            trials.get(0).stretch(),
            trials.get(0).motion(),
            slaps.slaps(),
            networks,
            shape == null ? null : shape.seen());
    warnings.addAll(request.hints().unlikely());
    ElbowTracker.Followed elbow =
        arms.moving(new PartProgress(watch, elbowFrom(), 1 - elbowFrom()));
    warnings.addAll(elbow.warnings());
    ShapeReading.Told told =
        shape == null
            ? null
            : shape.told(
                elbow.path(),
                arms.inSpace(elbow.path()),
                arms.target(new PartProgress(watch, 1, 0)),
                request.realPerMediaS());
    warnings.addAll(shrank(told));
    Estimate found =
        builder(onsets, shape)
            .with(
                trials.get(0).motion(),
                slaps,
                bursts,
                elbow.path(),
                request.elbowLimitCm(),
                told,
                warnings);
    return known != null && near ? found.withKnownSide(known.timeS(), known.side()) : found;
  }

  private static String sidesOpen(@Nullable KnownSide known) {
    return known == null
        ? "Which slaps are palm and which are back is open: name the side of one."
        : String.format(
            Locale.ROOT,
            "No slap was found near the known one at %.3f s: which are palm and which are back is"
                + " open.",
            known.timeS());
  }

  private static List<String> shrank(ShapeReading.@Nullable Told told) {
    Estimate.TurnRange turns = told == null ? null : told.shape().turnRange();
    Estimate.TurnChange change = turns == null ? null : turns.change();
    boolean certain = change != null && change.deg() < -SHRUNK_DEG && change.highDeg() < 0;
    return change == null || !certain
        ? List.of()
        : List.of(
            String.format(
                Locale.ROOT,
                "The turn shrank: %.0f° from side to side in the first third, %.0f° in the last.",
                change.firstThirdDeg(),
                change.lastThirdDeg()));
  }

  /** Returns what the hands' shape says of an attempt, null where it is not to be had. */
  private @Nullable ShapeReading shape(@Nullable Attempt attempt, boolean trusted)
      throws ClipException {
    return networks == null || attempt == null
        ? null
        : ShapeReading.of(
            clip,
            attempt.motion(),
            request,
            networks,
            trusted,
            new PartProgress(watch, motionShare(), SHAPE_SHARE),
            warnings);
  }

  private double motionShare() {
    return networks == null ? MOTION_SHARE : MOTION_SHARE_WITH_SHAPE;
  }

  private Building builder(Onsets onsets, @Nullable ShapeReading shape) throws ClipException {
    ClipFacts facts = clip.facts();
    return new Building(facts, request, sources(onsets, shape), onsets.strength());
  }

  private Set<Source> sources(Onsets onsets, @Nullable ShapeReading shape) {
    Set<Source> sources = EnumSet.noneOf(Source.class);
    if (request.use().contains(Source.MOTION)) {
      sources.add(Source.MOTION);
    }
    if (!onsets.strength().isEmpty()) {
      sources.add(Source.SOUND);
    }
    if (shape != null) {
      sources.add(Source.SHAPE);
    }
    return sources;
  }

  private Onsets onsets() throws ClipException {
    if (!request.use().contains(Source.SOUND)) {
      return Onsets.NONE;
    }
    if (request.realPerMediaS() != 1) {
      warnings.add("The clip is in slow motion: its sound is stretched, and was not used.");
      return Onsets.NONE;
    }
    Sound sound = clip.sound();
    if (sound == null) {
      warnings.add("The clip has no sound: times are by the picture, contacts are not confirmed.");
      return Onsets.NONE;
    }
    return to <= from
        ? Onsets.NONE
        : Onsets.of(sound, frames.timeS(from) - 0.3, frames.timeS(to - 1) + 0.3);
  }

  private Estimate byNothing(Onsets onsets) throws ClipException {
    warnings.add("Nothing was looked at: slaps are found by sound or motion; use one of them.");
    return builder(onsets, null).without(warnings);
  }

  private Estimate bySoundAlone(Onsets onsets) throws ClipException {
    SoundAlone found = SoundAlone.of(onsets);
    warnings.addAll(found.warnings());
    return builder(onsets, null).bySound(found.slaps(), warnings);
  }

  /** Measures each lively part and returns those that are trials, in order. */
  private List<Attempt> trials(Onsets onsets) throws ClipException {
    if (to - from < FEWEST_FRAMES) {
      warnings.add("%d frames are too few to see slaps in.".formatted(Math.max(0, to - from)));
      return List.of();
    }
    double fps = 1 / (frames.medianS() * request.realPerMediaS());
    if (fps < FEW_FPS) {
      warnings.add(
          String.format(
              Locale.ROOT,
              "%.1f frames a second are few: fast slaps can be missed, and sides are uncertain.",
              fps));
    }
    List<Attempt> trials = new ArrayList<>();
    List<String> against = List.of();
    List<Stretches.Stretch> stretches =
        Stretches.of(clip, from, to, request.realPerMediaS(), watch);
    for (int i = 0; i < stretches.size(); i++) {
      Progress within =
          new PartProgress(
              watch,
              i / (double) stretches.size() * motionShare(),
              motionShare() / stretches.size());
      for (Motion motion : motions(stretches.get(i), within)) {
        Heard heard =
            onsets.strength().isEmpty() ? null : Heard.of(motion.stops().pictureS(), onsets);
        List<String> reasons = TrialCheck.against(motion, heard);
        if (reasons.isEmpty()) {
          trials.add(new Attempt(stretches.get(i), motion, heard));
        } else {
          boolean byTurnAlone = reasons.equals(List.of(TrialCheck.NO_TURN));
          if (byTurnAlone && doubtful == null) {
            doubtful = new Attempt(stretches.get(i), motion, heard);
          }
          against = against.isEmpty() ? reasons : against;
        }
      }
    }
    if (trials.isEmpty()) {
      noTrial.add("No trial was found.");
      noTrial.addAll(
          against.isEmpty() ? List.of("Nothing in the picture moves to and fro.") : against);
    }
    return trials;
  }

  private List<Motion> motions(Stretches.Stretch stretch, Progress within) throws ClipException {
    ClipFacts facts = clip.facts();
    Footage footage =
        FlowPass.of(
            clip, stretch.from(), stretch.to(), Math.max(facts.width(), facts.height()), within);
    if (footage == null) {
      warnings.add("Not one frame could be decoded.");
      return List.of();
    }
    if (footage.unreadable() > 0) {
      warnings.add(
          footage.unreadable() == 1
              ? "One frame could not be decoded."
              : "%d frames could not be decoded.".formatted(footage.unreadable()));
    }
    Estimate.Region region = request.hints().handRegion();
    double cell = footage.pxPerCell();
    return Motion.in(
        footage.inRealTime(request.realPerMediaS()),
        region == null
            ? null
            : new Estimate.Region(
                region.x() / cell,
                region.y() / cell,
                region.width() / cell,
                region.height() / cell));
  }

  private Stretch burst(Motion motion) {
    double[] times = motion.stops().pictureS();
    return new Stretch(
        times[0] / request.realPerMediaS(), times[times.length - 1] / request.realPerMediaS());
  }

  private static String severalBursts(List<Stretch> bursts) {
    StringBuilder list = new StringBuilder();
    for (Stretch burst : bursts) {
      list.append(list.isEmpty() ? "" : ", ")
          .append(String.format(Locale.ROOT, "%.2f–%.2f s", burst.startS(), burst.endS()));
    }
    return bursts.size()
        + " attempts were found ("
        + list
        + "): all figures are of the first; name a stretch for another.";
  }

  private double elbowFrom() {
    return motionShare() + (networks == null ? 0 : SHAPE_SHARE);
  }
}
