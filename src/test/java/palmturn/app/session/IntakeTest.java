package palmturn.app.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.app.estimate.MadeEstimates;
import palmturn.app.tasks.RunningTask;
import palmturn.app.tasks.Tasks;
import palmturn.clip.Progress;
import palmturn.store.SessionFolder;
import palmturn.trial.ClipFacts;
import palmturn.trial.Estimate;
import palmturn.trial.Estimate.Stretch;
import palmturn.trial.Hand;
import palmturn.trial.Mirrored;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.trial.UserError;
import palmturn.work.session.ClipSummary;

class IntakeTest {
  private static final LocalDate DAY = LocalDate.of(2026, 11, 14);
  private static final Path SHORT = Path.of("short.mp4");
  private static final Path LONG = Path.of("long.mp4");

  @TempDir private Path folder;

  private final List<Runnable> waiting = new ArrayList<>();
  private double lengthS = 6;
  private List<Stretch> bursts = List.of();
  private Double lookedFromS;

  @Test
  void longClipIsOfferedAsItsAttemptsAndAShortOneAsItIs() {
    lengthS = 40;
    bursts = List.of(new Stretch(3, 8), new Stretch(9, 14), new Stretch(30, 35));
    Intake intake = intake(Tasks.direct());
    intake.begin(List.of(LONG), fresh(), DAY);

    List<TrialCandidate> attempts = intake.candidatesProperty().get();
    assertEquals(3, attempts.size());
    assertEquals(2.0, lookedFromS, "pictures are of the first attempt, not of a rest");
    assertEquals(new TrialCandidate(LONG, 2.0, 8.5, true, null), attempts.get(0));
    assertEquals(new TrialCandidate(LONG, 8.5, 15.0, true, null), attempts.get(1));
    assertEquals(new TrialCandidate(LONG, 29.0, 36.0, true, null), attempts.get(2));

    lengthS = 6;
    intake.begin(List.of(SHORT), fresh(), DAY);
    assertEquals(List.of(TrialCandidate.whole(SHORT)), intake.candidatesProperty().get());
    assertNull(intake.runningProperty().get());
  }

  @Test
  void lookingForAttemptsCanBeStoppedAndThenTheClipStaysOneTrial() {
    lengthS = 40;
    bursts = List.of(new Stretch(3, 8), new Stretch(20, 25));
    Intake intake = intake(later());
    intake.begin(List.of(LONG, SHORT), fresh(), DAY);
    work();
    assertTrue(intake.runningProperty().get().words().contains("attempts in long.mp4"));
    intake.stop();
    work();
    assertEquals(2, intake.candidatesProperty().get().size());
    assertTrue(intake.troublesProperty().get().get(LONG).startsWith("Not looked for attempts"));
    assertTrue(intake.runningProperty().get().words().endsWith("short.mp4"));
  }

  @Test
  void progressIsToldInSteps() {
    lengthS = 40;
    bursts = List.of(new Stretch(3, 8));
    Intake intake = intake(later());
    intake.begin(List.of(LONG), fresh(), DAY);
    work();
    RunningTask now = intake.runningProperty().get();
    work();
    assertEquals(0.5, now.shareProperty().get(), 0);
  }

  @Test
  void clipThatCannotBeReadIsLeftOutInWords() {
    lengthS = -1;
    Intake intake = intake(Tasks.direct());
    intake.begin(List.of(SHORT), fresh(), DAY);

    assertEquals("short.mp4: no video in it", intake.troublesProperty().get().get(SHORT));
    intake.athleteProperty().set("H-07");
    intake.firstHandProperty().set(Hand.LEFT);
    intake.add((session, last, problem) -> {});
    assertEquals("No attempt is left to add.", intake.obstacleProperty().get());
  }

  @Test
  void whatIsMissingIsSaid() {
    Intake intake = intake(Tasks.direct());
    intake.begin(List.of(SHORT), fresh(), DAY);
    intake.add((session, last, problem) -> {});
    assertEquals("The athlete's code is still missing.", intake.obstacleProperty().get());
    intake.athleteProperty().set("H-07");
    intake.dateProperty().set("14.11.");
    intake.add((session, last, problem) -> {});
    assertEquals("Write the day of filming as 2026-11-14.", intake.obstacleProperty().get());
    intake.dateProperty().set("2026-11-14");
    intake.add((session, last, problem) -> {});
    assertEquals("Say which hand moves in the first attempt.", intake.obstacleProperty().get());
  }

  @Test
  void answersBecomeASession() throws Exception {
    Path clip = folder.resolve("counter.mp4");
    try (InputStream in =
        Objects.requireNonNull(getClass().getResourceAsStream("/palmturn/app/counter.mp4"))) {
      Files.copy(in, clip);
    }
    Intake intake = intake(Tasks.direct());
    intake.begin(List.of(clip), fresh(), DAY);
    intake.athleteProperty().set("H-07");
    intake.racketHandProperty().set(Hand.RIGHT);
    intake.mirroredProperty().set(Mirrored.FALSE);
    intake.firstHandProperty().set(Hand.LEFT);
    List<SessionFolder> made = new ArrayList<>();
    intake.add(
        (session, last, problem) -> {
          assertEquals("left-baseline-1", last.name());
          assertEquals("", problem);
          made.add(session);
        });
    assertEquals("", intake.obstacleProperty().get());
    try (SessionFolder session = made.get(0)) {
      assertEquals(folder.resolve("H-07-2026-11-14"), session.folder());
      assertEquals(Hand.RIGHT, session.session().facts().racketHand());
      Trial trial = session.trial(TrialId.parse("left-baseline-1"));
      assertEquals(Mirrored.FALSE, trial.mirrored());
    }
  }

  @Test
  void clipsOfAClickTrackKeepItsPace() throws Exception {
    Path clip = folder.resolve("counter.mp4");
    try (InputStream in =
        Objects.requireNonNull(getClass().getResourceAsStream("/palmturn/app/counter.mp4"))) {
      Files.copy(in, clip);
    }
    Intake intake = intake(Tasks.direct());
    intake.begin(List.of(clip), fresh(), DAY);
    intake.athleteProperty().set("H-07");
    intake.firstHandProperty().set(Hand.LEFT);
    for (String slip : List.of("fast", "0", "0.3", "31", "3.1 a second")) {
      intake.paceProperty().set(slip);
      intake.add((session, last, problem) -> {});
      assertTrue(intake.obstacleProperty().get().startsWith("Write the click track’s pace"), slip);
    }
    intake.paceProperty().set("3,1");
    List<SessionFolder> made = new ArrayList<>();
    intake.add((session, last, problem) -> made.add(session));
    try (SessionFolder session = made.get(0)) {
      assertEquals(3.1, session.trials().get(0).paceSlapsPerS());
    }
  }

  @Test
  void clipThatCannotBeAddedLeavesNoSessionBehind() throws Exception {
    Path clip = Files.writeString(folder.resolve("broken.mp4"), "no video");
    Intake intake = intake(Tasks.direct());
    intake.begin(List.of(clip), fresh(), DAY);
    intake.athleteProperty().set("H-07");
    intake.firstHandProperty().set(Hand.LEFT);
    List<String> log = new ArrayList<>();
    intake.add(
        new Intake.Receiver() {
          @Override
          public void added(SessionFolder session, TrialId last, String problem) {
            log.add("added");
          }

          @Override
          public void begun(Path session, List<String> trials) {
            log.add(session.getFileName() + " " + trials);
          }

          @Override
          public void ended() {
            log.add("ended");
          }
        });
    assertTrue(intake.obstacleProperty().get().contains("broken.mp4"));
    assertEquals(List.of("H-07-2026-11-14 [left-baseline-1]", "ended"), log);
    try (var there = Files.list(folder)) {
      assertEquals(List.of(clip), there.toList());
    }
  }

  @Test
  void placeSaysTheHand() {
    Intake intake = intake(Tasks.direct());
    TrialId place = TrialId.parse("left-baseline-2");
    intake.begin(
        List.of(SHORT), new Intake.Target(null, "baseline", place, Hand.LEFT, Set.of()), DAY);
    assertEquals(Hand.LEFT, intake.firstHandProperty().get());
    assertEquals(List.of(place), intake.places());
  }

  @Test
  void clipsGivenUpSayNothingMore() {
    Intake intake = intake(later());
    intake.begin(List.of(SHORT), fresh(), DAY);
    intake.giveUp();
    work();
    assertTrue(intake.looksProperty().get().isEmpty());
    assertNull(intake.runningProperty().get());
  }

  private static Intake.Target fresh() {
    return new Intake.Target(null, "baseline", null, Hand.RIGHT, Set.of());
  }

  private Intake intake(Tasks tasks) {
    return new Intake(tasks, Runnable::run, new Made());
  }

  /** Does what was waiting at this moment, and nothing that it asks for. */
  private void work() {
    List<Runnable> now = List.copyOf(waiting);
    waiting.clear();
    now.forEach(Runnable::run);
  }

  private Tasks later() {
    return new Tasks() {
      @Override
      public <T> void run(Callable<T> work, Consumer<T> done, Consumer<Exception> failed) {
        waiting.add(() -> Tasks.direct().run(work, done, failed));
      }
    };
  }

  private final class Made implements ClipProbe {
    @Override
    public ClipSummary inspect(Path clip, Double fromS, Double toS) throws UserError {
      lookedFromS = fromS;
      if (lengthS < 0) {
        throw new UserError("short.mp4: no video in it");
      }
      double length = clip.equals(LONG) ? lengthS : 6;
      return new ClipSummary(
          new ClipFacts(
              clip.toString(),
              "",
              "mp4",
              "h264",
              640,
              360,
              0,
              360,
              0,
              length,
              60.0,
              60,
              false,
              null,
              null,
              false,
              List.of(),
              1 / 60.0,
              false),
          List.of());
    }

    @Override
    public Estimate estimate(Path clip, Progress progress) throws UserError {
      progress.at(0.5, "looking");
      if (progress.stopped()) {
        throw new UserError("stopped");
      }
      return MadeEstimates.withBursts(bursts);
    }
  }
}
