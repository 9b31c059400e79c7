package palmturn.estimate;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFacts;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameTable;
import palmturn.clip.Sound;
import palmturn.trial.Estimate;
import palmturn.trial.Estimate.Burst;
import palmturn.trial.Estimate.Source;
import palmturn.trial.Hand;

/**
 * Finds the slaps of a trial: the motion proposes contacts and turns, the sound times the contacts
 * where it fits the motion, the elbow is followed by points of its own. What can't be told stays
 * open, with the reason among the warnings.
 */
public final class Estimator {
  private static final int FEWEST_FRAMES = 12;
  private static final double FEW_FPS = 24.5;
  private static final double MOTION_SHARE = 0.6;
  private static final double AFTER_S = 0.5;

  private final ClipFile clip;
  private final Request request;
  private final Watch watch;
  private final FrameTable frames;
  private final int from;
  private final int to;
  private final List<String> warnings = new ArrayList<>();

  /** A trial that was seen, and the sound laid beside it. */
  record Attempt(Stretches.Stretch stretch, Motion motion, @Nullable Heard heard) {}

  private Estimator(ClipFile clip, Request request, Watch watch) {
    this.clip = clip;
    this.request = request;
    this.watch = watch;
    frames = clip.frames();
    from = request.fromS() == null ? 0 : firstAt(request.fromS());
    to = request.toS() == null ? frames.size() : frames.indexAt(request.toS()) + 1;
  }

  /**
   * Returns what is found in a clip.
   *
   * @throws ClipException if it can't be read
   * @throws StoppedException if {@code watch} stops it
   */
  public static Estimate estimate(ClipFile clip, Request request, Watch watch)
      throws ClipException {
    return new Estimator(clip, request, watch).estimate();
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
    if (trials.isEmpty()) {
      return builder(onsets).without(warnings);
    }
    SlapList slaps = SlapList.of(trials.get(0), request, frames.medianS());
    warnings.addAll(slaps.warnings());
    List<Burst> bursts = trials.stream().map(attempt -> burst(attempt.motion())).toList();
    if (bursts.size() > 1) {
      warnings.add(severalBursts(bursts));
    }
    KnownSide known = request.known();
    boolean near = known != null && slaps.near(known);
    if (!near) {
      warnings.add(sidesOpen(known));
    }
    ElbowTracker.Followed elbow = elbow(trials.get(0), slaps);
    warnings.addAll(elbow.warnings());
    Estimate found =
        builder(onsets)
            .with(
                trials.get(0).motion(),
                slaps,
                bursts,
                elbow.path(),
                request.elbowLimitCm(),
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

  private Building builder(Onsets onsets) throws ClipException {
    ClipFacts facts = clip.facts();
    return new Building(facts, request, sources(onsets), onsets.strength());
  }

  private Set<Source> sources(Onsets onsets) {
    Set<Source> sources = EnumSet.noneOf(Source.class);
    if (request.use().contains(Source.MOTION)) {
      sources.add(Source.MOTION);
    }
    if (!onsets.strength().isEmpty()) {
      sources.add(Source.SOUND);
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
    return builder(onsets).without(warnings);
  }

  private Estimate bySoundAlone(Onsets onsets) throws ClipException {
    SoundAlone found = SoundAlone.of(onsets);
    warnings.addAll(found.warnings());
    return builder(onsets).bySound(found.slaps(), warnings);
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
    List<String> against = new ArrayList<>();
    List<Stretches.Stretch> stretches =
        Stretches.of(clip, from, to, request.realPerMediaS(), watch);
    for (int i = 0; i < stretches.size(); i++) {
      Watch within =
          new PartWatch(
              watch, i / (double) stretches.size() * MOTION_SHARE, MOTION_SHARE / stretches.size());
      for (Motion motion : motions(stretches.get(i), within)) {
        Heard heard =
            onsets.strength().isEmpty() ? null : Heard.of(motion.stops().pictureS(), onsets);
        List<String> reasons = TrialCheck.against(motion, heard);
        if (reasons.isEmpty()) {
          trials.add(new Attempt(stretches.get(i), motion, heard));
        } else if (against.isEmpty()) {
          against.addAll(reasons);
        }
      }
    }
    if (trials.isEmpty()) {
      warnings.add("No trial was found.");
      warnings.addAll(
          against.isEmpty() ? List.of("Nothing in the picture moves to and fro.") : against);
    }
    return trials;
  }

  private List<Motion> motions(Stretches.Stretch stretch, Watch within) throws ClipException {
    ClipFacts facts = clip.facts();
    Footage footage =
        FlowPass.of(
            clip, stretch.from(), stretch.to(), Math.max(facts.width(), facts.height()), within);
    if (footage == null) {
      warnings.add("Not one frame could be decoded.");
      return List.of();
    }
    if (footage.unreadable() > 0) {
      warnings.add("%d frames could not be decoded.".formatted(footage.unreadable()));
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

  private Burst burst(Motion motion) {
    double[] times = motion.stops().pictureS();
    return new Burst(
        times[0] / request.realPerMediaS(), times[times.length - 1] / request.realPerMediaS());
  }

  private static String severalBursts(List<Burst> bursts) {
    StringBuilder list = new StringBuilder();
    for (Burst burst : bursts) {
      list.append(list.isEmpty() ? "" : ", ")
          .append(String.format(Locale.ROOT, "%.2f–%.2f s", burst.startS(), burst.endS()));
    }
    return bursts.size()
        + " attempts were found ("
        + list
        + "): all figures are of the first; name a stretch for another.";
  }

  /** Filmed from the front, the right elbow is left of the hands in the picture. */
  private boolean onOtherArm(Place elbow, Motion motion) {
    Estimate.Region hand = motion.region();
    boolean leftOfHands = elbow.at().x() < hand.x() + hand.width() / 2;
    return leftOfHands != (request.hand() == Hand.RIGHT);
  }

  private ElbowTracker.Followed elbow(Attempt attempt, SlapList slaps) throws ClipException {
    Footage footage = attempt.motion().contacts().motion().footage();
    Blob hand = attempt.motion().contacts().motion().blob();
    Point given = request.hints().elbow();
    Place place =
        given != null
            ? Place.given(given)
            : ElbowFinder.find(
                Regions.liveliness(footage),
                footage.width(),
                footage.pxPerCell(),
                footage.pictures().get(0),
                hand);
    if (place == null || given == null && onOtherArm(place, attempt.motion())) {
      return new ElbowTracker.Followed(
          null,
          List.of(
              "The elbow was not followed: it could not be found. Give its place to have its"
                  + " drift."));
    }
    ScaleOf scale =
        ScaleOf.from(request.hints(), ElbowFinder.forearmPx(place.at(), hand, footage.pxPerCell()));
    double lastS = slaps.slaps().get(slaps.slaps().size() - 1).timeS();
    int end = Math.min(attempt.stretch().to(), frames.indexAt(lastS + AFTER_S) + 1);
    ElbowTracker.Followed followed =
        ElbowTracker.follow(
            clip,
            attempt.stretch().from(),
            end,
            slaps.slaps().get(0).timeS(),
            place,
            request.hints().trunk(),
            scale,
            new PartWatch(watch, MOTION_SHARE, 1 - MOTION_SHARE));
    List<String> said = new ArrayList<>(followed.warnings());
    String caution = scale.caution();
    if (followed.path() != null && caution != null) {
      said.add(caution);
    }
    if (followed.path() != null && given == null) {
      said.add("The elbow's place was found by the program: check it in the picture.");
    }
    return new ElbowTracker.Followed(followed.path(), said);
  }
}
