package palmturn.estimate.hands;

import static java.time.Duration.ofSeconds;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class PalmBoxesTest {
  /** Two anchors a cell of 24 by 24 cells of 8 pixels, then six a cell of 12 by 12 of 16. */
  private static final int BOXES = 2 * 24 * 24 + 6 * 12 * 12;

  private final float[] boxes = new float[18 * BOXES];
  private final float[] scores = new float[BOXES];

  @BeforeEach
  void nothingIsSeen() {
    Arrays.fill(scores, -20);
  }

  /** Says at an anchor that a palm is so far from it, in pixels of the detector. */
  private void say(int anchor, double score, float x, float y, float width, float height) {
    scores[anchor] = (float) Math.log(score / (1 - score));
    float[] box = {x, y, width, height};
    System.arraycopy(box, 0, boxes, 18 * anchor, 4);
    for (int i = 0; i < 7; i++) {
      boxes[18 * anchor + 4 + 2 * i] = x + i;
      boxes[18 * anchor + 5 + 2 * i] = y - i;
    }
  }

  private List<PalmDetection> palms() {
    return PalmBoxes.palms(boxes, scores, 0.5, 192, 0, 0);
  }

  @Test
  void anchorsLieInTheMiddleOfTheirCells() {
    say(2 * (24 * 5 + 3) + 1, 0.9, 0, 0, 10, 10);
    say(2 * 24 * 24 + 6 * (12 * 9 + 8) + 5, 0.8, 0, 0, 10, 10);
    List<PalmDetection> palms = palms();
    assertEquals(2, palms.size());
    assertEquals(3.5 * 8, palms.get(0).centreX(), 1e-6);
    assertEquals(5.5 * 8, palms.get(0).centreY(), 1e-6);
    assertEquals(8.5 * 16, palms.get(1).centreX(), 1e-6);
    assertEquals(9.5 * 16, palms.get(1).centreY(), 1e-6);
  }

  @Test
  void boxesOnEachOtherAreOnePalmWeightedByScore() {
    // Anchors 0 and 1 both lie at (4, 4).
    say(0, 0.9, 40, 40, 30, 30);
    say(1, 0.6, 45, 40, 30, 36);
    List<PalmDetection> palms = palms();
    assertEquals(1, palms.size());
    PalmDetection palm = palms.get(0);
    assertEquals(0.9, palm.score(), 1e-6);
    assertEquals(44 + 5 * 0.6 / 1.5, palm.centreX(), 1e-5);
    assertEquals(44, palm.centreY(), 1e-5);
    assertEquals(30 + 6 * 0.6 / 1.5, palm.height(), 1e-5);
    assertEquals(palm.centreX() + 2, palm.x()[2], 1e-5);
    assertEquals(palm.centreY() - 2, palm.y()[2], 1e-5);
  }

  @Test
  void boxesThatHardlyOverlapAreTwoPalmsBestFirst() {
    say(0, 0.7, 40, 40, 30, 30);
    // A shift of 17 of 30 leaves 13/47 = 0.28 of both: under 0.3.
    say(1, 0.8, 57, 40, 30, 30);
    List<PalmDetection> palms = palms();
    assertEquals(2, palms.size());
    assertEquals(61, palms.get(0).centreX(), 1e-5);
    assertEquals(44, palms.get(1).centreX(), 1e-5);
    // A shift of 16 leaves 14/46 = 0.304.
    say(1, 0.8, 56, 40, 30, 30);
    assertEquals(1, palms().size());
  }

  @Test
  void palmsUnderTheLeastScoreAreLeftOut() {
    say(0, 0.49, 40, 40, 30, 30);
    assertEquals(List.of(), palms());
    assertEquals(1, PalmBoxes.palms(boxes, scores, 0.4, 192, 0, 0).size());
  }

  @Test
  void aPictureThatWasMadeSquareGetsItsOwnPixelsBack() {
    say(0, 0.9, 92, 92, 30, 20);
    // 960 by 480 pixels, with 240 added above.
    PalmDetection palm = PalmBoxes.palms(boxes, scores, 0.5, 960, 0, 240).get(0);
    assertEquals(480, palm.centreX(), 1e-3);
    assertEquals(240, palm.centreY(), 1e-3);
    assertEquals(150, palm.width(), 1e-3);
    assertEquals(100, palm.height(), 1e-3);
    assertEquals(480, palm.x()[0], 1e-3);
    assertEquals(235, palm.y()[1], 1e-3);
  }

  @Test
  void aBoxOfNoSizeDoesNotHoldUpTheOthers() {
    say(0, 0.9, 40, 40, 0, 0);
    say(1, 0.8, 90, 90, 20, 20);
    say(2, 0.7, 140, 140, -20, -20);
    say(3, 0.6, 140, 40, Float.NaN, 20);
    assertTimeoutPreemptively(ofSeconds(10), () -> assertEquals(4, palms().size()));
  }
}
