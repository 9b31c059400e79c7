package palmturn.settle;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ClockOffsetTest {

  @ParameterizedTest
  @CsvSource({"101, 0.06", "102, -0.07", "103, 0.03", "104, 0", "105, -0.04"})
  void isFoundThroughJitterAndMissedSlaps(long seed, double offsetS) {
    Random random = new Random(seed);
    double[] truth = IntStream.range(0, 60).mapToDouble(i -> 0.2 * i).toArray();
    double[] a = seen(truth, 0, random);
    double[] b = seen(truth, offsetS, random);
    // Four standard errors of a median of 50 differences, jitter 4 ms each, are 4 ms.
    assertEquals(offsetS, ClockOffset.medianS(a, b), 0.004);
  }

  @Test
  void withoutAPairNothingIsTakenOff() {
    assertEquals(0, ClockOffset.medianS(new double[0], new double[] {1, 2}));
    assertEquals(0, ClockOffset.medianS(new double[] {1}, new double[] {9}));
  }

  private static double[] seen(double[] truth, double offsetS, Random random) {
    return Arrays.stream(truth)
        .filter(t -> random.nextInt(12) > 0)
        .map(t -> t + offsetS + 0.004 * random.nextGaussian())
        .toArray();
  }
}
