package palmturn.estimate.hands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class NetworksTest {
  @TempDir private Path dir;

  private static final List<ModelFile> USED =
      List.of(
          ModelFile.PALM_DETECTION_FULL,
          ModelFile.HAND_LANDMARK_FULL,
          ModelFile.POSE_LANDMARK_FULL);

  private void install() throws IOException {
    for (ModelFile file : USED) {
      Files.copy(Installed.folder().resolve(file.fileName()), dir.resolve(file.fileName()));
    }
  }

  private void refused(ModelFile file, String why) {
    IOException refused =
        assertThrows(IOException.class, () -> Networks.open(NetworkUse.usual(dir)).close());
    assertEquals(
        "The landmark networks in %s can't be used: %s %s (see: tools/palmturn models)"
            .formatted(dir, file.fileName(), why),
        refused.getMessage());
  }

  @Test
  void anEmptyFolderIsRefusedWithALineThatNamesIt() {
    refused(ModelFile.PALM_DETECTION_FULL, "is missing or can't be opened");
  }

  static List<ModelFile> used() {
    return USED;
  }

  @ParameterizedTest
  @MethodSource("used")
  void aMissingFileIsNamed(ModelFile file) throws IOException {
    install();
    Files.delete(dir.resolve(file.fileName()));
    refused(file, "is missing or can't be opened");
  }

  @ParameterizedTest
  @MethodSource("used")
  void aFileThatIsCutOffOrEmptyOrAnotherKindIsNamed(ModelFile file) throws IOException {
    install();
    Path damaged = dir.resolve(file.fileName());
    byte[] whole = Files.readAllBytes(damaged);
    for (int length : new int[] {0, 7, 1000, whole.length / 2, whole.length - 20}) {
      Files.write(damaged, Arrays.copyOf(whole, length));
      refused(file, "is damaged");
    }
    Files.writeString(damaged, "This is a text and no network at all.\n".repeat(50));
    refused(file, "is damaged");
  }

  @Test
  void aPalmDetectorInTheHandsPlaceIsRefused() throws IOException {
    install();
    Path hand = dir.resolve(ModelFile.HAND_LANDMARK_FULL.fileName());
    Files.delete(hand);
    Files.copy(dir.resolve(ModelFile.PALM_DETECTION_FULL.fileName()), hand);
    refused(ModelFile.HAND_LANDMARK_FULL, "is damaged");
  }
}
