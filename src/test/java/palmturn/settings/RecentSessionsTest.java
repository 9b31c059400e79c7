package palmturn.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.settings.RecentSessions.Entry;
import palmturn.trial.TrialId;

class RecentSessionsTest {
  private static final TrialId TRIAL = TrialId.parse("left-after-2-3");

  @TempDir private Path folder;

  @Test
  void sessionAndPlaceAreThereForTheNextProgram() {
    Path settings = folder.resolve("deep");
    Path session = folder.resolve("Söhne = 1");
    RecentSessions.in(settings)
        .remember(new Entry(session, "H-07, 14 November 2026", TRIAL, 2.364, "AK"));

    Entry left = RecentSessions.in(settings).of(session).orElseThrow();
    assertEquals(new Entry(session, "H-07, 14 November 2026", TRIAL, 2.364, "AK"), left);
  }

  @Test
  void lastOpenedIsFirstAndOnlyOnceAndTheListIsShort() {
    RecentSessions recents = RecentSessions.inMemory();
    for (int i = 0; i < 12; i++) {
      recents.remember(left("s" + i));
    }
    recents.remember(left("s7"));
    List<String> names =
        recents.all().stream().map(each -> each.folder().getFileName().toString()).toList();
    assertEquals(List.of("s7", "s11", "s10", "s9", "s8", "s6", "s5", "s4", "s3"), names);
    recents.forget(folder.resolve("s11"));
    assertTrue(recents.of(folder.resolve("s11")).isEmpty());
  }

  @Test
  void readerIsSuggestedWhereThatOneReadAndElsewhereWhoReadLast() {
    RecentSessions recents = RecentSessions.in(folder);
    recents.remember(new Entry(folder.resolve("a"), "H-07", null, null, "AK"));
    recents.remember(new Entry(folder.resolve("b"), "H-09", null, null, "BM"));
    recents.remember(left("c"));
    assertEquals("AK", RecentSessions.in(folder).reader(folder.resolve("a")).orElseThrow());
    assertEquals("BM", RecentSessions.in(folder).reader(folder.resolve("c")).orElseThrow());
    assertTrue(RecentSessions.inMemory().reader(folder).isEmpty());
  }

  @Test
  void whatWasBeingAddedIsKnownToTheNextProgramUntilItIsIn() {
    RecentSessions recents = RecentSessions.in(folder);
    recents.startAdding(
        folder.resolve("my session"), List.of("right-baseline-1", "left-baseline-1"));
    recents.remember(left("other"));
    assertEquals(
        new RecentSessions.PendingAdd(
            folder.resolve("my session"), List.of("right-baseline-1", "left-baseline-1")),
        RecentSessions.in(folder).unfinishedAdd());
    recents.finishAdding();
    assertEquals(null, RecentSessions.in(folder).unfinishedAdd());
  }

  @Test
  void damagedFileIsAsGoodAsNone() throws Exception {
    Path file = folder.resolve("recent.properties");
    Files.writeString(file, "0.folder=/a\n0.trial=sideways\n1.folder=/b\n1.timeS=NaN\nx=\\u12");
    assertEquals(List.of(), RecentSessions.in(folder).all());
    Files.writeString(file, "0.folder=/a\n0.trial=sideways\n1.folder=/b\n1.timeS=NaN\n");
    assertEquals(1, RecentSessions.in(folder).all().size());
    assertEquals(null, RecentSessions.in(folder).all().get(0).timeS());
    Files.write(file, new byte[] {(byte) 0xff, 0, 1});
    assertEquals(List.of(), RecentSessions.in(folder).all());
  }

  private Entry left(String name) {
    return new Entry(folder.resolve(name), "H-07", null, null, null);
  }
}
