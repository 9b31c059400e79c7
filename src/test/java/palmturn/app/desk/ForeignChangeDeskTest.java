package palmturn.app.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.app.tasks.FillableDisk;
import palmturn.store.SessionFolder;
import palmturn.trial.Hand;
import palmturn.trial.Side;
import palmturn.trial.TrialId;
import palmturn.work.session.Sessions;

/** Marks made while another program changes the session, and steps taken back after a detour. */
class ForeignChangeDeskTest {
  private static final TrialId RIGHT = new TrialId(Hand.RIGHT, "baseline", 1);
  private static final TrialId LEFT = new TrialId(Hand.LEFT, "baseline", 1);

  @TempDir private Path where;
  private final BlockingQueue<Runnable> screen = new LinkedBlockingQueue<>();
  private Path session;
  private Desk desk;

  @BeforeEach
  void marksTwoSlaps() throws Exception {
    session = TestDesk.twoTrials(where);
    desk =
        TestDesk.direct(
            where.resolve("settings"),
            new FillableDisk(),
            screen::add,
            Instant.parse("2026-11-14T18:00:00Z"));
    desk.session().setReader("AK");
    desk.opener().open(session);
    choose(RIGHT);
    mark(10);
    mark(20);
  }

  @AfterEach
  void close() {
    desk.close();
  }

  private void choose(TrialId id) {
    desk.board().choose(id);
    until(() -> desk.stage().showsItsFrame());
  }

  private void mark(int frame) {
    desk.reading().edit(() -> desk.marking().markSlap(frame, Side.PALM, false));
  }

  private int marks() {
    return desk.marking().readingProperty().get().slaps().size();
  }

  @Test
  void marksThatCouldNotBeSavedAreOfferedAsANewReading() throws Exception {
    Path journal = session.resolve("trials/right-baseline-1.journal");
    byte[] older = Files.readAllBytes(journal);
    mark(30);
    Files.write(journal, older);
    mark(40);
    assertTrue(
        desk.prompts().notices().text().contains("the file was changed by another program"),
        desk.prompts().notices().text());
    assertEquals("", desk.session().saving().wordsProperty().get(), "it does not say Saved");
    assertEquals(4, marks(), "the marks are kept in memory");
    Question.Consent asked =
        assertInstanceOf(Question.Consent.class, desk.prompts().questions().current());
    assertTrue(asked.about().startsWith("4 marks of yours could not be saved"), asked.about());

    desk.prompts().questions().close();
    asked.then().run();
    until(() -> desk.stage().showsItsFrame());
    assertEquals(
        "Saved beside the other program’s change, as AK-2", desk.prompts().notices().text());
    assertEquals("AK-2", desk.session().reader());
    assertEquals(4, marks());
    mark(50);
    assertTrue(desk.session().saving().wordsProperty().get().startsWith("Saved"));
    try (SessionFolder looking = Sessions.openReadOnly(session)) {
      assertEquals(2, looking.trial(RIGHT).reading("AK").orElseThrow().slaps().size());
      assertEquals(5, looking.trial(RIGHT).reading("AK-2").orElseThrow().slaps().size());
    }
  }

  /** "Not now" is no consent to lose them. */
  @Test
  void marksThatWereNotSavedAreSavedBesideOnClosing() throws Exception {
    Path journal = session.resolve("trials/right-baseline-1.journal");
    byte[] older = Files.readAllBytes(journal);
    mark(30);
    Files.write(journal, older);
    mark(40);
    desk.prompts().questions().close();
    choose(LEFT);
    mark(15);
    desk.prompts().questions().close();
    desk.close();
    try (SessionFolder looking = Sessions.openReadOnly(session)) {
      assertEquals(2, looking.trial(RIGHT).reading("AK").orElseThrow().slaps().size());
      assertEquals(4, looking.trial(RIGHT).reading("AK-2").orElseThrow().slaps().size());
      assertEquals(1, looking.trial(LEFT).reading("AK").orElseThrow().slaps().size());
    }
  }

  @Test
  void everyStepCanBeTakenBackAfterAnotherTrial() {
    desk.reading().edit(() -> desk.marking().undo());
    choose(LEFT);
    assertNull(desk.marking().readingProperty().get());
    mark(15);
    choose(RIGHT);
    assertEquals(1, marks());
    desk.reading().edit(() -> desk.marking().redo());
    assertEquals(2, marks());
    desk.reading().edit(() -> desk.marking().undo());
    desk.reading().edit(() -> desk.marking().undo());
    assertEquals(0, marks());
    choose(LEFT);
    desk.reading().edit(() -> desk.marking().undo());
    assertEquals(0, marks());
  }

  @Test
  void stepsBesideTheMarksStayWithTheirTrial() throws Exception {
    desk.messages().write("about the right hand");
    choose(LEFT);
    desk.messages().show();
    desk.messages().write("about the left hand");
    desk.prompts().questions().close();
    choose(RIGHT);
    assertTrue(desk.sideEdits().undo());
    try (SessionFolder looking = Sessions.openReadOnly(session)) {
      assertEquals(1, looking.session().messages().size());
      assertEquals("about the left hand", looking.session().messages().get(0).text());
    }
  }

  /** Runs what the desk sends to the screen until something holds. */
  private void until(BooleanSupplier holds) {
    long endNs = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
    while (!holds.getAsBoolean()) {
      assertTrue(System.nanoTime() < endNs, "it takes too long");
      try {
        Runnable next = screen.poll(100, TimeUnit.MILLISECONDS);
        if (next != null) {
          next.run();
        }
      } catch (InterruptedException e) {
        throw new IllegalStateException(e);
      }
    }
  }
}
