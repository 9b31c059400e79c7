package palmturn.work.models;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.clip.ClipHash;
import palmturn.clip.Progress;
import palmturn.estimate.hands.ModelFile;
import palmturn.estimate.hands.ModelFile.NpmPackage;
import palmturn.trial.UserError;
import palmturn.work.models.LandmarkModels.FileState;
import palmturn.work.models.LandmarkModels.ModelStatus;

/** Installing made-up networks out of made-up packages. */
class LandmarkModelsTest {
  private static final LocalDate DAY = LocalDate.of(2026, 11, 14);
  private static final byte[] ALONE = bytes("a network in a file of its own");
  private static final byte[] PACKED = bytes("one that is packed with others");
  private static final ModelFile OWN =
      wanted("own.tflite", ALONE, NpmPackage.ALL.get(1), "own.tflite", 0);
  private static final ModelFile IN_PACK =
      wanted("in-pack.tflite", PACKED, NpmPackage.ALL.get(0), "assets.data", 4);

  @TempDir Path folder;
  private Path from;
  private Path own;
  private Path assets;
  private LandmarkModels models;

  @BeforeEach
  void twoUnpackedPackages() throws IOException {
    from = folder.resolve("brought today");
    own = Files.createDirectories(from.resolve("pose/package")).resolve("own.tflite");
    assets = Files.createDirectories(from.resolve("hands/package")).resolve("assets.data");
    Files.write(own, ALONE);
    Files.write(assets, bytes("abcd" + new String(PACKED, StandardCharsets.UTF_8) + "xyz"));
    models = in(folder.resolve("my data/models"));
  }

  private static LandmarkModels in(Path folder) {
    return new LandmarkModels(folder, List.of(OWN, IN_PACK));
  }

  private static ModelFile wanted(
      String file, byte[] content, NpmPackage npm, String packedIn, long packedAt) {
    String sum = HexFormat.of().formatHex(ClipHash.digest().digest(content));
    return new ModelFile(file, "what it gives", content.length, sum, npm, packedIn, packedAt);
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private List<ModelFile> install() throws UserError {
    return models.install(from, "the club's disk", DAY, Progress.NONE);
  }

  private List<FileState> states() {
    return models.statuses().stream().map(ModelStatus::state).toList();
  }

  /** Nothing may be written before all is known to be right. */
  private String refused() {
    String said = assertThrows(UserError.class, this::install).getMessage();
    assertEquals(1, said.lines().count(), said);
    assertFalse(Files.exists(models.folder()), "something was written");
    return said;
  }

  @Test
  void bothAreFoundAndLieBesideTheirLicenceAndWhereTheyCameFrom() throws Exception {
    assertEquals(List.of(FileState.MISSING, FileState.MISSING), states());
    assertEquals(List.of(OWN, IN_PACK), install());

    assertEquals(List.of(FileState.INSTALLED, FileState.INSTALLED), states());
    assertArrayEquals(PACKED, Files.readAllBytes(models.folder().resolve("in-pack.tflite")));
    assertEquals(
        Files.readString(Path.of("LICENSE")),
        Files.readString(models.folder().resolve("LICENSE.txt")));
    String attribution = Files.readString(models.folder().resolve("ATTRIBUTION.txt"));
    for (ModelFile each : List.of(OWN, IN_PACK)) {
      assertTrue(attribution.contains(each.sha256()), attribution);
      assertTrue(attribution.contains(each.npmPackage().version()), attribution);
    }
    ModelStatus standing = models.statuses().get(1);
    assertEquals("2026-11-14", standing.on());
    assertEquals("the club's disk", standing.from());
    try (var left = Files.list(models.folder())) {
      assertEquals(5, left.count(), "nothing half-written is left");
    }
  }

  @Test
  void theFilesAloneDoAsWell() throws Exception {
    install();
    Path flat = models.folder();
    models = in(folder.resolve("second"));
    from = flat;
    install();
    assertEquals(List.of(FileState.INSTALLED, FileState.INSTALLED), states());
  }

  @Test
  void aRightOneIsFoundBesideAWrongOneOfTheSameName() throws Exception {
    Files.write(from.resolve("own.tflite"), bytes("another version of the same file's name"));
    install();
    assertEquals(List.of(FileState.INSTALLED, FileState.INSTALLED), states());
  }

  @Test
  void whatIsRightIsNotBroughtAgainAndWhatIsDamagedIs() throws Exception {
    install();
    Files.write(models.folder().resolve("own.tflite"), bytes("a network in a file of its OWN"));
    assertEquals(List.of(FileState.DAMAGED, FileState.INSTALLED), states());
    assertEquals(List.of("own.tflite"), models.damaged());
    Files.delete(assets);
    assertEquals(List.of(OWN), install());
    assertEquals(List.of(), install());
  }

  @Test
  void aFileThatIsMissingIsNamedWithItsPackage() throws IOException {
    Files.delete(assets);
    String said = refused();
    assertTrue(said.contains("assets.data") && said.contains("@mediapipe/hands@"), said);
    assertTrue(said.contains(from.toString()), said);
  }

  @Test
  void aFileWithAWrongSumIsRefused() throws IOException {
    Files.write(own, bytes("a network in a file of its OWN"));
    String said = refused();
    assertTrue(said.contains("wrong SHA-256") && said.contains("own.tflite"), said);
  }

  @Test
  void aFileThatIsCutOffIsRefused() throws IOException {
    Files.write(assets, bytes("abcd" + "one that is pac"));
    assertTrue(refused().contains("cut off"));
    Files.write(assets, bytes("ab"));
    assertTrue(refused().contains("cut off"));
    Files.write(assets, bytes(""));
    assertTrue(refused().contains("cut off"));
  }

  @Test
  void anUnpackedPackageIsAskedFor() throws IOException {
    from = Files.write(folder.resolve("pose.tgz"), ALONE);
    assertTrue(refused().contains("tar -xzf"));
    from = folder.resolve("gone");
    assertTrue(refused().contains("is not there"));
  }

  @Test
  void aFolderThatMayNotBeWrittenIsNamed() throws IOException {
    Path closed = Files.createDirectory(folder.resolve("closed"));
    assumeTrue(
        closed.toFile().setWritable(false) && !Files.isWritable(closed), "a user with all rights");
    models = in(closed.resolve("models"));
    assertTrue(refused().contains(closed.toString()));
  }

  @Test
  void aFileInTheFoldersWayIsNamed() throws IOException {
    Path file = Files.write(folder.resolve("in the way"), ALONE);
    models = in(file.resolve("models"));
    assertTrue(refused().contains(file.toString()));
  }

  @Test
  void stoppedItLeavesNothing() {
    Progress stopped =
        new Progress() {
          @Override
          public void at(double share, String what) {}

          @Override
          public boolean stopped() {
            return true;
          }
        };
    assertThrows(UserError.class, () -> models.install(from, "here", DAY, stopped));
    assertFalse(Files.exists(models.folder()));
  }

  @Test
  void removingLeavesWhatIsNotOurs() throws Exception {
    install();
    Path own = Files.write(models.folder().resolve("mine.txt"), ALONE);
    assertEquals(2, models.remove());
    try (var left = Files.list(models.folder())) {
      assertEquals(List.of(own), left.toList());
    }
    Files.delete(own);
    assertEquals(0, models.remove());
    assertFalse(Files.exists(models.folder()));
    assertEquals(0, models.remove());
  }
}
