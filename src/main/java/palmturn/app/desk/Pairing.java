package palmturn.app.desk;

import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.app.estimate.ShownEstimate;
import palmturn.app.keys.Action;
import palmturn.app.pair.PairPartners;
import palmturn.app.pair.PairTrial;
import palmturn.app.pair.PairTrial.From;
import palmturn.app.pair.TrialPair;
import palmturn.app.stage.Stage;
import palmturn.app.tasks.Tasks;
import palmturn.clip.ClipFile;
import palmturn.measure.ReadingChoice;
import palmturn.store.SessionFolder;
import palmturn.trial.Estimate;
import palmturn.trial.Reading;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

/** The trial on the stage and another one side by side, with their clips. */
public final class Pairing {
  /** The three clips share what frames may take; the one behind is not looked at meanwhile. */
  private static final double BEHIND = 0.1;

  private static final double SHOWN = 0.45;
  private static final int NOBODY = -1;

  private final Tasks background;
  private final OpenSession session;
  private final ClipLoader loader;
  private final Stage stage;
  private final ShownEstimate estimate;
  private final Prompts prompts;
  private final TrialPair pair;
  private List<PairTrial> beside = List.of();
  private int at = NOBODY;
  private @Nullable OpenClip one;
  private @Nullable OpenClip other;

  Pairing(
      Threads threads,
      OpenSession session,
      ClipLoader loader,
      Stage stage,
      ShownEstimate estimate,
      Prompts prompts) {
    background = threads.background();
    this.session = session;
    this.loader = loader;
    this.stage = stage;
    this.estimate = estimate;
    this.prompts = prompts;
    pair = new TrialPair(threads.screen());
  }

  /** The two trials. */
  public TrialPair pair() {
    return pair;
  }

  /** Sets the other hand's trial beside the open one. */
  public void open() {
    TrialId id = session.trialId();
    Trial now = session.trials().get(id);
    OpenClip behind = loader.clip();
    if (now == null || behind == null) {
      prompts
          .notices()
          .warn(
              session.folder() == null
                  ? OpenSession.NONE
                  : now == null
                      ? "nothing is filmed at this place: choose a filmed trial, then both hands"
                      : "its clip is still being opened: try again in a moment");
      return;
    }
    stage.stop();
    behind.share(BEHIND);
    PairTrial first = shown(now, estimate.hiddenProperty().get());
    pair.begin(first);
    OpenClip mine = OpenClip.open(now.id(), behind.clip(), SHOWN);
    one = mine;
    pair.openOne(first, mine.clip().frames(), mine.cache()::frame);
    beside =
        PairPartners.rank(
            now.id(),
            session.trials().all().stream()
                .map(each -> shown(each, session.readers().readsBlind(each)))
                .toList());
    PairTrial usual = PairPartners.preferred(now.id(), beside);
    at = usual == null ? NOBODY : 0;
    show(now.id());
  }

  /** Sets another trial beside the open one: the next of all, or the one before. */
  public void another(int by) {
    OpenClip mine = one;
    if (mine != null && !beside.isEmpty()) {
      at = at == NOBODY ? (by > 0 ? 0 : beside.size() - 1) : Math.floorMod(at + by, beside.size());
      show(mine.id());
    }
  }

  /** Shows the hands as large as they fit, where it is known where they are. */
  public void zoomToHands() {
    if (!pair.toggleHandsZoom()) {
      prompts
          .notices()
          .warn(
              "where the hands are is not known: estimate the trials, or draw a box with %s"
                  .formatted(prompts.keys().of(Action.SET_PLACES)));
    }
  }

  /** Goes back to the open trial, to the frame that was looked at. */
  public void leave() {
    int frame = pair.one().stage().frameProperty().get();
    close();
    stage.seek(frame);
  }

  /** Lets go of both clips. */
  void close() {
    if (!pair.activeProperty().get()) {
      return;
    }
    pair.close();
    letGo(one);
    letGo(other);
    one = null;
    other = null;
    beside = List.of();
    at = NOBODY;
    OpenClip behind = loader.clip();
    if (behind != null) {
      behind.share(1);
    }
  }

  private void show(TrialId open) {
    PairTrial wanted = at == NOBODY ? null : beside.get(at);
    letGo(other);
    other = null;
    pair.setOtherComing(wanted, wanted == null ? nobody(open) : "");
    SessionFolder from = session.folder();
    if (wanted == null || from == null) {
      return;
    }
    Trial trial = wanted.trial();
    session.readers().recordOpened(trial);
    background.run(
        () -> ClipFile.open(from.clipPath(trial)),
        clip -> {
          if (wanted(wanted)) {
            OpenClip came = OpenClip.open(trial.id(), clip, SHOWN);
            other = came;
            pair.openOther(wanted, clip.frames(), came.cache()::frame);
          }
        },
        problem -> failed(wanted, problem));
    background.run(
        () -> {
          from.checkClip(trial);
          return true;
        },
        same -> {},
        problem -> failed(wanted, problem));
  }

  private boolean wanted(PairTrial trial) {
    return pair.other().trialProperty().get() == trial && pair.activeProperty().get();
  }

  private void failed(PairTrial trial, Exception problem) {
    if (wanted(trial)) {
      pair.other().setTrouble(Notices.message(problem));
    }
  }

  /** Waiting for a clip's own thread is not for the screen's. */
  private void letGo(@Nullable OpenClip old) {
    if (old != null) {
      background.run(
          () -> {
            OpenClip.close(old);
            return true;
          },
          done -> {},
          prompts.notices()::fail);
    }
  }

  private String nobody(TrialId open) {
    String hand = open.hand().other().code();
    String missing = "No trial of the %s hand is filmed.".formatted(hand);
    return beside.isEmpty()
        ? missing
            + " Esc goes back, and %s adds its clip there.".formatted(prompts.keys().of(Action.ADD))
        : missing + " ↑ or ↓ sets another trial of the same hand beside this one.";
  }

  private PairTrial shown(Trial of, boolean hidden) {
    Reading reading = session.readers().shown(of);
    Estimate estimate = hidden ? null : of.estimate();
    Estimate.Region hands = of.places().handRegion();
    if (hands == null && estimate != null) {
      hands = estimate.handRegion();
    }
    if (reading != null && !reading.slaps().isEmpty()) {
      return new PairTrial(of, reading, From.READER, hands);
    }
    if (estimate != null && !estimate.slaps().isEmpty()) {
      Reading found = estimate.toReading(ReadingChoice.ESTIMATE_NAME);
      return new PairTrial(of, found, From.ESTIMATE, hands);
    }
    boolean more = of.estimate() != null || !of.readings().isEmpty();
    return new PairTrial(of, null, hidden && more ? From.HIDDEN : From.NOBODY, hands);
  }
}
