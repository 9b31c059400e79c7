package palmturn.work;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.trial.TrialId;
import palmturn.work.Recents.Left;

class RecentsTest {
  private static final TrialId TRIAL = TrialId.parse("left-after-2-3");

  @TempDir private Path folder;

  @Test
  void sessionAndPlaceAreThereForTheNextProgram() {
    Path settings = folder.resolve("deep");
    Path session = folder.resolve("Söhne = 1");
    Recents.in(settings).remember(new Left(session, "H-07, 14 November 2026", TRIAL, 2.364, "AK"));

    Left left = Recents.in(settings).of(session).orElseThrow();
    assertEquals(new Left(session, "H-07, 14 November 2026", TRIAL, 2.364, "AK"), left);
  }

  @Test
  void lastOpenedIsFirstAndOnlyOnceAndTheListIsShort() {
    Recents recents = Recents.unkept();
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
    Recents recents = Recents.in(folder);
    recents.remember(new Left(folder.resolve("a"), "H-07", null, null, "AK"));
    recents.remember(new Left(folder.resolve("b"), "H-09", null, null, "BM"));
    recents.remember(left("c"));
    assertEquals("AK", Recents.in(folder).reader(folder.resolve("a")).orElseThrow());
    assertEquals("BM", Recents.in(folder).reader(folder.resolve("c")).orElseThrow());
    assertTrue(Recents.unkept().reader(folder).isEmpty());
  }

  @Test
  void whatWasBeingAddedIsKnownToTheNextProgramUntilItIsIn() {
    Recents recents = Recents.in(folder);
    recents.adding(folder.resolve("my session"), List.of("right-baseline-1", "left-baseline-1"));
    recents.remember(left("other"));
    assertEquals(
        new Recents.Adding(
            folder.resolve("my session"), List.of("right-baseline-1", "left-baseline-1")),
        Recents.in(folder).wasAdding());
    recents.added();
    assertEquals(null, Recents.in(folder).wasAdding());
  }

  @Test
  void damagedFileIsAsGoodAsNone() throws Exception {
    Path file = folder.resolve("recent.properties");
    Files.writeString(file, "0.folder=/a\n0.trial=sideways\n1.folder=/b\n1.timeS=NaN\nx=\\u12");
    assertEquals(List.of(), Recents.in(folder).all());
    Files.writeString(file, "0.folder=/a\n0.trial=sideways\n1.folder=/b\n1.timeS=NaN\n");
    assertEquals(1, Recents.in(folder).all().size());
    assertEquals(null, Recents.in(folder).all().get(0).timeS());
    Files.write(file, new byte[] {(byte) 0xff, 0, 1});
    assertEquals(List.of(), Recents.in(folder).all());
  }

  @Test
  void settingsLieWhereTheSystemKeepsThem() {
    Path home = Path.of("home");
    assertEquals(home.resolve(".config/palmturn"), Recents.settings("Linux", home, null));
    assertEquals(Path.of("set/palmturn"), Recents.settings("Linux", home, "set"));
    assertEquals(
        home.resolve("Library/Application Support/palmturn"),
        Recents.settings("Mac OS X", home, null));
    assertEquals(
        home.resolve("AppData/Roaming/palmturn"), Recents.settings("Windows 11", home, null));
  }

  private Left left(String name) {
    return new Left(folder.resolve(name), "H-07", null, null, null);
  }
}
