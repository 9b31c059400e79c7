package palmturn.work.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import palmturn.lab.fuzz.ClipFuzz;

/** A few of the damaged clips that tools/lab fuzz reads by the thousand. */
class HostileClipTest {
  private static final String CLIPS =
      "src/test/resources/palmturn/clip"
          + File.pathSeparator
          + "src/test/resources/palmturn/work/fuzz";

  private static final int SMALL_BYTES = 100_000;
  private static final long SEED = 1;
  private static final int HOW_MANY = 60;

  @TempDir Path temp;

  @Test
  @Timeout(180)
  void damagedClipsOfEveryKindAreReadInPartOrRefused() throws Exception {
    Path good = Files.createDirectories(temp.resolve("good"));
    for (Path clip : ClipFuzz.goodClips(CLIPS)) {
      if (Files.size(clip) < SMALL_BYTES) {
        Files.copy(clip, good.resolve(clip.getFileName().toString()));
      }
    }
    ClipFuzz fuzz = new ClipFuzz(good.toString(), temp.resolve("work"), 0);
    fuzz.run(SEED, HOW_MANY);
    assertEquals(List.of(), fuzz.faults());
    assertEquals(HOW_MANY, fuzz.count("read") + fuzz.count("in-part") + fuzz.count("refused"));
    assertTrue(fuzz.count("in-part") > 0 && fuzz.count("refused") > 0, "some of each");
  }
}
