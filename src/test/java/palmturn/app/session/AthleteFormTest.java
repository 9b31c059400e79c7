package palmturn.app.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.advise.AthleteNotice;
import palmturn.app.desk.Desk;
import palmturn.app.desk.Question;
import palmturn.app.desk.TestDesk;
import palmturn.app.estimate.MadeEstimates;
import palmturn.app.tasks.FillableDisk;
import palmturn.store.SessionFolder;
import palmturn.trial.BodyLength;
import palmturn.trial.Hand;
import palmturn.trial.Session;
import palmturn.trial.TrialId;
import palmturn.work.session.AddClip;
import palmturn.work.session.Sessions;

/** What is known of an athlete, read, changed and kept without a screen. */
class AthleteFormTest {
  private static final Session.Facts FACTS =
      new Session.Facts(Hand.RIGHT, 26.25, null, 172.0, "sore wrist", null, "a phone", "Quillmere");

  @TempDir private Path where;
  private final FillableDisk disk = new FillableDisk();
  private Path session;
  private Desk desk;
  private AthleteForm athlete;

  @BeforeEach
  void makeASession() throws Exception {
    session = where.resolve("session");
    Sessions.create(session, "H-07", LocalDate.of(2026, 11, 14), FACTS).close();
    desk =
        TestDesk.direct(
            where.resolve("settings"), disk, later -> {}, Instant.parse("2026-11-14T18:00:00Z"));
    athlete = new AthleteForm(desk.session(), desk.stage(), desk.board(), desk.prompts());
  }

  @AfterEach
  void close() {
    desk.close();
  }

  @Test
  void whatIsKnownIsShownAndWhatIsChangedIsKept() throws Exception {
    open();
    assertEquals(List.of("Pain or injury: sore wrist"), heeded());
    athlete.show();
    assertEquals("26.25", length(BodyLength.FOREARM));
    assertEquals("", length(BodyLength.HAND));
    assertEquals("172", length(BodyLength.STATURE));
    assertEquals(Hand.RIGHT, athlete.racketHandProperty().get());
    assertEquals("a phone", athlete.cameraProperty().get());

    type(BodyLength.HAND, " 18,5 ");
    type(BodyLength.STATURE, "");
    athlete.racketHandProperty().set(null);
    athlete.consentProperty().set(false);
    athlete.painProperty().set("  ");
    athlete.clubProperty().set(" Quillmere Juniors ");
    assertEquals("", desk.session().saving().wordsProperty().get());
    athlete.save();
    assertNull(desk.prompts().questions().currentProperty().get());
    assertEquals("Saved 18:00:00", desk.session().saving().wordsProperty().get());
    assertEquals(
        new Session.Facts(null, 26.25, 18.5, null, null, false, "a phone", "Quillmere Juniors"),
        onDisk());
    assertEquals(List.of("No guardian’s consent"), heeded());
    athlete.show();
    assertEquals("18.5", length(BodyLength.HAND));
  }

  @Test
  void wrongLengthsAreToldWithTheirBoundsUntilTheyAreRight() throws Exception {
    open();
    athlete.show();
    type(BodyLength.FOREARM, "101");
    type(BodyLength.HAND, "7.9");
    type(BodyLength.STATURE, "1.72");
    assertEquals("", wrong(BodyLength.FOREARM), "who still types is left alone");
    athlete.save();
    assertEquals("a number from 10 to 100", wrong(BodyLength.FOREARM));
    assertEquals("a number from 8 to 30", wrong(BodyLength.HAND));
    assertEquals("a number from 50 to 300", wrong(BodyLength.STATURE));
    assertEquals(Question.Page.ATHLETE, desk.prompts().questions().currentProperty().get());
    assertEquals(FACTS, onDisk());
    type(BodyLength.HAND, "8");
    assertEquals("", wrong(BodyLength.HAND));
    assertEquals("a number from 10 to 100", wrong(BodyLength.FOREARM));
  }

  @Test
  void nothingIsWrittenWhereNothingChanged() throws Exception {
    Path file = session.resolve("session.json");
    Files.writeString(file, Files.readString(file) + "\n\n");
    String before = Files.readString(file);
    open();
    athlete.show();
    type(BodyLength.FOREARM, "27");
    type(BodyLength.FOREARM, "26.25 ");
    athlete.painProperty().set("sore wrist ");
    athlete.save();
    assertNull(desk.prompts().questions().currentProperty().get());
    assertEquals(before, Files.readString(file));
  }

  @Test
  void whatCouldNotBeSavedStaysTyped() throws Exception {
    open();
    athlete.show();
    athlete.painProperty().set("none");
    disk.setFull(true);
    athlete.save();
    assertEquals(
        "Not saved, what you wrote is still here: the disk is full",
        athlete.obstacleProperty().get());
    assertEquals("none", athlete.painProperty().get());
    assertEquals("", desk.session().saving().wordsProperty().get());
    assertEquals(Question.Page.ATHLETE, desk.prompts().questions().currentProperty().get());
    assertEquals(List.of("Pain or injury: sore wrist"), heeded());
    disk.setFull(false);
    athlete.save();
    assertEquals("none", onDisk().painToday());
    assertEquals(List.of(), heeded(), "no pain is nothing to heed");
  }

  @Test
  void aWindowThatOnlyLooksChangesNothing() throws Exception {
    try (SessionFolder other = SessionFolder.open(session)) {
      open();
      athlete.show();
      type(BodyLength.FOREARM, "30");
      athlete.save();
      assertTrue(desk.prompts().notices().text().contains("read-only"));
      assertEquals("30", length(BodyLength.FOREARM));
      assertEquals(FACTS, onDisk());
    }
  }

  @Test
  void aChangedLengthSaysThatEarlierEstimatesKeepTheirScale() throws Exception {
    try (SessionFolder made = SessionFolder.open(session)) {
      TrialId id =
          AddClip.add(
                  made,
                  Path.of("sample-clips-synthetic/right-baseline-1.mp4"),
                  AddClip.ClipRequest.of(Hand.RIGHT, "baseline"))
              .trial()
              .id();
      made.keep(id, MadeEstimates.fourSlaps());
    }
    open();
    athlete.show();
    athlete.painProperty().set("none");
    type(BodyLength.HAND, "5");
    assertEquals("", athlete.oldScaleProperty().get());
    type(BodyLength.FOREARM, "27");
    assertTrue(athlete.oldScaleProperty().get().contains("keep their old scale"));
    type(BodyLength.FOREARM, "26.25");
    assertEquals("", athlete.oldScaleProperty().get());
  }

  private void open() {
    desk.opener().open(session);
    if (desk.prompts().questions().currentProperty().get() instanceof Question.Reader) {
      ((Question.Reader) desk.prompts().questions().current()).then().accept("AK");
    }
  }

  private void type(BodyLength what, String typed) {
    athlete.lengthProperty(what).set(typed);
  }

  private String length(BodyLength what) {
    return athlete.lengthProperty(what).get();
  }

  private String wrong(BodyLength what) {
    return athlete.faultProperty(what).get();
  }

  private List<String> heeded() {
    return desk.board().heedProperty().get().stream().map(AthleteNotice::brief).toList();
  }

  private Session.Facts onDisk() throws Exception {
    try (SessionFolder looking = SessionFolder.openReadOnly(session)) {
      return looking.session().facts();
    }
  }
}
