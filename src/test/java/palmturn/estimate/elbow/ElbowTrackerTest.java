package palmturn.estimate.elbow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import palmturn.lab.elbow.ElbowErrors;
import palmturn.lab.elbow.ElbowTruth;
import palmturn.numbers.Robust;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate.EstimatedSpan;

class ElbowTrackerTest {
  private static final double LIMIT_CM = 3;

  @Test
  void elbowThatGoesOutIsFollowedAndCalledOut() throws Exception {
    ElbowTruth truth =
        ElbowTruth.read(Path.of("sample-clips-synthetic/left-baseline-2.truth.json"));
    ElbowPath path = ElbowErrors.follow(truth, 0, 0).path();
    assertEquals(420, path.samples().size());
    assertTrue(path.gaps().isEmpty());
    assertTrue(Robust.median(ElbowErrors.errorsCm(path, truth)) < 0.3);
    // As drawn: 4.8 cm in the picture, 8.7 in space.
    assertEquals(4.8, path.maxCm(), 0.7);
    List<EstimatedSpan> out = ElbowDrift.out(path, LIMIT_CM);
    assertEquals(1, out.size());
    // The truth's series is over 3 cm from 4.717 s to 5.683 s.
    assertEquals(4.717, out.get(0).startS(), 0.1);
    assertEquals(5.683, out.get(0).endS(), 0.1);
  }
}
