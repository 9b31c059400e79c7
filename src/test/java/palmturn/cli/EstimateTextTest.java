package palmturn.cli;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import palmturn.trial.Estimate;
import palmturn.trial.Hand;
import palmturn.trial.SampleFiles;
import palmturn.work.estimate.EstimateBatch;

/** What an estimate's text says of the hands' shape. */
class EstimateTextTest {
  private static String text(Estimate estimate) {
    return EstimateText.of(
        new EstimateBatch.Outcome(
            "clip.mp4", null, null, Hand.LEFT, estimate.clipSha256(), estimate, null));
  }

  @Test
  void zonesWristAndTurnAreThereWhereTheShapeWasSeen() {
    String text = text(SampleFiles.fullEstimate());
    assertTrue(text.contains("  zones        fingers 1, unknown 2\n"), text);
    assertTrue(text.contains("  wrist        not bent for long\n"), text);
    assertTrue(
        text.contains(
            "  turn         about 172° from side to side; last third − first −32° (95 %"
                + " interval −38 to −26)\n"),
        text);
  }

  @Test
  void anElbowThatWasLostASingleTimeWasLostOnce() {
    String text = text(SampleFiles.fullEstimate());
    assertTrue(
        text.contains("in the picture (scale: given); in space about 1.1 cm (1.0 to 1.3, one SD)"),
        text);
    assertTrue(text.contains("one SD); lost once, then up to about 0.7 cm away (SD 0.3)\n"), text);
  }

  @Test
  void withoutShapeNoneIsClaimed() {
    String text = text(SampleFiles.emptyEstimate());
    assertFalse(text.contains("zones") || text.contains("wrist") || text.contains("  turn "), text);
  }
}
