package palmturn.work.pack;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.lab.fuzz.PackFuzz;

/** Packs of any size, order and date; more of them by {@code tools/lab fuzz --packs}. */
class PackFuzzTest {
  private static final int SESSIONS = Integer.getInteger("palmturn.fuzz.sessions", 6);

  @TempDir Path folder;

  @Test
  void allOrdersEndInOneSessionAndNothingIsLost() throws Exception {
    PackFuzz fuzz = new PackFuzz(folder);
    fuzz.run(1, SESSIONS);
    assertEquals(List.of(), fuzz.faults(), fuzz.report());
  }
}
