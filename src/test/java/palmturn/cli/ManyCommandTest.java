package palmturn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Folders of clips and several sessions on one command line. */
class ManyCommandTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Path CLIPS = Path.of("sample-clips-synthetic");

  @TempDir Path folder;

  @Test
  void aFolderOfClipsIsDoneToItsEndAndNotDoneAgain() throws Exception {
    Path clips = Files.createDirectory(folder.resolve("clips"));
    Files.copy(CLIPS.resolve("right-baseline-1.mp4"), clips.resolve("good.mp4"));
    Files.writeString(clips.resolve("bad.mp4"), "no clip");
    Path out = folder.resolve("estimates.jsonl");
    Object[] line = {"estimate", clips, "--hand", "right", "--json", "--out", out};
    Run run = Run.of(line);
    assertEquals(1, run.status(), run.err());
    assertEquals(Files.readString(out), run.out());
    for (String each : run.out().lines().toList()) {
      JsonNode node = JSON.readTree(each);
      boolean bad = node.get("clip").textValue().endsWith("bad.mp4");
      assertEquals(bad, node.has("error"), each);
      assertEquals(bad, !node.has("slaps"), each);
    }
    assertEquals(2, run.out().lines().count());
    assertTrue(run.err().endsWith("palmturn: 1 estimated, 1 failed\n"), run.err());

    Run again = Run.of(line);
    assertEquals(1, again.status(), "a clip has failed, if not now");
    assertEquals("", again.out());
    assertEquals(1, again.errorLines(), again.err());
    Files.delete(clips.resolve("bad.mp4"));
    assertEquals(0, Run.of(line).status());
  }

  @Test
  void severalSessionsAreScoredALineEachThoughOneIsBad() throws Exception {
    Path first = session("H-07");
    Path bad = Files.createDirectory(folder.resolve("bad"));
    Path last = session("K-11");
    Run run = Run.of("score", first, bad, last, "--json");
    assertEquals(1, run.status());
    assertEquals(2, run.errorLines(), run.err());
    assertTrue(run.err().endsWith("palmturn: 2 scored, 1 failed\n"), run.err());
    List<String> lines = run.out().lines().toList();
    assertEquals(3, lines.size(), run.out());
    JsonNode scored = JSON.readTree(lines.get(0));
    assertEquals(first.toString(), scored.get("session").textValue());
    JsonNode alone = JSON.readTree(Run.of("score", first, "--json").out());
    assertEquals(alone.get("trials"), scored.get("trials"));
    assertEquals(bad.toString(), JSON.readTree(lines.get(1)).get("session").textValue());
    assertTrue(JSON.readTree(lines.get(1)).has("error"), lines.get(1));
    assertEquals("K-11", JSON.readTree(lines.get(2)).get("athlete").textValue());

    String text = Run.of("score", first, last).out();
    assertTrue(text.contains("H-07, 2026-11-14") && text.contains("K-11, 2026-11-14"), text);
    assertEquals(0, Run.of("score", first, last).status());
  }

  private Path session(String athlete) {
    Path session = folder.resolve(athlete);
    Path clip = CLIPS.resolve("right-baseline-1.mp4");
    Path marks = CLIPS.resolve("right-baseline-1.marks.csv");
    run("new", session, "--athlete", athlete, "--date", "2026-11-14");
    run("add", session, clip, "--hand", "right");
    run("marks", "import", session.resolve("right-baseline-1"), marks, "--reader", "AB");
    return session;
  }

  private static void run(Object... args) {
    Run run = Run.of(args);
    assertEquals(0, run.status(), run.err());
  }
}
