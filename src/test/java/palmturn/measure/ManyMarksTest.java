package palmturn.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeout;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import palmturn.trial.Reading;
import palmturn.trial.SampleFiles;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.StartedFrom;
import palmturn.trial.Trial;
import palmturn.trial.Zone;

/** A reading of far more marks than a trial has, as a stranger's file may hold. */
class ManyMarksTest {
  /** Comparing every mark with every other took over a minute. */
  @Test
  void fiftyThousandMarksAreScoredInSeconds() {
    List<Slap> slaps = new ArrayList<>();
    for (int i = 0; i < 50_000; i++) {
      slaps.add(
          Slap.onFrame(
              i % 50 == 49 ? Slap.Kind.MISSED : Slap.Kind.SLAP,
              0.5 + i * 0.01,
              0.001,
              i % 2 == 0 ? Side.PALM : Side.BACK,
              i % 10 == 0 ? Zone.EDGE : Zone.CENTRE));
    }
    Reading reading = Reading.begin("A", StartedFrom.NOTHING).withSlaps(slaps);
    Trial trial = SampleFiles.plainTrial(SampleFiles.RIGHT);
    assertTimeout(
        Duration.ofSeconds(5),
        () -> {
          Window window = Window.of(trial, reading, 600);
          Series series = Series.of(trial, window);
          assertEquals(49_000, window.slaps().size());
          assertEquals(48_999, series.intervals().size());
          TimedAttempt.of(window, series);
        });
  }
}
