package palmturn.app.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import palmturn.trial.ClipRef;
import palmturn.trial.Estimate;
import palmturn.trial.Extra;
import palmturn.trial.Hand;
import palmturn.trial.Mirrored;
import palmturn.trial.Reading;
import palmturn.trial.StartedFrom;
import palmturn.trial.TimeScale;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

class ShownEstimateTest {
  private final Trial unread =
      new Trial(
          new TrialId(Hand.RIGHT, "baseline", 1),
          new ClipRef("clips/a.mp4", "0".repeat(64), 0.01, Extra.NONE),
          null,
          null,
          Mirrored.FALSE,
          null,
          TimeScale.REAL,
          null,
          null,
          java.util.List.of(),
          null,
          Extra.NONE);
  private final Trial readByAk = unread.withReading(Reading.begin("AK", StartedFrom.NOTHING));

  @Test
  void hiddenIsNotVisible() {
    ShownEstimate found = new ShownEstimate();
    Estimate made = MadeEstimates.fourSlaps();
    found.set(made);
    assertEquals(made, found.visibleProperty().getValue());
    found.setHidden(true);
    assertNull(found.visibleProperty().getValue());
    assertEquals(made, found.estimateProperty().get());
  }

  @Test
  void secondReaderReadsBlind() {
    assertTrue(ShownEstimate.readsBlind(readByAk, "BM"));
    assertTrue(
        ShownEstimate.readsBlind(
            readByAk.withReading(Reading.begin("BM", StartedFrom.NOTHING)), "BM"));
  }

  @Test
  void firstReaderAndWhoStartedFromTheEstimateSeeIt() {
    assertFalse(ShownEstimate.readsBlind(unread, "AK"));
    assertFalse(ShownEstimate.readsBlind(readByAk, "AK"));
    assertFalse(ShownEstimate.readsBlind(readByAk, null));
    assertFalse(
        ShownEstimate.readsBlind(
            readByAk.withReading(Reading.begin("BM", StartedFrom.ESTIMATE)), "BM"));
  }
}
