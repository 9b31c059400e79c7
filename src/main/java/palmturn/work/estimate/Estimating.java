package palmturn.work.estimate;

import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.Progress;
import palmturn.estimate.Estimator;
import palmturn.estimate.hands.NetworkUse;
import palmturn.estimate.request.Hints;
import palmturn.estimate.request.KnownSide;
import palmturn.estimate.request.Request;
import palmturn.store.SessionFolder;
import palmturn.trial.ClipFacts;
import palmturn.trial.Estimate;
import palmturn.trial.Hand;
import palmturn.trial.Mirrored;
import palmturn.trial.Session;
import palmturn.trial.Side;
import palmturn.trial.TimeScale;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.trial.UserError;
import palmturn.work.models.LandmarkModels;
import palmturn.work.score.LimitsInForce;
import palmturn.work.session.AddClip;

/** Estimates clips, and trials of a session, in which it stores what was found. */
public final class Estimating {
  private final Engine engine;
  private final LimitsInForce users;

  /** Starts work with what makes the estimates. */
  public Estimating(Engine engine) {
    this(engine, LimitsInForce.STANDARD);
  }

  private Estimating(Engine engine, LimitsInForce users) {
    this.engine = engine;
    this.users = users;
  }

  /** Returns work with the program's own estimator and limits. */
  public static Estimating standard() {
    return new Estimating(Estimating::byAllThatIsThere);
  }

  /** Returns work with the program's own estimator and networks used otherwise, to be measured. */
  public static Estimating using(NetworkUse networks) {
    return new Estimating(
        (clip, request, progress) -> Estimator.estimate(clip, request, networks, progress));
  }

  /**
   * Returns work with the program's own estimator and the limits that the user has set.
   *
   * @param settings the folder of the user's settings
   * @throws UserError if the user's limits can't be read or have a fault
   */
  public static Estimating standard(Path settings) throws UserError {
    return new Estimating(Estimating::byAllThatIsThere, LimitsInForce.of(settings, null));
  }

  private static Estimate byAllThatIsThere(ClipFile clip, Request request, Progress progress)
      throws ClipException {
    boolean shape = request.use().contains(Estimate.Source.SHAPE);
    return shape
        ? withNetworks(LandmarkModels.ofThisUser(), clip, request, progress)
        : Estimator.estimate(clip, request, null, progress);
  }

  /** Estimates with the networks where all are whole; one that is damaged is said, not ignored. */
  static Estimate withNetworks(
      LandmarkModels models, ClipFile clip, Request request, Progress progress)
      throws ClipException {
    Path installed = models.installed();
    NetworkUse networks = installed == null ? null : NetworkUse.usual(installed);
    Estimate found = Estimator.estimate(clip, request, networks, progress);
    List<String> damaged = installed == null ? models.damaged() : List.of();
    return damaged.isEmpty()
        ? found
        : found.withWarning(
            "landmark networks are damaged, so shape was not looked at: %s; install them again"
                .formatted(String.join(", ", damaged)));
  }

  /** Makes an estimate of a clip. */
  @FunctionalInterface
  public interface Engine {
    /**
     * Returns what was found in a clip.
     *
     * @throws ClipException if it can't be read
     */
    Estimate estimate(ClipFile clip, Request request, Progress progress) throws ClipException;
  }

  /**
   * The sources that may be used and the facts known of the picture.
   *
   * @param use the sources that may be used
   * @param hints places in the picture, lengths
   * @param known one slap whose side is known; null leaves that to a trial's readings
   */
  public record Options(Set<Estimate.Source> use, Hints hints, @Nullable KnownSide known) {
    /** Everything may be used, nothing is known. */
    public static final Options ALL =
        new Options(EnumSet.allOf(Estimate.Source.class), Hints.NONE, null);

    /** The quick choice: sound and motion, with nothing known. */
    public static final Options QUICK =
        new Options(EnumSet.of(Estimate.Source.SOUND, Estimate.Source.MOTION), Hints.NONE, null);
  }

  /**
   * A clip outside a session.
   *
   * @param path where it lies
   * @param hand the moving hand, the athlete's own
   * @param mirrored whether it shows the athlete mirrored
   * @param fromS start of the stretch, media seconds; null for the clip's start
   * @param toS end of the stretch, media seconds; null for the clip's end
   * @param captureFps frames a second at capture, where the file does not say
   */
  public record Clip(
      Path path,
      Hand hand,
      Mirrored mirrored,
      @Nullable Double fromS,
      @Nullable Double toS,
      @Nullable Double captureFps) {}

  /** Returns what was found in a clip. */
  public Estimate clip(Clip wanted, Options asked, Progress progress) throws UserError {
    try {
      ClipFile clip = ClipFile.open(wanted.path());
      ClipFacts facts = clip.facts();
      AddClip.checkStretch(facts, wanted.fromS());
      Double captureFps = wanted.captureFps() != null ? wanted.captureFps() : facts.captureFps();
      TimeScale scale = AddClip.timeScale(facts, captureFps);
      Request request =
          new Request(
              onScreen(wanted.hand(), wanted.mirrored()),
              wanted.fromS(),
              wanted.toS(),
              captureFps,
              factor(scale),
              asked.use(),
              asked.hints(),
              users.limits().elbowCm().value(),
              asked.known());
      Estimate found = run(clip, request, progress);
      return annotated(
          found, scale, asked.known() == null ? null : LabelledSlap.given(asked.known()));
    } catch (IllegalArgumentException e) {
      throw new UserError(wanted.path() + ": " + e.getMessage(), e);
    }
  }

  /**
   * Estimates a trial and stores what was found in the session, which must be open for writing. The
   * side of all slaps follows the first slap whose side a reader has seen, unless one is given.
   */
  public Estimate trial(SessionFolder folder, TrialId id, Options asked, Progress progress)
      throws UserError {
    try {
      Trial trial = folder.trial(id);
      folder.checkClip(trial);
      LabelledSlap side =
          asked.known() == null ? LabelledSlap.of(trial) : LabelledSlap.given(asked.known());
      Session.Facts facts = folder.session().facts();
      Request request =
          new Request(
              onScreen(id.hand(), trial.mirrored()),
              trial.fromS(),
              trial.toS(),
              trial.captureFps(),
              factor(trial.timeScale()),
              asked.use(),
              asked
                  .hints()
                  .withPlaces(trial.places())
                  .withLengths(facts.forearmCm(), facts.handCm(), facts.statureCm()),
              users.in(folder.folder()).limits().elbowCm().value(),
              side == null ? null : side.known());
      ClipFile clip = ClipFile.open(folder.clipPath(trial));
      Estimate found = annotated(run(clip, request, progress), trial.timeScale(), side);
      // A clip that was replaced in the meantime must not be told under the old one's name.
      folder.checkClip(trial);
      folder.keep(id, found);
      return found;
    } catch (IllegalArgumentException e) {
      throw new UserError(id.name() + ": " + e.getMessage(), e);
    }
  }

  private Estimate run(ClipFile clip, Request request, Progress progress)
      throws ClipException, UserError {
    String name = String.valueOf(clip.path().getFileName());
    if (clip.frames().size() < 2) {
      throw new UserError(name + " is a single picture: there is no movement to look for");
    }
    try {
      return engine.estimate(clip, request, progress);
    } catch (RuntimeException e) {
      if (progress.stopped()) {
        throw new UserError(name + ": stopped; nothing was stored", e);
      }
      if (String.valueOf(e.getMessage()).startsWith("OpenCV(")) {
        // Its message has the folders of whoever built it, which is nothing to a user.
        throw new UserError(
            name
                + ": its pictures are not ones that hands can be looked for in; are they too small?",
            e);
      }
      throw e;
    }
  }

  /** In a mirrored picture the athlete's right hand is where a left one would be. */
  private static Hand onScreen(Hand hand, Mirrored mirrored) {
    return mirrored == Mirrored.TRUE ? hand.other() : hand;
  }

  private static double factor(TimeScale scale) {
    return scale.pieces().get(0).factor();
  }

  private static Estimate annotated(
      Estimate found, TimeScale scale, @Nullable LabelledSlap source) {
    Estimate annotated = found;
    if (!scale.known()) {
      annotated = annotated.withoutSpeed(scale.refusedWhy());
    } else if (scale.pieces().size() > 1) {
      annotated =
          annotated.withoutSpeed("the clip is slowed in part; score it to have them by piece");
    }
    boolean sided = annotated.slaps().stream().anyMatch(slap -> slap.side() != Side.UNKNOWN);
    return sided && source != null ? annotated.withWarning(source.sentence()) : annotated;
  }
}
