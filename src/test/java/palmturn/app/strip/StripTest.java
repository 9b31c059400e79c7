package palmturn.app.strip;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import palmturn.app.estimate.MadeEstimates;
import palmturn.app.estimate.ShownEstimate;
import palmturn.app.marking.Marking;
import palmturn.app.stage.Stage;
import palmturn.clip.FrameTable;
import palmturn.clip.FrameTables;
import palmturn.clip.Picture;
import palmturn.clip.Sound;
import palmturn.trial.Extra;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.StartedFrom;
import palmturn.trial.TimeScale;
import palmturn.trial.TimedBy;
import palmturn.trial.Zone;

class StripTest {
  private final FrameTable frames = FrameTables.steady(600, 60);
  private final Stage stage = new Stage(Runnable::run);
  private final Marking marking = new Marking(Clock.fixed(Instant.EPOCH, ZoneOffset.UTC));
  private final ShownEstimate found = new ShownEstimate();
  private final Strip strip = new Strip(stage, marking, found);

  @BeforeEach
  void open() {
    stage.open(
        frames,
        index ->
            CompletableFuture.completedFuture(
                new Picture(index, frames.timeS(index), 1, 1, new int[1])),
        null,
        null);
    marking.open(Reading.begin("AK", StartedFrom.NOTHING), frames, (reading, sentence) -> {});
    strip.open(TimeScale.REAL, 5);
    strip.setRightX(1440);
  }

  @Test
  void flagNamesTheMarkWithItsTimeFromTheFirstSlapAndItsDoubt() {
    marking.markSlap(60, Side.PALM, false);
    marking.markSlap(72, Side.BACK, false);
    stage.seek(72);
    marking.chooseSlapOn(72);

    assertEquals("slap 2, back, 0.200 s ± 8 ms", strip.flagText());
    stage.step(1);
    assertEquals("0.217 s", strip.flagText());
  }

  @Test
  void zoomKeepsTheMomentUnderTheMouse() {
    double before = strip.view().timeS(700);
    strip.zoom(2, 700);

    assertEquals(before, strip.view().timeS(700), 1e-9);
    assertEquals(384, strip.view().pixelsPerS(), 1e-9);
  }

  @Test
  void frameUnderTheMouseIsTheNearest() {
    assertEquals(120, strip.frameAt(strip.view().x(frames.timeS(120)) + 1));
    assertEquals(0, strip.frameAt(strip.view().x(-5)));
  }

  @Test
  void followsTheStageIntoSight() {
    stage.seek(590);
    strip.keepFrameInView();

    double x = strip.view().x(stage.timeS());
    assertTrue(x > Strip.GUTTER && x < 1440, "x is " + x);
  }

  @Test
  void countsNameDoublesApart() {
    marking.markSlap(60, Side.PALM, false);
    marking.markSlap(66, Side.PALM, false);
    marking.toggleKind(Slap.Kind.DOUBLE);

    assertEquals("1, 1 double", strip.sideCount(Side.PALM));
    assertEquals("0", strip.sideCount(Side.BACK));
  }

  @Test
  void estimateStandsHollowBesideTheMarksUntilItIsHidden() {
    found.set(MadeEstimates.fourSlaps());
    assertEquals(4, strip.hollow().countShown());
    assertEquals("2.50 Hz", strip.turnWords());
    assertEquals("12 ms late", strip.soundWords());

    marking.markSlap(12, Side.PALM, false);
    assertEquals(3, strip.hollow().countShown());
    assertEquals(Side.BACK, strip.hollow().slaps().get(1).side());

    found.setHidden(true);
    assertNull(strip.hollow());
    assertEquals("", strip.turnWords());
  }

  @Test
  void flagOfAMarkByMotionReachesHalfAFrameToBothSides() {
    marking.startFrom(MadeEstimates.fourSlaps());
    stage.seek(12);
    marking.chooseSlapOn(12);
    assertEquals("slap 1, side unknown, 0.000 s ± 8 ms", strip.flagText());
  }

  @Test
  void flagOfAMarkBySoundTellsItsOwnTimeAndLessThanAMillisecond() {
    Reading heard =
        new Reading(
            "AK",
            false,
            StartedFrom.ESTIMATE,
            List.of(heard(1.0004), heard(1.2033)),
            List.of(),
            Extra.NONE);
    marking.open(heard, frames, (reading, sentence) -> {});
    stage.seek(72);
    marking.chooseSlapOn(72);
    assertEquals("slap 2, back, 0.203 s ± 0.3 ms", strip.flagText());
  }

  private static Slap heard(double timeS) {
    return new Slap(
        Slap.Kind.SLAP,
        timeS,
        Side.BACK,
        Zone.CENTRE,
        TimedBy.SOUND,
        0.0003,
        null,
        timeS,
        true,
        "",
        Extra.NONE);
  }

  @Test
  void withoutMarksTheStripBeginsAtTheEstimate() {
    found.set(MadeEstimates.fourSlaps());
    strip.scrollToFirstSlap();
    assertEquals(0.2 - 0.35, strip.view().timeS(Strip.GUTTER), 1e-9);
  }

  @Test
  void waveShowsAClickWhereItIs() {
    float[] samples = new float[48000];
    samples[24000] = -0.5f;
    SoundOutline wave = SoundOutline.of(new Sound(1.0, 48000, samples));

    assertEquals(1, wave.loudest(1.499, 1.501));
    assertEquals(0, wave.loudest(1.1, 1.4));
    assertEquals(0, wave.loudest(0, 0.9));
  }
}
