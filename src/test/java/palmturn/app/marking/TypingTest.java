package palmturn.app.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import palmturn.app.stage.Stage;
import palmturn.clip.FrameTable;
import palmturn.clip.FrameTables;
import palmturn.clip.Picture;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.StartedFrom;
import palmturn.trial.TimeScale;
import palmturn.trial.TimedBy;
import palmturn.trial.Zone;

class TypingTest {
  private static final double[] TRUTH = {1, 1.25, 1.5, 1.75, 2, 2.25};

  private final FrameTable frames = FrameTables.steady(240, 60);
  private final Stage stage = new Stage(Runnable::run);
  private final Marking marking = new Marking(Clock.fixed(Instant.EPOCH, ZoneOffset.UTC));
  private final List<Snapping.Move> shown = new ArrayList<>();
  private final Typing typing = new Typing(stage, marking, this::evidence, shown::addAll);

  @BeforeEach
  void open() {
    stage.open(
        frames,
        index ->
            CompletableFuture.completedFuture(
                new Picture(index, frames.timeS(index), 1, 1, new int[1])),
        null,
        null);
    marking.open(Reading.begin("AK", StartedFrom.NOTHING), frames, (marks, said) -> {});
  }

  @Test
  void marksTypedWhileItPlaysSettleWhenItStopsAndOneUndoBringsThemBack() {
    typing.begin(TimeScale.REAL);
    assertTrue(stage.playingProperty().get());
    typeAlong();
    Reading rough = reading();
    assertTrue(rough.slaps().stream().allMatch(slap -> slap.timedBy() == TimedBy.TYPED));
    assertEquals(0.06 / 4, rough.slaps().get(0).resolutionS(), 1e-12, "60 ms at a quarter speed");
    assertEquals(Zone.UNKNOWN, rough.slaps().get(0).zone());

    typing.stop();
    assertFalse(typing.activeProperty().get());
    assertEquals(
        DoubleStream.of(TRUTH).boxed().toList(),
        reading().slaps().stream().map(Slap::timeS).toList());
    assertEquals(6, shown.size());
    assertTrue(marking.stepProperty().get().startsWith("snapped 6 of 6 typed marks"));
    marking.undo();
    assertEquals(rough, reading());
    marking.redo();
    assertTrue(reading().slaps().stream().allMatch(slap -> slap.timedBy() == TimedBy.SOUND));
  }

  @Test
  void evidenceUnderAnotherMarkIsNotTakenTwice() {
    marking.markSlap(frames.nearest(1.5), Side.PALM, false);
    Slap own = reading().slaps().get(0);
    typing.begin(TimeScale.REAL);
    tickTo(1.5);
    typing.typeSlap(Side.PALM, false);
    typing.stop();
    assertTrue(reading().slaps().contains(own));
    assertEquals(
        List.of(TimedBy.PICTURE, TimedBy.TYPED),
        reading().slaps().stream().map(Slap::timedBy).sorted().toList());
  }

  @Test
  void marksThatFindNothingSaySo() {
    typing.begin(TimeScale.REAL);
    tickTo(3.5);
    typing.typeSlap(Side.PALM, false);
    typing.stop();
    assertEquals(TimedBy.TYPED, reading().slaps().get(0).timedBy());
    assertTrue(marking.stepProperty().get().contains("1 without evidence nearby"));
  }

  @Test
  void steppingEndsTyping() {
    typing.begin(TimeScale.REAL);
    tickTo(1.05);
    typing.typeSlap(Side.BACK, true);
    stage.step(-1);
    assertFalse(typing.activeProperty().get());
    assertEquals(Slap.Kind.OTHER, reading().slaps().get(0).kind());
    assertEquals(1.0, reading().slaps().get(0).timeS(), 1e-9);
  }

  private void typeAlong() {
    for (int i = 0; i < TRUTH.length; i++) {
      tickTo(TRUTH[i] + 0.05);
      typing.typeSlap(i % 2 == 0 ? Side.PALM : Side.BACK, false);
    }
  }

  private boolean started;

  /** The clip runs at a quarter of the speed of the clock, which begins at 1 s. */
  private void tickTo(double timeS) {
    if (!started) {
      stage.tick(1_000_000_000L);
      started = true;
    }
    stage.tick(1_000_000_000L + Math.round(4e9 * (timeS + 1e-6)));
  }

  private List<ContactEvidence> evidence(double fromS, double toS) {
    return DoubleStream.of(TRUTH)
        .filter(t -> t >= fromS && t <= toS)
        .mapToObj(t -> ContactEvidence.heard(t, 0, 0.0005))
        .toList();
  }

  private Reading reading() {
    return marking.readingProperty().get();
  }
}
