package palmturn.estimate.elbow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.clip.ClipFile;
import palmturn.clip.Progress;
import palmturn.estimate.hands.Installed;
import palmturn.estimate.hands.NetworkUse;
import palmturn.estimate.image.Footage;
import palmturn.estimate.motion.FlowPass;
import palmturn.lab.elbow.CoveredElbow;
import palmturn.lab.elbow.ElbowTruth;
import palmturn.lab.elbow.LostElbowErrors;
import palmturn.trial.ElbowPath;
import palmturn.trial.Point;

/** Lost elbows of a drawn clip whose elbow goes out by nearly 5 cm at 4.7 to 5.7 s. */
class GapFillerTest {
  private static final Path CLIP = Path.of("sample-clips-synthetic/left-baseline-2.truth.json");

  @TempDir Path folder;

  @Test
  void inAGapItIsTakenToBeWhereItWasWithinWhatIsSaid() throws Exception {
    ElbowTruth truth = ElbowTruth.read(CLIP);
    ElbowPath path = LostElbowErrors.pathWithGap(truth, 2, 3.5, null);
    assertEquals(1.5 * 60 - 1, path.gapEstimates().size(), 1);
    for (ElbowPath.GapEstimate each : path.gapEstimates()) {
      double sdCm = each.sdPx() * truth.cmPerPixel();
      assertTrue(LostElbowErrors.errorCm(truth, each) < 2.45 * sdCm, each::toString);
    }
  }

  @Test
  void aBodyInViewTellsMoreOfALostElbow() throws Exception {
    NetworkUse networks = NetworkUse.usual(Installed.folder());
    ElbowTruth truth = ElbowTruth.read(CLIP);
    ElbowPath with = LostElbowErrors.pathWithGap(truth, 4.2, 6.2, networks);
    ElbowPath without = LostElbowErrors.pathWithGap(truth, 4.2, 6.2, null);
    assertEquals(with.gapEstimates().size(), without.gapEstimates().size());
    assertTrue(meanErrorCm(truth, with) < meanErrorCm(truth, without));
    assertTrue(
        with.farthestGapEstimate().distancePx() * truth.cmPerPixel() > 1.5,
        "that it goes out is told, if too little: " + with.farthestGapEstimate());
    int middle = with.gapEstimates().size() / 2;
    assertTrue(with.gapEstimates().get(middle).sdPx() < without.gapEstimates().get(middle).sdPx());
  }

  @Test
  void whatCoversTheElbowIsNotTakenForIt() throws Exception {
    ElbowTruth truth = ElbowTruth.read(CLIP);
    CoveredElbow covered = CoveredElbow.write(truth, CoveredElbow.Cover.GREY, 1, folder);
    ClipFile clip = ClipFile.open(covered.truth().clip());
    Footage footage =
        FlowPass.of(clip, 0, clip.frames().size(), clip.facts().width(), Progress.NONE);
    double radiusPx = 4.2 / truth.cmPerPixel();
    ArmInView arm = ArmInView.of(footage, truth.elbow(), radiusPx);
    assertNotNull(arm);
    assertTrue(arm.at(covered.fromS() - 0.1, truth.elbow()));
    assertFalse(arm.at((covered.fromS() + covered.toS()) / 2, truth.elbow()));
    assertTrue(arm.at(covered.toS() + 0.1, truth.elbow()));
    Point wall = new Point(5, 5);
    assertNull(ArmInView.of(footage, new Point(-500, -500), radiusPx), "outside the picture");
    assertFalse(arm.at(0, wall));
  }

  private static double meanErrorCm(ElbowTruth truth, ElbowPath path) {
    List<ElbowPath.GapEstimate> unseen = path.gapEstimates();
    return unseen.stream()
        .mapToDouble(each -> LostElbowErrors.errorCm(truth, each))
        .average()
        .orElseThrow();
  }
}
