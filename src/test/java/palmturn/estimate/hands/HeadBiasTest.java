package palmturn.estimate.hands;

import static java.time.Duration.ofSeconds;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.io.IOException;
import java.nio.file.Files;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class HeadBiasTest {
  private static byte[] whole(ModelFile file) throws IOException {
    return Files.readAllBytes(Installed.folder().resolve(file.fileName()));
  }

  /** The numbers were read from the same files by another program. */
  @Test
  void theConstantsOfTheTwoHandNetworksAreRead() throws IOException {
    Map<String, float[]> full = HeadBias.of(whole(ModelFile.HAND_LANDMARK_FULL));
    assertEquals(Set.of("Identity", "Identity_1", "Identity_2", "Identity_3"), full.keySet());
    assertEquals(63, full.get("Identity").length);
    assertEquals(63, full.get("Identity_3").length);
    assertEquals(0.16699219, full.get("Identity_1")[0], 1e-8);
    assertEquals(-0.0052833557, full.get("Identity_2")[0], 1e-10);
    Map<String, float[]> lite = HeadBias.of(whole(ModelFile.HAND_LANDMARK_LITE));
    assertEquals(0.32470703, lite.get("Identity_1")[0], 1e-8);
    assertEquals(-0.062194824, lite.get("Identity_2")[0], 1e-9);
  }

  static List<ModelFile> withoutBias() {
    return List.of(ModelFile.PALM_DETECTION_FULL, ModelFile.POSE_LANDMARK_FULL);
  }

  @ParameterizedTest
  @MethodSource("withoutBias")
  void networksWithoutSuchLayersHaveNone(ModelFile file) throws IOException {
    assertEquals(Map.of(), HeadBias.of(whole(file)));
  }

  @Test
  void aFileThatIsCutOffIsRefused() throws IOException {
    byte[] whole = whole(ModelFile.HAND_LANDMARK_FULL);
    Random random = new Random(61);
    for (int i = 0; i < 300; i++) {
      int length = i < 100 ? i : random.nextInt(whole.length);
      byte[] cut = Arrays.copyOf(whole, length);
      assertThrows(IllegalArgumentException.class, () -> HeadBias.of(cut), length + " bytes");
    }
  }

  @Test
  void noiseIsRefused() {
    for (long seed = 1; seed <= 200; seed++) {
      byte[] noise = new byte[1 + (int) seed * 50];
      new Random(seed).nextBytes(noise);
      assertThrows(IllegalArgumentException.class, () -> HeadBias.of(noise), "seed " + seed);
    }
  }

  /** Damage to the weights alone is not seen here; nothing but a refusal may come of any. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void aDamagedFileIsRefusedOrReadButNeverWithoutEnd(long seed) throws IOException {
    byte[] whole = whole(ModelFile.HAND_LANDMARK_FULL);
    Random random = new Random(seed);
    int refused = 0;
    for (int i = 0; i < 100; i++) {
      // The tables lie in the last part of the file.
      byte[] damaged = whole.clone();
      int n = 1 + random.nextInt(300);
      for (int k = 0; k < n; k++) {
        damaged[whole.length - 1 - random.nextInt(60_000)] = (byte) random.nextInt();
      }
      refused += assertTimeoutPreemptively(ofSeconds(20), () -> refuses(damaged)) ? 1 : 0;
    }
    // Without it the damage would not reach what is read.
    assertEquals(true, refused > 10, refused + " of 100 refused");
  }

  private static boolean refuses(byte[] damaged) {
    try {
      HeadBias.of(damaged);
      return false;
    } catch (IllegalArgumentException e) {
      return true;
    }
  }
}
