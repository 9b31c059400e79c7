package palmturn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ClicksCommandTest {
  @TempDir private Path dir;

  @Test
  void writesAPaceAndReplacesNothingUnlessTold() throws Exception {
    Path file = dir.resolve("pace.wav");
    Run made = Run.of("clicks", "--pace", "5.2", "--for", "5", "--count-in", "4", file);
    assertEquals(0, made.status(), made.err());
    assertTrue(made.out().contains("4 to count in, then 27 clicks at 5.2 slaps/s"), made.out());
    long size = Files.size(file);
    Run again = Run.of("clicks", "--pace", "3", file);
    assertEquals(1, again.status());
    assertEquals(1, again.errorLines());
    assertTrue(again.err().contains("is there already"), again.err());
    assertEquals(size, Files.size(file));
    assertEquals(0, Run.of("clicks", "--pace", "3", "--force", file).status());
    assertTrue(Files.size(file) != size);
    Run set = Run.of("clicks", "--pace", "2.8", "--slaps", "20", "--force", file);
    assertTrue(set.out().contains("then 20 clicks at 2.8 slaps/s"), set.out());
  }

  @Test
  void takesThePaceOfADrillFromASessionsFigures() throws Exception {
    Path session = dir.resolve("session");
    Path bundled = Path.of("sample-clips-synthetic");
    assertEquals(0, Run.of("new", session, "--athlete", "H-07").status());
    Run.of("add", session, bundled.resolve("right-baseline-1.mp4"), "--hand", "right");
    Path file = dir.resolve("pace.wav");
    Run unread =
        Run.of("clicks", "--drill", "paced-flips", "--session", session, "--hand", "right", file);
    assertEquals(1, unread.status());
    Run.of(
        "marks",
        "import",
        session.resolve("right-baseline-1"),
        bundled.resolve("right-baseline-1.marks.csv"),
        "--reader",
        "A");
    Run made =
        Run.of("clicks", "--drill", "paced-flips", "--session", session, "--hand", "right", file);
    assertEquals(0, made.status(), made.err());
    // 80 % of 5.15 slaps/s, at which 89 % were clean.
    assertTrue(made.out().contains("at 4.1 slaps/s"), made.out());
    Run left =
        Run.of("clicks", "--drill", "paced-flips", "--session", session, "--hand", "left", file);
    assertTrue(left.err().contains("no rate of the left hand"), left.err());
    Run eights = Run.of("clicks", "--drill", "racket-eights", "--session", session, file);
    assertTrue(eights.err().contains("racket-eights has no pace"), eights.err());
    Run typo = Run.of("clicks", "--drill", "paced-flip", "--session", session, file);
    assertTrue(typo.err().contains("there is no drill \"paced-flip\""), typo.err());
  }

  @Test
  void wrongUseIsSaidInOneLineAndWritesNothing() {
    Path file = dir.resolve("pace.wav");
    assertEquals(2, Run.of("clicks", file).status());
    assertEquals(2, Run.of("clicks", "--pace", "5", "--drill", "paced-flips", file).status());
    assertEquals(2, Run.of("clicks", "--drill", "paced-flips", file).status());
    assertEquals(2, Run.of("clicks", "--pace", "5", "--slaps", "1", file).status());
    assertEquals(2, Run.of("clicks", "--pace", "5", "--slaps", "9", "--for", "5", file).status());
    Run fast = Run.of("clicks", "--pace", "50", file);
    assertEquals(1, fast.status());
    assertTrue(
        fast.err().contains("the pace must be 0.50 to 20 slaps a second, not 50"), fast.err());
    Run name = Run.of("clicks", "--pace", "5", dir.resolve("pace.mp3"));
    assertTrue(name.err().contains("let its name end in .wav"), name.err());
    assertTrue(Files.notExists(file));
  }

  @Test
  void theLibraryIsListedPrintedAndWritten() throws Exception {
    Path session = dir.resolve("session");
    Run.of("new", session, "--athlete", "H-07");
    Run list = Run.of("drills", session);
    assertEquals(0, list.status(), list.err());
    assertTrue(list.out().contains("paced-flips: accuracy"), list.out());
    assertTrue(list.out().contains("Head-turn and eye drills: seated"), list.out());
    Run json = Run.of("drills", "--json", session);
    assertTrue(json.out().startsWith("{\n  \"format\": \"palmturn-drills\""), json.out());
    Files.writeString(
        session.resolve("drills.json"),
        "{\"format\": \"palmturn-drills\", \"version\": 1, \"leaveOut\": [\"paced-flips\"]}");
    assertFalse(Run.of("drills", session).out().contains("paced-flips"));
    Files.writeString(session.resolve("drills.json"), "{\"format\": \"palmturn-drills\"}");
    Run slip = Run.of("drills", session);
    assertEquals(1, slip.status());
    assertEquals(1, slip.errorLines(), slip.err());
    assertTrue(
        slip.err().contains("drills.json: $.version: missing; correct it there"), slip.err());
    assertEquals(1, Run.of("drills", dir).status(), "no session");
    Path file = dir.resolve("mine.json");
    assertEquals(0, Run.of("drills", "--write", file).status());
    assertEquals(1, Run.of("drills", "--write", file).status());
    assertTrue(Files.readString(file).contains("\"paced-flips\""));
  }
}
