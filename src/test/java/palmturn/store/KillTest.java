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

/** Another program marks and ends without warning; what it said is kept is there. */
class KillTest {
  /** Ends of each seed; more of them by {@code -Dpalmturn.kills=100}. */
  private static final int ENDS = Integer.getInteger("palmturn.kills", 4);

  /** How it ends: by the system, by itself at once, or by a crash of the machine that runs it. */
  private enum End {
    KILL,
    HALT,
    CRASH
  }

  @TempDir Path temp;

  private Path folder() throws StoreException {
    Path folder = temp.resolve("session");
    try (SessionFolder session = SessionFolder.create(folder, SampleFiles.fullSession())) {
      session.save(SampleFiles.plainTrial(SampleFiles.RIGHT));
    }
    return folder;
  }

  /** What it says goes to a file: a pipe's last lines are lost with the program. */
  private Process start(Path folder, int from, int haltAfterMs) throws IOException {
    Files.deleteIfExists(said());
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-XX:-CreateCoredumpOnCrash",
            "-XX:ErrorFile=" + temp.resolve("crash-%p.log"),
            "-cp",
            System.getProperty("java.class.path"),
            Marker.class.getName(),
            folder.toString(),
            Integer.toString(from),
            Integer.toString(haltAfterMs))
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
    return whole
        .lines()
        .filter(line -> line.matches("\\d+"))
        .mapToInt(Integer::parseInt)
        .max()
        .orElse(-1);
  }

  private void awaitFirstMark(Process marker) throws Exception {
    while (lastSaid() < 0) {
      assertTrue(marker.isAlive() || lastSaid() >= 0, "it marks");
      Thread.sleep(5);
    }
  }

  private static void kill(Process marker) throws InterruptedException {
    marker.destroyForcibly();
    assertTrue(marker.waitFor(10, TimeUnit.SECONDS));
  }

  private static void end(Process marker, End end) throws Exception {
    switch (end) {
      case KILL -> marker.destroyForcibly();
      case CRASH -> {
        String pid = Long.toString(marker.pid());
        assertEquals(0, new ProcessBuilder("kill", "-SEGV", pid).start().waitFor());
      }
      case HALT -> {
        // It does so by itself.
      }
    }
    assertTrue(marker.waitFor(20, TimeUnit.SECONDS));
    assertTrue(marker.exitValue() != 0, "it did not end well");
  }

  /** The same session is ended several times over, so that recovery is itself recovered from. */
  @ParameterizedTest
  @ValueSource(longs = {51, 52})
  @Timeout(900)
  void everyMarkThatWasSaidToBeKeptIsThereAfterAnEnd(long seed) throws Exception {
    Random random = new Random(seed);
    Path folder = folder();
    boolean signals = Files.isExecutable(Path.of("/bin/kill"));
    int from = 0;
    for (int i = 0; i < ENDS; i++) {
      End end = End.values()[i % (signals ? 3 : 2)];
      int afterMs = random.nextInt(500);
      Process marker = start(folder, from, end == End.HALT ? afterMs : -1);
      awaitFirstMark(marker);
      if (end != End.HALT) {
        Thread.sleep(afterMs);
      }
      end(marker, end);
      int said = lastSaid();
      assertTrue(said >= from, "it marked before its end");
      try (SessionFolder session = SessionFolder.open(folder)) {
        Reading found = session.trial(SampleFiles.RIGHT).reading("AB").orElseThrow();
        int there = count(found);
        assertTrue(
            there == said || there == said + 1,
            "%s: said %d, found %d".formatted(end, said, there));
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
    Process marker = start(folder, 0, -1);
    try {
      awaitFirstMark(marker);
      SessionFolderTest.assertSays(
          "is open in another Palmturn; this one is read-only",
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
