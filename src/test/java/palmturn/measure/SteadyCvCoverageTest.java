package palmturn.measure;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.numbers.Range;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.StartedFrom;
import palmturn.trial.TimeScale;
import palmturn.trial.Zone;

/** The steady CV's interval holds the CV that a trial was made with 95 times in 100. */
class SteadyCvCoverageTest {
  private static final int TRIALS = 2000;
  private static final int SLAPS = 25;
  private static final double MEAN_S = 0.19;
  private static final double BIAS_S = 0.012;
  private static final double SLOWING = 0.01;

  @ParameterizedTest
  @ValueSource(longs = {101, 102, 103})
  void theIntervalHoldsTheTruthAsOftenAsItSays(long seed) {
    Random random = new Random(seed);
    int held = 0;
    for (int trial = 0; trial < TRIALS; trial++) {
      double cv = 0.03 + 0.05 * random.nextDouble();
      List<Slap> slaps = new ArrayList<>();
      double timeS = 1;
      double sumS = 0;
      for (int i = 0; i < SLAPS; i++) {
        Side side = i % 2 == 0 ? Side.PALM : Side.BACK;
        slaps.add(Slap.onFrame(Slap.Kind.SLAP, timeS, 0.001, side, Zone.CENTRE));
        double wantedS =
            MEAN_S * (1 + SLOWING * (timeS - 1)) + (side == Side.PALM ? BIAS_S : -BIAS_S) / 2;
        double d = wantedS + MEAN_S * cv * random.nextGaussian();
        timeS += d;
        sumS += i < SLAPS - 1 ? d : 0;
      }
      Reading reading = Reading.begin("A", StartedFrom.NOTHING).withSlaps(slaps);
      Range range =
          Scores.trial(Made.trial(TimeScale.REAL), reading, 60, Limits.DEFAULT)
              .rhythm()
              .steadyCvRangePct();
      double truePct = 100 * MEAN_S * cv / (sumS / (SLAPS - 1));
      held += range.low() <= truePct && truePct <= range.high() ? 1 : 0;
    }
    double share = held / (double) TRIALS;
    assertTrue(share > 0.93 && share < 0.97, "held in " + share);
  }
}
