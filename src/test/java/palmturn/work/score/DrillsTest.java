package palmturn.work.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.advise.Advice;
import palmturn.advise.DrillLibrary;
import palmturn.advise.Evidence;
import palmturn.advise.Training;
import palmturn.json.DrillsJson;
import palmturn.measure.ReadingChoice;
import palmturn.measure.Scores;
import palmturn.trial.ClipRef;
import palmturn.trial.Extra;
import palmturn.trial.Hand;
import palmturn.trial.Mirrored;
import palmturn.trial.Session;
import palmturn.trial.TimeScale;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.trial.UserError;
import palmturn.work.report.MarksFiles;

class DrillsTest {
  private static final double FRAME_S = 1.0 / 60;

  @TempDir private Path dir;

  @Test
  void aSessionsDrillsGoBeforeTheUsersAndThoseBeforeTheProgramsOwn() throws Exception {
    Path settings = Files.createDirectory(dir.resolve("settings"));
    Path session = Files.createDirectory(dir.resolve("session"));
    assertEquals(DrillsJson.standard(), Drills.library(settings, session));
    put(settings, "\"paced flips\"", "\"flips, my way\"");
    assertEquals("flips, my way", name(Drills.library(settings, session)));
    put(session, "\"paced flips\"", "\"flips for H-07\"");
    assertEquals("flips for H-07", name(Drills.library(settings, session)));
    assertEquals("flips, my way", name(Drills.library(settings, null)));
  }

  @Test
  void aSlipNamesItsFileDrillKeyAndWhatToDo() throws Exception {
    put(dir, "\"dose\"", "\"dosage\"");
    String message = refusal();
    assertTrue(message.startsWith(dir.resolve("drills.json") + ": drill paced-flips: "), message);
    assertTrue(message.contains(".dose: missing; correct it there"), message);
  }

  @Test
  void leavingOutADrillThatIsNotThereIsASlip() throws Exception {
    put(dir, "\"leaveOut\": []", "\"leaveOut\": [\"gaze-circle\"]");
    assertTrue(refusal().contains("there is no drill \"gaze-circle\""), refusal());
  }

  @Test
  void theCopyToBeEditedIsTheLibraryAndReplacesNothing() throws Exception {
    Path file = dir.resolve("drills.json");
    Drills.write(file, false);
    assertEquals(DrillsJson.standard(), Drills.library(dir, null));
    Files.writeString(file, "mine");
    UserError refused = assertThrows(UserError.class, () -> Drills.write(file, false));
    assertTrue(String.valueOf(refused.getMessage()).contains("--force"));
    assertEquals("mine", Files.readString(file));
    Drills.write(file, true);
    assertFalse(Files.readString(file).equals("mine"));
    assertThrows(UserError.class, () -> Drills.write(dir.resolve("no/drills.json"), false));
  }

  @Test
  void theInventedAthletesLeftHandIsToBeTrained() throws Exception {
    List<Advice> advice = advise("baseline");
    assertEquals(
        List.of("1 left speed", "1 left accuracy", "1 left rhythm", "2 left accuracy"),
        advice.stream().map(DrillsTest::said).toList());
    assertTrue(advice.get(3).sure(), advice.get(3).why());
    // After the drill the hands' clean shares are no longer told apart.
    assertEquals(
        List.of("1 left speed", "1 left rhythm"),
        advise("baseline", "after-1").stream().map(DrillsTest::said).toList());
  }

  private static String said(Advice advice) {
    return "%d %s %s"
        .formatted(
            advice.rule(),
            advice.hand().code(),
            advice.quality() == null ? "" : advice.quality().code());
  }

  private static List<Advice> advise(String... blocks) throws Exception {
    List<Trial> trials = new ArrayList<>();
    for (String block : blocks) {
      for (Hand hand : Hand.values()) {
        for (int repeat = 1; repeat <= 3; repeat++) {
          trials.add(bundled(new TrialId(hand, block, repeat)));
        }
      }
    }
    var score =
        Scores.session(
            Session.begin("H-07", LocalDate.of(2026, 11, 14)),
            trials,
            ReadingChoice.FIRST,
            LimitsInForce.STANDARD.limits());
    return Training.of(Evidence.of(score, LimitsInForce.STANDARD.limits()), DrillsJson.standard())
        .advice();
  }

  private static Trial bundled(TrialId id) throws Exception {
    Path marks = Path.of("sample-clips-synthetic", id.name() + ".marks.csv");
    return new Trial(
            id,
            new ClipRef("clips/x.mp4", "0".repeat(64), FRAME_S, Extra.NONE),
            null,
            null,
            Mirrored.FALSE,
            null,
            TimeScale.REAL,
            null,
            null,
            List.of(),
            null,
            Extra.NONE)
        .withReading(MarksFiles.reading(MarksFiles.text(marks), marks, "A", FRAME_S));
  }

  private String refusal() {
    return String.valueOf(
        assertThrows(UserError.class, () -> Drills.library(dir, null)).getMessage());
  }

  private static void put(Path folder, String was, String now) throws Exception {
    String text = DrillsJson.standardText();
    assertTrue(text.contains(was), was);
    int at = text.indexOf(was);
    Files.writeString(
        folder.resolve(Drills.FILE),
        text.substring(0, at) + now + text.substring(at + was.length()));
  }

  private static String name(DrillLibrary library) {
    return library.drill("paced-flips").orElseThrow().name();
  }
}
