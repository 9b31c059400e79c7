package palmturn.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.trial.Hand;
import palmturn.trial.SampleFiles;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

class ClipsTest {
  /** SHA-256 of "abc": FIPS 180-2, appendix B.1. */
  private static final String SHA_OF_ABC =
      "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

  @TempDir Path temp;

  private SessionFolder made() throws StoreException {
    return SessionFolder.create(temp.resolve("session"), SampleFiles.fullSession());
  }

  private Path source(String folder, String name, String content) throws IOException {
    Path file = temp.resolve(folder).resolve(name);
    Files.createDirectories(temp.resolve(folder));
    return Files.writeString(file, content);
  }

  @Test
  void aClipKeepsItsNameAndIsCopiedOnce() throws Exception {
    try (SessionFolder session = made()) {
      Path first = source("phone", "IMG_1.MOV", "abc");
      assertEquals("clips/IMG_1.MOV", session.importClip(first));
      assertEquals("clips/IMG_1.MOV", session.importClip(first), "the same bytes");
      assertEquals("clips/IMG_1-2.MOV", session.importClip(source("tablet", "IMG_1.MOV", "abd")));
      assertEquals("clips/IMG_1-2.MOV", session.importClip(source("again", "IMG_1.MOV", "abd")));
      Path inside = session.folder().resolve("clips/IMG_1.MOV");
      assertEquals("clips/IMG_1.MOV", session.importClip(inside));
      assertEquals("abc", Files.readString(inside), "nothing is overwritten");
      assertEquals("abc", Files.readString(first), "nor moved away");
    }
  }

  @Test
  void aSourceThatIsNoFileIsRefused() throws Exception {
    try (SessionFolder session = made()) {
      SessionFolderTest.assertSays(
          "there is no such file",
          assertThrows(StoreException.class, () -> session.importClip(temp.resolve("none.mp4"))));
      assertThrows(StoreException.class, () -> session.importClip(temp));
    }
  }

  @Test
  void aMissingOrChangedClipIsSaidForEachTrial() throws Exception {
    try (SessionFolder session = made()) {
      String path = session.importClip(source("phone", "a.mp4", "abc"));
      Trial right = SampleFiles.plainTrial(SampleFiles.RIGHT, path, SHA_OF_ABC);
      Trial left =
          SampleFiles.plainTrial(
              new TrialId(Hand.LEFT, "baseline", 1), "clips/gone.mp4", SHA_OF_ABC);
      session.save(right);
      session.save(left);
      session.checkClip(right);
      List<String> problems = session.checkClips();
      assertEquals(1, problems.size());
      assertTrue(problems.get(0).contains("gone.mp4: the clip of left-baseline-1 is not there"));
      Files.writeString(session.clipPath(right), "abd");
      assertEquals(2, session.checkClips().size());
      SessionFolderTest.assertSays(
          "a.mp4: the clip of right-baseline-1 has changed since it was added",
          assertThrows(StoreException.class, () -> session.checkClip(right)));
      assertEquals("abd", Files.readString(session.clipPath(right)), "left as it is");
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      value = {
        "a.mp4 | a.mp4",
        "Rechte Hand 1.mp4 | Rechte-Hand-1.mp4",
        "früh.mp4 | früh.mp4",
        "右手.mp4 | 右手.mp4",
        "../../x.mp4 | x.mp4",
        ".hidden | hidden",
        "a:b*c?.mp4 | a-b-c-.mp4",
        "con.mp4 | clip-con.mp4",
        "NUL.tar.gz | clip-NUL.tar.gz",
        "a. . | a",
        "... | clip",
        "-rf | rf",
      })
  void namesAreMadeHarmless(String name, String harmless) {
    assertEquals(harmless, SessionPaths.safeName(name));
  }

  @Test
  void longNamesAreCutBeforeTheirEnding() {
    String name = SessionPaths.safeName("👏𝐚".repeat(200) + ".mp4");
    assertTrue(name.length() <= 100 && name.endsWith(".mp4"), name);
    assertFalse(Character.isHighSurrogate(name.charAt(name.length() - 5)), name);
  }

  /** Three bytes a letter: 83 letters and the ending are all that the system takes. */
  @Test
  void theLongestNameInAnyLettersIsTakenTwice() throws Exception {
    String name = "右".repeat(83) + ".mp4";
    try (SessionFolder session = made()) {
      String first = session.importClip(source("a", name, "abc"));
      String second = session.importClip(source("b", name, "abd"));
      assertTrue(second.endsWith("-2.mp4"), second);
      assertEquals("abc", Files.readString(session.folder().resolve(first)));
      assertEquals("abd", Files.readString(session.folder().resolve(second)));
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "/",
        "/etc/passwd",
        "..",
        "../x",
        "clips/../x",
        "clips/..",
        "clips//x",
        "clips/",
        "./x",
        "C:x",
        "c:/x",
        "\\\\host\\x",
        "clips\\x",
        "x\u0000y",
        "x\ny"
      })
  void pathsThatClimbOutAreNotHarmless(String path) {
    assertFalse(SessionPaths.isInside(path));
  }

  @ParameterizedTest
  @ValueSource(strings = {"clips/a.mp4", "clips/..a", "a", "clips/früh 1.mp4"})
  void pathsInsideAreHarmless(String path) {
    assertTrue(SessionPaths.isInside(path));
  }
}
