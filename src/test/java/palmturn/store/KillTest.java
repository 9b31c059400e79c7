package palmturn.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.trial.Reading;
import palmturn.trial.SampleFiles;

/** Another program marks and is killed without warning; what it said is kept is there. */
class KillTest {
  @TempDir Path temp;

  private Path folder() throws StoreException {
    Path folder = temp.resolve("session");
    try (SessionFolder session = SessionFolder.create(folder, SampleFiles.fullSession())) {
      session.save(SampleFiles.plainTrial(SampleFiles.RIGHT));
    }
    return folder;
  }

  /** What it says goes to a file: a pipe's last lines are lost with the program. */
  private Process start(Path folder, int from) throws IOException {
    Files.deleteIfExists(said());
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-cp",
            System.getProperty("java.class.path"),
            Marker.class.getName(),
            folder.toString(),
            Integer.toString(from))
        .redirectError(ProcessBuilder.Redirect.INHERIT)
        .redirectOutput(said().toFile())
        .start();
  }

  private Path said() {
    return temp.resolve("said");
  }

  /** Returns the last count that was said, -1 for none yet. */
  private int lastSaid() throws IOException {
    String text = Files.readString(said());
    String whole = text.substring(0, text.lastIndexOf('\n') + 1);
    return whole.lines().mapToInt(Integer::parseInt).max().orElse(-1);
  }

  private void awaitFirstMark(Process marker) throws Exception {
    while (lastSaid() < 0) {
      assertTrue(marker.isAlive(), "it marks");
      Thread.sleep(5);
    }
  }

  private static void kill(Process marker) throws InterruptedException {
    marker.destroyForcibly();
    assertTrue(marker.waitFor(10, TimeUnit.SECONDS));
  }

  /** The same session is killed several times over, so that recovery is itself recovered from. */
  @ParameterizedTest
  @ValueSource(longs = {51, 52})
  @Timeout(60)
  void everyMarkThatWasSaidToBeKeptIsThereAfterAKill(long seed) throws Exception {
    Random random = new Random(seed);
    Path folder = folder();
    int from = 0;
    for (int kill = 0; kill < 4; kill++) {
      Process marker = start(folder, from);
      awaitFirstMark(marker);
      Thread.sleep(random.nextInt(500));
      kill(marker);
      int said = lastSaid();
      assertTrue(said >= from, "it marked before it was killed");
      try (SessionFolder session = SessionFolder.open(folder)) {
        Reading found = session.trial(SampleFiles.RIGHT).reading("AB").orElseThrow();
        int there = count(found);
        assertTrue(there == said || there == said + 1, "said %d, found %d".formatted(said, there));
        assertEquals(Marker.after(there), found, "whole, to the last mark");
        from = there + 1;
      }
    }
  }

  private static int count(Reading reading) {
    String note = reading.slaps().get(reading.slaps().size() - 1).note();
    return Integer.parseInt(note.substring("mark ".length()));
  }

  @Test
  @Timeout(60)
  void aSecondProgramCanOnlyLook() throws Exception {
    Path folder = folder();
    Process marker = start(folder, 0);
    try {
      awaitFirstMark(marker);
      SessionFolderTest.assertSays(
          "is open in another Palmturn; this one can only look",
          assertThrows(StoreException.class, () -> SessionFolder.open(folder)));
      for (int i = 0; i < 50; i++) {
        int said = lastSaid();
        try (SessionFolder looking = SessionFolder.openReadOnly(folder)) {
          Reading found = looking.trial(SampleFiles.RIGHT).reading("AB").orElseThrow();
          assertTrue(count(found) >= said, "what is kept is seen");
          assertEquals(Marker.after(count(found)), found);
        }
      }
    } finally {
      kill(marker);
    }
    SessionFolder.open(folder).close();
  }
}
