package palmturn.work;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.trial.Session;
import palmturn.work.session.Sessions;

/** Work files that a process left behind when it was killed. */
class WorkFileTest {
  @TempDir Path folder;

  @Test
  void whoNextOpensTheSessionRemovesThem() throws Exception {
    Path session = folder.resolve("s");
    Sessions.create(session, "H-07", LocalDate.of(2026, 11, 14), Session.Facts.NONE).close();
    // No process had this number at the beginning of 1970.
    String dead = ".palmturn-1-3-1.part";
    Path beside = Files.createDirectory(folder.resolve(dead));
    Files.writeString(beside.resolve("picture.jpg"), "x");
    Path within = Files.writeString(session.resolve("report").resolve(dead), "x");
    Path foreign = Files.writeString(folder.resolve(".palmturn-notes.part"), "x");
    try (WorkFile own = WorkFile.file(folder.resolve("pack.zip"))) {
      Sessions.openReadOnly(session).close();
      assertTrue(Files.exists(own.path()), "a living process still works on it");
    }
    assertFalse(Files.exists(beside));
    assertFalse(Files.exists(within));
    assertTrue(Files.exists(foreign), "not of this program's making");
  }
}
