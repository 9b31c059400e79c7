package palmturn.lab.elbow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import palmturn.trial.ElbowPath;

class CoveredElbowTest {
  @TempDir Path folder;

  @ParameterizedTest
  @EnumSource(
      value = CoveredElbow.Cover.class,
      names = {"DARK", "ROOM"})
  void coveredElbowIsSaidToBeLostAndIsNotMistaken(CoveredElbow.Cover cover) throws Exception {
    ElbowTruth truth =
        ElbowTruth.read(Path.of("sample-clips-synthetic/left-baseline-2.truth.json"));
    CoveredElbow covered = CoveredElbow.write(truth, cover, folder);
    ElbowPath path = ElbowErrors.follow(covered.truth(), 0, 0).path();
    assertNotNull(path);
    assertEquals(0, covered.countWrong(path));
    assertTrue(CoveredElbow.isLost(path, covered.fromS() + 0.05), path.gaps()::toString);
    assertTrue(CoveredElbow.isLost(path, covered.toS() - 0.05), path.gaps()::toString);
    assertTrue(
        path.samples().get(path.samples().size() - 1).timeS() > covered.toS() + 1,
        "it is found again");
  }
}
