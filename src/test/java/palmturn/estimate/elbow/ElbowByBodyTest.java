package palmturn.estimate.elbow;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import palmturn.estimate.elbow.ElbowByBody.Sighting;
import palmturn.estimate.hands.ElbowCandidates;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate.Stretch;

/** An elbow that goes to the right at 10 pixels a second, and is lost from 2 to 3 s. */
class ElbowByBodyTest {
  private static final double RADIUS_PX = 42;
  private static final double LEAST_SD_PX = 0.48 * RADIUS_PX;
  private static final int SQUARES = 8;
  private static final ElbowPath PATH =
      ElbowFusionTest.path(
          IntStream.rangeClosed(0, 300)
              .mapToObj(i -> i / 60.0)
              .filter(timeS -> timeS <= 2 || timeS >= 3)
              .toList(),
          timeS -> new double[] {10 * timeS, 0},
          new Stretch(2, 3));

  /** What one square says: off by a constant, with a scatter. */
  private interface Square {
    double[] off(int square, double timeS);
  }

  @Test
  void whatASquareIsOffByIsTakenOut() {
    ElbowByBody body = told(1, (square, timeS) -> new double[] {25 * square, -9 * square, 0.95});
    assertNotNull(body);
    assertArrayEquals(new double[] {2.25, 2.5, 2.75}, numbers(body, Sighting::timeS), 1e-9);
    assertArrayEquals(new double[] {22.5, 25, 27.5}, numbers(body, Sighting::rightPx), 0.2);
    assertArrayEquals(new double[] {0, 0, 0}, numbers(body, Sighting::downPx), 1e-9);
    assertEquals(LEAST_SD_PX, body.sdPx(), 1e-9, "no better than the landmarks are known to");
    assertEquals(16, body.comparedS().size());
  }

  @Test
  void whatTheyScatterByIsWhatTheyAreKnownTo() {
    Random chance = new Random(3);
    double[] common =
        IntStream.range(0, 200).mapToDouble(i -> 45 * chance.nextGaussian()).toArray();
    ElbowByBody body =
        told(
            1,
            (square, timeS) ->
                new double[] {common[(int) (20 * timeS)], common[(int) (20 * timeS) + 100], 0.95});
    assertNull(body, "squares that scatter by more than the radius tell nothing");
    ElbowByBody better =
        told(
            1,
            (square, timeS) ->
                new double[] {
                  0.6 * common[(int) (20 * timeS)], 0.6 * common[(int) (20 * timeS) + 100], 0.95
                });
    assertNotNull(better);
    assertTrue(
        better.sdPx() > LEAST_SD_PX && better.sdPx() < 0.6 * 45 * 1.3, better.sdPx() + " px");
  }

  @Test
  void slowMotionIsHeldAtTheSameMoments() {
    ElbowByBody body = told(0.25, (square, timeS) -> new double[] {25 * square, 0, 0.95});
    assertNotNull(body);
    assertArrayEquals(new double[] {2.25, 2.5, 2.75}, numbers(body, Sighting::timeS), 1e-9);
    assertArrayEquals(new double[] {22.5, 25, 27.5}, numbers(body, Sighting::rightPx), 0.2);
  }

  @Test
  void aCoveredElbowIsLessVisibleAndIsNotTold() {
    ElbowByBody body =
        told(
            1,
            (square, timeS) ->
                new double[] {25 * square, 0, timeS > 2.4 && timeS < 2.6 ? 0.85 : 0.95});
    assertNotNull(body);
    assertArrayEquals(new double[] {2.25, 2.75}, numbers(body, Sighting::timeS), 1e-9);
  }

  @Test
  void squaresThatDisagreeTellNothing() {
    ElbowByBody body =
        told(
            1,
            (square, timeS) ->
                new double[] {timeS > 2.4 && timeS < 2.6 ? 60 * square : 25, 0, 0.95});
    assertNotNull(body);
    assertArrayEquals(new double[] {2.25, 2.75}, numbers(body, Sighting::timeS), 1e-9);
  }

  @Test
  void aBodyThatIsNotSeenTellsNothing() {
    assertNull(told(1, (square, timeS) -> new double[] {0, 0, 0.5}));
    assertNull(ElbowByBody.of(List.of(), PATH, 1, RADIUS_PX));
  }

  private static double[] numbers(ElbowByBody body, ToDoubleFunction<Sighting> of) {
    return body.sightings().stream().mapToDouble(of).toArray();
  }

  private static @Nullable ElbowByBody told(double realPerMediaS, Square square) {
    List<ElbowCandidates> looks = new ArrayList<>();
    for (int i = 1; i < 20; i++) {
      double timeS = i / 4.0;
      double[] x = new double[SQUARES];
      double[] y = new double[SQUARES];
      double[] visibility = new double[SQUARES];
      for (int j = 0; j < SQUARES; j++) {
        double[] off = square.off(j, timeS);
        x[j] = 300 + 10 * timeS + off[0];
        y[j] = 200 + off[1];
        visibility[j] = off[2];
      }
      looks.add(new ElbowCandidates(timeS * realPerMediaS, x, y, visibility));
    }
    return ElbowByBody.of(looks, PATH, realPerMediaS, RADIUS_PX);
  }
}
