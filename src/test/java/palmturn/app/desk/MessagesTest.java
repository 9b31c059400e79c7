package palmturn.app.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.app.stage.OverlayItem;
import palmturn.app.tasks.FillableDisk;
import palmturn.settings.SeenMessages;
import palmturn.store.SessionFolder;
import palmturn.trial.Extra;
import palmturn.trial.Hand;
import palmturn.trial.Message;
import palmturn.trial.PlacedPoints;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.StartedFrom;
import palmturn.trial.TrialId;
import palmturn.work.session.Sessions;

/** Two trials of sixty frames, a sixtieth of a second apart, without a screen. */
class MessagesTest {
  private static final TrialId RIGHT = new TrialId(Hand.RIGHT, "baseline", 1);
  private static final TrialId LEFT = new TrialId(Hand.LEFT, "baseline", 1);
  private static final Instant NOW = Instant.parse("2026-11-14T18:00:00Z");
  private static final Message ASKED =
      new Message(
          "athlete",
          Instant.parse("2026-11-14T12:00:00Z"),
          LEFT,
          0.5,
          "is this the middle?",
          Extra.NONE);

  @TempDir private Path where;
  private final BlockingQueue<Runnable> screen = new LinkedBlockingQueue<>();
  private final FillableDisk disk = new FillableDisk();
  private Path session;
  private Desk desk;
  private Messages messages;

  @BeforeEach
  void openRightHand() throws Exception {
    session = TestDesk.twoTrials(where);
    try (SessionFolder made = Sessions.open(session)) {
      made.keep(LEFT, Reading.begin("CD", StartedFrom.NOTHING), "begun");
      made.change(now -> now.withMessages(List.of(ASKED)));
    }
    desk = TestDesk.direct(where.resolve("settings"), disk, screen::add, NOW);
    messages = desk.messages();
    desk.session().setReader("AK");
    open();
  }

  private void open() {
    desk.opener().open(session);
    desk.board().choose(RIGHT);
    until(() -> desk.stage().showsItsFrame());
  }

  @AfterEach
  void close() {
    desk.close();
  }

  @Test
  void aMessageIsOnTheDiskWithItsWriterTrialAndMoment() throws Exception {
    desk.stage().seek(30);
    messages.show();
    messages.write("  the elbow leaves the side here ");
    Message said = new Message("AK", NOW, RIGHT, 0.5, "the elbow leaves the side here", Extra.NONE);
    assertEquals(List.of(ASKED, said), onDisk());
    assertEquals("message at 0.500 s", desk.marking().stepProperty().get());
    assertEquals(List.of(0.5), desk.strip().messageTimesProperty().get());

    messages.show();
    messages.aboutProperty().set(Messages.Moment.NONE);
    messages.fromProperty().set(Message.COACH);
    messages.write("well done");
    assertEquals(new Message("coach", NOW, null, null, "well done", Extra.NONE), onDisk().get(2));
    messages.write(" ");
    assertEquals(3, onDisk().size());
  }

  @Test
  void aMessageIsTakenBackInItsTurnAmongMarksAndPlaces() throws Exception {
    desk.stage().seek(10);
    desk.reading().edit(() -> desk.marking().markSlap(10, Side.PALM, false));
    messages.show();
    messages.write("one");
    desk.places().begin();
    desk.places().placing().choose(OverlayItem.ELBOW);
    desk.places().placing().move(3, 0);
    desk.places().placing().save();
    PlacedPoints elbow = desk.session().trials().get(RIGHT).places();
    desk.reading().edit(() -> desk.marking().markSlap(20, Side.BACK, false));

    assertFalse(desk.sideEdits().undo(), "the mark was the last");
    desk.marking().undo();
    assertTrue(desk.sideEdits().undo());
    assertEquals(PlacedPoints.NONE, desk.session().trials().get(RIGHT).places());
    assertEquals(2, onDisk().size());
    assertTrue(desk.sideEdits().undo());
    assertEquals("Undone: message at 0.167 s", desk.marking().stepProperty().get());
    assertEquals(List.of(ASKED), onDisk());
    assertFalse(desk.sideEdits().undo(), "the first mark comes next");
    assertTrue(desk.sideEdits().redo());
    assertEquals("one", onDisk().get(1).text());
    assertTrue(desk.sideEdits().redo());
    assertEquals(elbow, desk.session().trials().get(RIGHT).places());
  }

  @Test
  void choosingOneGoesToItsTrialAndFrame() {
    desk.session().setReader("CD");
    messages.move(-1);
    assertEquals(ASKED, messages.chosenProperty().get());
    messages.go(ASKED);
    until(
        () -> LEFT.equals(desk.session().trialIdProperty().get()) && desk.stage().showsItsFrame());
    until(() -> desk.stage().frameProperty().get() == 30);
    assertNull(desk.prompts().questions().currentProperty().get());

    messages.go(new Message("coach", NOW, LEFT, 0.75, "and here", Extra.NONE));
    until(() -> desk.stage().frameProperty().get() == 45);
    messages.go(
        new Message("coach", NOW, new TrialId(Hand.LEFT, "after-3", 1), 0.5, "x", Extra.NONE));
    assertEquals("left-after-3-1 is not in this session", desk.prompts().notices().text());
    assertEquals(LEFT, desk.session().trialIdProperty().get());
  }

  @Test
  void newOnesAreCountedUntilTheyAreSeenOnThisComputer() {
    Path kept = where.resolve("messages.properties");
    desk.close();
    messages.setSeen(SeenMessages.in(kept));
    open();
    assertEquals(1, messages.unseenProperty().get());
    messages.show();
    assertEquals(0, messages.unseenProperty().get());
    assertTrue(messages.fresh(ASKED), "it is still told as new where it is read");

    desk.close();
    messages.setSeen(SeenMessages.in(kept));
    open();
    assertEquals(0, messages.unseenProperty().get());
  }

  @Test
  void whatCouldNotBeSavedIsKeptAndSavedWithTheNext() throws Exception {
    disk.setFull(true);
    messages.show();
    messages.write("one");
    assertEquals(
        "Not saved, the message is still here: the disk is full", desk.prompts().notices().text());
    assertEquals(List.of(ASKED), onDisk());
    assertEquals(2, messages.allProperty().get().size());
    disk.setFull(false);
    messages.write("two");
    assertEquals(List.of("one", "two"), onDisk().stream().skip(1).map(Message::text).toList());

    disk.setFull(true);
    messages.write("three");
    disk.setFull(false);
    desk.close();
    assertEquals("three", onDisk().get(3).text());
  }

  @Test
  void aWindowThatOnlyLooksCanOnlyRead() throws Exception {
    desk.close();
    try (SessionFolder other = SessionFolder.open(session)) {
      open();
      messages.show();
      messages.write("not allowed");
      assertEquals(List.of(ASKED), messages.allProperty().get());
      assertTrue(desk.prompts().notices().text().contains("read-only"));
      assertEquals(List.of(ASKED), other.session().messages());
    }
  }

  @Test
  void whatIsSaidOfATrialStaysOutOfSightWhileThatIsToBeReadBlind() {
    assertTrue(messages.hidden(ASKED), "CD has read the left hand, AK has not");
    messages.go(ASKED);
    until(
        () -> LEFT.equals(desk.session().trialIdProperty().get()) && desk.stage().showsItsFrame());
    assertEquals(List.of(), desk.strip().messageTimesProperty().get());
    desk.session().setReader("CD");
    assertFalse(messages.hidden(ASKED));
    assertEquals(List.of(0.5), desk.strip().messageTimesProperty().get());
  }

  private List<Message> onDisk() throws Exception {
    try (SessionFolder looking = SessionFolder.openReadOnly(session)) {
      return looking.session().messages();
    }
  }

  /** Does what has been handed to the screen until something holds. */
  private void until(BooleanSupplier holds) {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
    while (!holds.getAsBoolean()) {
      assertTrue(System.nanoTime() < end, "waited in vain");
      try {
        Runnable next = screen.poll(50, TimeUnit.MILLISECONDS);
        if (next != null) {
          next.run();
        }
      } catch (InterruptedException e) {
        throw new AssertionError(e);
      }
    }
  }
}
