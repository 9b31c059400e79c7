package palmturn.work.reel;

import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.film.ReelWriter;
import palmturn.measure.Moments;
import palmturn.store.SessionFolder;
import palmturn.trial.Reading;
import palmturn.trial.Slap;
import palmturn.trial.TimeScale;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.work.Progress;
import palmturn.work.Scoring;
import palmturn.work.Sessions;
import palmturn.work.UserError;

/**
 * Makes a trial's reel, for people who can't feel their own faults: its worst moments and its
 * cleanest second in slow motion, with the marks drawn in.
 */
public final class Reels {
  private static final int WORST = 3;
  private static final double SLOWER = 4;
  private static final double BEFORE_S = 0.15;
  private static final double AFTER_S = 0.25;

  /** A mark is shown on the picture for so long after its moment, real seconds. */
  private static final double SHOWN_S = 0.08;

  private static final int TITLE_PICTURES = ReelWriter.FPS;
  private static final int FAULT_STANDS_PICTURES = ReelWriter.FPS / 2;

  private final Filmed hand;
  private final double windowS;
  private final ReelWriter writer;
  private final Progress progress;

  private Reels(Filmed hand, double windowS, ReelWriter writer, Progress progress) {
    this.hand = hand;
    this.windowS = windowS;
    this.writer = writer;
    this.progress = progress;
  }

  /**
   * What a reel is made of.
   *
   * @param trial whose
   * @param reader whose reading, as in {@link Scoring#score}
   * @param view how much of the picture is shown
   */
  public record Wanted(TrialId trial, @Nullable String reader, View view) {}

  /** How much of the picture is shown. */
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
  public static double write(SessionFolder folder, Wanted wanted, Path file, Progress progress)
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
    Path part = file.resolveSibling(file.getFileName() + ".part");
    try (Filmed hand = Filmed.open(folder, trial, reading, wanted.view())) {
      Files.createDirectories(file.toAbsolutePath().getParent());
      double lengthS;
      try (ReelWriter writer = ReelWriter.create(part, ReelDrawing.PALETTE.paper())) {
        new Reels(hand, windowS, writer, progress).scenes(scenes);
        writer.finish();
        lengthS = writer.lengthS();
      }
      Files.move(part, file, StandardCopyOption.REPLACE_EXISTING);
      return lengthS;
    } catch (ClipException e) {
      throw UserError.of(e);
    } catch (IOException e) {
      throw new UserError(file + " can't be written: " + e.getMessage(), e);
    }
  }

  private void scenes(List<Scene> scenes) throws IOException, ClipException, UserError {
    for (int i = 0; i < scenes.size(); i++) {
      scene(scenes.get(i), i / (double) scenes.size(), 1.0 / scenes.size());
    }
  }

  private void scene(Scene scene, double doneShare, double share)
      throws IOException, ClipException, UserError {
    Moments.Moment moment = scene.moment();
    double fromS = after(moment.fromS(), -BEFORE_S);
    double toS = after(moment.toS(), AFTER_S);
    for (int i = 0; i < TITLE_PICTURES; i++) {
      show(scene, fromS, true);
    }
    double realS = real(fromS, toS);
    long pictures = Math.round(realS * SLOWER * ReelWriter.FPS);
    @Nullable Slap stoodOn = null;
    for (long n = 0; n < pictures; n++) {
      if (progress.stopped()) {
        throw new UserError("stopped; no reel was written");
      }
      progress.at(doneShare + share * n / pictures, scene.title());
      double nowS = after(fromS, n / (SLOWER * ReelWriter.FPS));
      show(scene, nowS, false);
      Slap mark = markAt(nowS);
      if (mark != null && mark != stoodOn && moment.faulty().contains(mark)) {
        stoodOn = mark;
        for (int i = 0; i < FAULT_STANDS_PICTURES; i++) {
          show(scene, nowS, false);
        }
      }
    }
  }

  private void show(Scene scene, double nowS, boolean title) throws IOException, ClipException {
    Moments.Moment moment = scene.moment();
    Rectangle into = ReelWriter.fitted(hand.part(), ReelDrawing.PICTURES);
    writer.show(
        List.of(new ReelWriter.Pane(hand.at(nowS), hand.part(), into)),
        g -> over(g, scene, into, nowS, title, moment));
  }

  private void over(
      Graphics2D g,
      Scene scene,
      Rectangle into,
      double nowS,
      boolean title,
      Moments.Moment moment) {
    TrialId id = hand.trial().id();
    ReelDrawing.header(
        g,
        scene.title(),
        "%s hand, %s %d, 1/%.0f speed"
            .formatted(id.hand().code(), id.block(), id.repeat(), SLOWER));
    if (title) {
      ReelDrawing.title(g, scene.title());
    } else {
      Slap mark = markAt(nowS);
      ReelDrawing.mark(g, into, mark, mark == null || !moment.faulty().contains(mark));
    }
    ReelDrawing.strip(g, hand, windowS, moment.fromS(), moment.toS(), nowS);
  }

  /** Returns the mark whose picture is on the screen, or was a moment ago. */
  private @Nullable Slap markAt(double nowS) {
    double shownS = hand.frameS(nowS);
    Slap last = null;
    for (Slap slap : hand.reading().slaps()) {
      double agoS = real(hand.frameS(slap.timeS()), shownS);
      if (agoS >= 0 && agoS <= SHOWN_S) {
        last = slap;
      }
    }
    return last;
  }

  private double real(double fromS, double toS) {
    TimeScale scale = hand.trial().timeScale();
    return scale.known() ? scale.realBetween(fromS, toS) : toS - fromS;
  }

  private double after(double fromS, double realS) {
    TimeScale scale = hand.trial().timeScale();
    return !scale.known() || realS < 0
        ? fromS + realS / (scale.known() ? scale.factorAt(fromS) : 1)
        : scale.mediaAfter(fromS, realS);
  }
}
