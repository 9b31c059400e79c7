package palmturn.app.progress;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import palmturn.app.tasks.Tasks;
import palmturn.measure.Measures;
import palmturn.measure.ProgressScore;
import palmturn.measure.Quality;
import palmturn.measure.RetestScore;
import palmturn.trial.Hand;
import palmturn.trial.UserError;
import palmturn.work.score.AthleteProgress;
import palmturn.work.score.LimitsInForce;

class ProgressModelTest {
  private static final Path ONE = Path.of("sessions", "one");
  private static final Path OTHER = Path.of("sessions", "other");

  @Test
  void whatIsNotThereIsSaidInWords() {
    ProgressModel past =
        new ProgressModel(
            Tasks.direct(), session -> found(null, List.of(), List.of("one: damaged")));
    past.load(ONE);
    assertNull(past.scoreProperty().get());
    assertTrue(past.wordsProperty().get().startsWith("No session of this athlete has figures"));
    assertEquals(List.of("one: damaged"), past.unreadProperty().get());
  }

  @Test
  void oneSessionAsksForASecond() {
    ProgressModel past =
        new ProgressModel(
            Tasks.direct(), session -> found(score("H-07"), List.of("after: better"), List.of()));
    past.load(ONE);
    assertEquals("H-07", past.scoreProperty().get().athlete());
    assertTrue(past.wordsProperty().get().contains("A change wants a second one"));
    assertEquals(List.of("after: better"), past.changesProperty().get());
  }

  @Test
  void anUnreadableSessionSaysWhy() {
    ProgressModel past =
        new ProgressModel(
            Tasks.direct(),
            session -> {
              throw new UserError("one is not a session: choose its folder");
            });
    past.load(ONE);
    assertEquals("one is not a session: choose its folder", past.wordsProperty().get());
  }

  @Test
  void anAnswerForASessionAskedForBeforeIsPassedOver() {
    List<Runnable> waiting = new ArrayList<>();
    Tasks later =
        new Tasks() {
          @Override
          public <T> void run(Callable<T> work, Consumer<T> done, Consumer<Exception> failed) {
            waiting.add(() -> Tasks.direct().run(work, done, failed));
          }
        };
    ProgressModel past =
        new ProgressModel(
            later,
            session -> found(score(session.equals(ONE) ? "H-07" : "K-12"), List.of(), List.of()));
    past.load(ONE);
    past.load(OTHER);
    waiting.get(1).run();
    waiting.get(0).run();
    assertEquals("K-12", past.scoreProperty().get().athlete());
  }

  private static AthleteProgress found(
      @Nullable ProgressScore score, List<String> changes, List<String> unread) {
    return new AthleteProgress(score, changes, unread, LimitsInForce.STANDARD.limits());
  }

  private static ProgressScore score(String athlete) {
    return new ProgressScore(
        athlete,
        List.of(new ProgressScore.Step(0, LocalDate.of(2026, 3, 14), "baseline", null)),
        List.of(
            new ProgressScore.Course(
                Hand.RIGHT,
                Quality.SPEED,
                Measures.RATE,
                null,
                List.of(new ProgressScore.Point(0, 5, List.of(5.0), null, null)),
                null,
                null,
                null,
                null,
                RetestScore.ChangeVerdict.CANNOT_TELL)));
  }
}
