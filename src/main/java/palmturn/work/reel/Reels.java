package palmturn.work.reel;

import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.Progress;
import palmturn.film.ReelWriter;
import palmturn.measure.Moments;
import palmturn.measure.ReadingChoice;
import palmturn.measure.TrialAlignment;
import palmturn.store.SessionFolder;
import palmturn.trial.Hand;
import palmturn.trial.Reading;
import palmturn.trial.Slap;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.trial.UserError;
import palmturn.work.WorkFile;
import palmturn.work.score.Scoring;
import palmturn.work.session.Sessions;

/**
 * Makes a trial's reel, for people who can't feel their own faults: its worst moments and its
 * cleanest second in slow motion, with the marks drawn in.
 */
public final class Reels {
  private static final int WORST = 3;
  private static final double SLOWER = 4;
  private static final double BEFORE_S = 0.15;
  private static final double AFTER_S = 0.25;

  private static final int TITLE_PICTURES = ReelWriter.FPS;
  private static final int FAULT_STANDS_PICTURES = ReelWriter.FPS / 2;

  private final FilmedHand hand;
  private final @Nullable FilmedHand other;
  private final double windowS;
  private final ReelWriter writer;
  private final Progress progress;

  private Reels(
      FilmedHand hand,
      @Nullable FilmedHand other,
      double windowS,
      ReelWriter writer,
      Progress progress) {
    this.hand = hand;
    this.other = other;
    this.windowS = windowS;
    this.writer = writer;
    this.progress = progress;
  }

  /**
   * The contents of a reel.
   *
   * @param trial whose
   * @param reader whose reading, as in {@link Scoring#score}
   * @param view how much of the picture is shown
   * @param bothHands whether the other hand is shown beside it, where it was filmed and read too
   */
  public record ReelRequest(TrialId trial, @Nullable String reader, View view, boolean bothHands) {}

  /** The part of the picture that is shown. */
  public enum View {
    /** Hands and elbow where they are known, else all of it. */
    HANDS_IF_KNOWN,
    /** Nothing but hands and elbow, so that no face is. */
    HANDS,
    /** All of it. */
    WHOLE
  }

  /**
   * Writes a reel and returns how long it is, seconds.
   *
   * @throws UserError if the trial is not there, has no marks to show, its clip can't be read or
   *     the file not be written, or it was stopped; then no file is left
   */
  public static double write(SessionFolder folder, ReelRequest wanted, Path file, Progress progress)
      throws UserError {
    Trial trial = Sessions.trial(folder, wanted.trial().name());
    Reading reading = Scoring.choice(wanted.reader()).of(trial);
    if (reading == null) {
      throw new UserError(trial.id().name() + " has no such reading: mark it first");
    }
    double windowS = folder.session().windowS();
    List<Scene> scenes = Scene.of(Moments.of(trial, reading, windowS, WORST));
    if (scenes.isEmpty()) {
      throw new UserError(
          trial.id().name() + ": under three slaps are marked, so there is nothing to show");
    }
    createFolder(file);
    try (WorkFile part = WorkFile.file(file);
        FilmedHand hand = FilmedHand.open(folder, trial, reading, wanted.view());
        FilmedHand other = wanted.bothHands() ? other(folder, trial, wanted) : null) {
      double lengthS;
      try (ReelWriter writer = ReelWriter.create(part.path(), ReelDrawing.PALETTE.paper())) {
        new Reels(hand, other, windowS, writer, progress).scenes(scenes);
        writer.finish();
        lengthS = writer.lengthS();
      }
      part.moveTo(file);
      return lengthS;
    } catch (IOException e) {
      throw new UserError(file + " can't be written: " + e.getMessage(), e);
    }
  }

  private static void createFolder(Path file) throws UserError {
    try {
      Files.createDirectories(file.toAbsolutePath().getParent());
    } catch (IOException e) {
      throw new UserError(file + " can't be written: " + e.getMessage(), e);
    }
  }

  private static @Nullable FilmedHand other(SessionFolder folder, Trial trial, ReelRequest wanted)
      throws UserError {
    ReadingChoice choice = Scoring.choice(wanted.reader());
    Trial beside = OtherHand.of(trial, folder.trials(), choice);
    Reading reading = beside == null ? null : choice.of(beside);
    return beside == null || reading == null
        ? null
        : FilmedHand.open(folder, beside, reading, wanted.view());
  }

  private void scenes(List<Scene> scenes) throws IOException, ClipException, UserError {
    for (int i = 0; i < scenes.size(); i++) {
      scene(scenes.get(i), i / (double) scenes.size(), 1.0 / scenes.size());
    }
  }

  private void scene(Scene scene, double doneShare, double share)
      throws IOException, ClipException, UserError {
    Moments.Moment moment = scene.moment();
    double fromS = hand.after(moment.fromS(), -BEFORE_S);
    double toS = hand.after(moment.toS(), AFTER_S);
    TrialAlignment meeting =
        other == null ? null : OtherHand.meeting(hand.clock(), other.clock(), moment);
    for (int i = 0; i < TITLE_PICTURES; i++) {
      show(scene, meeting, fromS, true);
    }
    long pictures = Math.round(hand.real(fromS, toS) * SLOWER * ReelWriter.FPS);
    Slap stoodOn = null;
    for (long n = 0; n < pictures; n++) {
      if (progress.stopped() || WorkFile.isEnding()) {
        throw new UserError("stopped; no reel was written");
      }
      progress.at(doneShare + share * n / pictures, scene.title());
      double nowS = hand.after(fromS, n / (SLOWER * ReelWriter.FPS));
      show(scene, meeting, nowS, false);
      Slap mark = hand.markAt(nowS);
      if (mark != null && mark != stoodOn && moment.faulty().contains(mark)) {
        stoodOn = mark;
        for (int i = 0; i < FAULT_STANDS_PICTURES; i++) {
          show(scene, meeting, nowS, false);
        }
      }
    }
  }

  private void show(Scene scene, @Nullable TrialAlignment meeting, double nowS, boolean title)
      throws IOException, ClipException {
    List<Half> halves = new ArrayList<>();
    if (other == null || meeting == null) {
      halves.add(new Half(hand, nowS, ReelDrawing.PICTURES));
    } else {
      boolean left = hand.trial().id().hand() == Hand.LEFT;
      halves.add(new Half(hand, nowS, left ? ReelDrawing.LEFT : ReelDrawing.RIGHT));
      halves.add(
          new Half(other, meeting.toOther(nowS), left ? ReelDrawing.RIGHT : ReelDrawing.LEFT));
    }
    List<ReelWriter.Pane> panes = new ArrayList<>();
    for (Half half : halves) {
      panes.add(new ReelWriter.Pane(half.hand.at(half.nowS), half.hand.part(), half.into()));
    }
    writer.show(panes, g -> over(g, scene, halves, nowS, title));
  }

  /** One hand at a moment, and the place of its picture. */
  private record Half(FilmedHand hand, double nowS, Rectangle box) {
    Rectangle into() {
      return ReelWriter.fitted(hand.part(), box);
    }
  }

  private void over(Graphics2D g, Scene scene, List<Half> halves, double nowS, boolean title) {
    TrialId id = hand.trial().id();
    ReelDrawing.header(
        g,
        scene.title(),
        String.format(
            Locale.ROOT,
            "%s hand, %s %d, 1/%.0f speed",
            id.hand().code(),
            id.block(),
            id.repeat(),
            SLOWER));
    for (Half half : title ? List.<Half>of() : halves) {
      Slap mark = half.hand.markAt(half.nowS);
      ReelDrawing.mark(g, half.into(), mark, mark == null || half.hand.clean(mark));
      if (halves.size() > 1) {
        ReelDrawing.name(g, half.into(), half.hand.trial().id().hand().code() + " hand");
      }
    }
    if (title) {
      ReelDrawing.title(g, scene.title());
    }
    Moments.Moment moment = scene.moment();
    ReelDrawing.strip(g, hand, windowS, moment.fromS(), moment.toS(), nowS);
  }
}
