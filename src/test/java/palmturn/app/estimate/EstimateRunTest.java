package palmturn.app.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.app.tasks.Tasks;
import palmturn.clip.Progress;
import palmturn.store.SessionFolder;
import palmturn.trial.Estimate;
import palmturn.trial.Hand;
import palmturn.trial.Session;
import palmturn.trial.TrialId;
import palmturn.trial.UserError;
import palmturn.work.session.Sessions;

class EstimateRunTest {
  private static final TrialId TRIAL = new TrialId(Hand.LEFT, "baseline", 2);

  @TempDir private Path where;
  private SessionFolder folder;
  private final List<Estimate> made = new ArrayList<>();
  private final List<Exception> problems = new ArrayList<>();

  @BeforeEach
  void open() throws UserError {
    folder =
        Sessions.create(
            where.resolve("session"), "H-07", LocalDate.of(2026, 11, 14), Session.Facts.NONE);
  }

  @AfterEach
  void close() throws Exception {
    folder.close();
  }

  @Test
  void progressIsToldAndTheResultHandedOver() {
    List<String> said = new ArrayList<>();
    EstimateRun run =
        run(
            Tasks.direct(),
            (in, id, progress) -> {
              progress.at(0.425, "looking");
              return MadeEstimates.fourSlaps();
            });
    run.wordsProperty().addListener((words, before, now) -> said.add(now));
    start(run);
    assertEquals(List.of("Estimating left hand 2, 0 %", "Estimating left hand 2, 42 %", ""), said);
    assertEquals(1, made.size());
    assertNull(run.trialProperty().get());
  }

  @Test
  void whatGoesWrongIsHandedOver() {
    start(run(Tasks.direct(), (in, id, progress) -> fails("no frame can be read")));
    assertEquals("no frame can be read", problems.get(0).getMessage());
  }

  @Test
  void stoppingIsNoProblem() {
    Later later = new Later();
    EstimateRun run = run(later, EstimateRunTest::stoppedOrMade);
    start(run);
    run.stop();
    assertEquals("Stopping", run.wordsProperty().get());
    later.now();
    assertTrue(problems.isEmpty() && made.isEmpty());
    assertNull(run.trialProperty().get());
  }

  @Test
  void anotherIsNotBegunBeforeTheFirstIsDone() {
    Later later = new Later();
    EstimateRun run = run(later, EstimateRunTest::stoppedOrMade);
    start(run);
    start(run);
    later.now();
    assertEquals(1, made.size());
  }

  private static Estimate stoppedOrMade(SessionFolder in, TrialId id, Progress progress)
      throws UserError {
    return progress.stopped() ? fails("stopped") : MadeEstimates.fourSlaps();
  }

  private static Estimate fails(String why) throws UserError {
    throw new UserError(why);
  }

  private static EstimateRun run(Tasks tasks, EstimateMaker maker) {
    return new EstimateRun(tasks, Runnable::run, maker);
  }

  private void start(EstimateRun run) {
    run.start(folder, TRIAL, (id, found) -> made.add(found), problems::add);
  }

  /** Tasks that wait until they are told to run. */
  private static final class Later implements Tasks {
    private final List<Runnable> waiting = new ArrayList<>();

    @Override
    public <T> void run(Callable<T> work, Consumer<T> done, Consumer<Exception> failed) {
      waiting.add(() -> Tasks.direct().run(work, done, failed));
    }

    void now() {
      waiting.forEach(Runnable::run);
    }
  }
}
