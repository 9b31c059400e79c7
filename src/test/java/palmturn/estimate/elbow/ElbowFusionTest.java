package palmturn.estimate.elbow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameTable;
import palmturn.trial.ElbowPath;
import palmturn.trial.ElbowPath.GapEstimate;
import palmturn.trial.Estimate.Stretch;
import palmturn.trial.Point;

/** Gaps in a path of a clip of 60 frames a second; 10 pixels to a centimetre. */
class ElbowFusionTest {
  private static final double RADIUS_PX = 42;
  private static final double WALK = 0.58 * RADIUS_PX;
  private static final double PATCH = 0.036 * RADIUS_PX;

  private final FrameTable frames;

  ElbowFusionTest() throws Exception {
    frames = ClipFile.open(Path.of("sample-clips-synthetic/left-baseline-2.mp4")).frames();
  }

  /** The mean and the variance of a Brownian bridge, as in any textbook of stochastic processes. */
  @Test
  void betweenTwoSeenPlacesItIsABrownianBridge() {
    ElbowPath path = path(new Stretch(frames.timeS(60), frames.timeS(120)), 20, -10);
    List<GapEstimate> unseen = ElbowFusion.of(path, frames, RADIUS_PX, 1, null);
    assertEquals(59, unseen.size());
    double fromS = frames.timeS(60);
    double lengthS = frames.timeS(120) - fromS;
    for (GapEstimate each : unseen) {
      double share = (each.timeS() - fromS) / lengthS;
      assertEquals(20 * share, each.rightPx(), 0.2);
      assertEquals(-10 * share, each.downPx(), 0.1);
      double bridge = WALK * WALK * lengthS * share * (1 - share);
      double ends = PATCH * PATCH * (1 + share * share);
      assertEquals(Math.sqrt(bridge + ends), each.sdPx(), 0.02);
    }
  }

  @Test
  void anElbowThatIsNotSeenAgainStaysUntilTooLittleIsKnown() {
    ElbowPath path = path(new Stretch(frames.timeS(60), frames.timeS(300)), 0, 0);
    ElbowPath ended = cut(path, frames.timeS(60));
    List<GapEstimate> unseen = ElbowFusion.of(ended, frames, RADIUS_PX, 1, null);
    for (GapEstimate each : unseen) {
      assertEquals(0, each.rightPx(), 1e-9);
      double walkedS = each.timeS() - frames.timeS(60);
      assertEquals(Math.sqrt(WALK * WALK * walkedS + PATCH * PATCH), each.sdPx(), 1e-6);
    }
    double toldS = unseen.get(unseen.size() - 1).timeS() - frames.timeS(60);
    assertEquals(Math.pow(0.72 / 0.58, 2), toldS, 0.03, "until it is 3 cm");
  }

  @Test
  void anElbowThatWasLostAtTheStartIsToldBackwards() {
    List<Double> timesS = Arrays.stream(frames.timesS()).boxed().toList().subList(60, 200);
    ElbowPath path =
        path(timesS, timeS -> new double[] {7, 3}, new Stretch(frames.timeS(0), frames.timeS(60)));
    List<GapEstimate> unseen = ElbowFusion.of(path, frames, RADIUS_PX, 1, null);
    assertEquals(60, unseen.size());
    assertEquals(7, unseen.get(0).rightPx(), 1e-9);
    assertTrue(unseen.get(0).sdPx() > unseen.get(59).sdPx());
  }

  /** Two independent normal sources of one place are weighted by the inverse of their variance. */
  @Test
  void aLookCountsByTheInverseOfItsVariance() {
    ElbowPath path = path(new Stretch(frames.timeS(60), frames.timeS(180)), 0, 0);
    List<Double> heldS = IntStream.range(0, 40).mapToObj(i -> 100.0 + 10 * i).toList();
    ElbowByBody body =
        new ElbowByBody(List.of(new ElbowByBody.Sighting(frames.timeS(120), 30, 12)), heldS, 20);
    GapEstimate middle =
        ElbowFusion.of(path, frames, RADIUS_PX, 1, body).stream()
            .filter(each -> each.timeS() == frames.timeS(120))
            .findFirst()
            .orElseThrow();
    double lengthS = frames.timeS(180) - frames.timeS(60);
    double walked = WALK * WALK * lengthS / 4;
    double looked = 20 * 20 * (1 + 1.0 / 40);
    double weight = walked / (walked + looked);
    assertEquals(30 * weight, middle.rightPx(), 0.1);
    assertEquals(12 * weight, middle.downPx(), 0.1);
    assertEquals(
        Math.sqrt(walked * looked / (walked + looked) + PATCH * PATCH), middle.sdPx(), 0.1);
  }

  @Test
  void looksSoonAfterEachOtherCountForLittleMoreThanOne() {
    ElbowPath path = path(new Stretch(frames.timeS(60), frames.timeS(300)), 0, 0);
    double once = sdAt(path, 180, looks(180));
    double fourTimes = sdAt(path, 180, looks(178, 179, 180, 181));
    double threeApart = sdAt(path, 180, looks(150, 180, 210));
    assertTrue(fourTimes > 0.9 * once && fourTimes <= once, fourTimes + " " + once);
    assertTrue(threeApart < fourTimes, threeApart + " " + fourTimes);
  }

  @Test
  void slowMotionIsToldAsInRealTime() {
    ElbowPath path = path(new Stretch(frames.timeS(60), frames.timeS(180)), 10, 0);
    double lengthS = frames.timeS(180) - frames.timeS(60);
    double bridge = WALK * WALK * 0.25 * lengthS / 4;
    GapEstimate middle = ElbowFusion.of(path, frames, RADIUS_PX, 0.25, null).get(59);
    assertEquals(Math.sqrt(bridge + PATCH * PATCH), middle.sdPx(), 0.1);
  }

  @Test
  void nothingIsToldWithoutGaps() {
    ElbowPath whole = path(new Stretch(0.5, 0.6), 0, 0);
    List<Double> all = Arrays.stream(frames.timesS()).boxed().toList();
    assertFalse(ElbowFusion.of(whole, frames, RADIUS_PX, 1, null).isEmpty());
    assertEquals(
        List.of(), ElbowFusion.of(path(all, timeS -> new double[2]), frames, RADIUS_PX, 1, null));
  }

  private ElbowByBody looks(int... at) {
    return new ElbowByBody(
        Arrays.stream(at)
            .mapToObj(frame -> new ElbowByBody.Sighting(frames.timeS(frame), 0, 0))
            .toList(),
        List.of(100.0, 200.0, 300.0, 400.0),
        20);
  }

  private double sdAt(ElbowPath path, int frame, @Nullable ElbowByBody body) {
    return ElbowFusion.of(path, frames, RADIUS_PX, 1, body).stream()
        .filter(each -> each.timeS() == frames.timeS(frame))
        .mapToDouble(GapEstimate::sdPx)
        .findFirst()
        .orElseThrow();
  }

  /** Returns a path that is at its place before a gap and elsewhere after it. */
  private ElbowPath path(Stretch gap, double rightPx, double downPx) {
    List<Double> timesS =
        Arrays.stream(frames.timesS())
            .filter(timeS -> timeS <= gap.startS() || timeS >= gap.endS())
            .boxed()
            .toList();
    return path(
        timesS,
        timeS -> timeS <= gap.startS() ? new double[2] : new double[] {rightPx, downPx},
        gap);
  }

  private static ElbowPath cut(ElbowPath path, double toS) {
    List<Double> timesS =
        path.samples().stream().map(ElbowPath.Sample::timeS).filter(timeS -> timeS <= toS).toList();
    return path(timesS, timeS -> new double[2], path.gaps().toArray(Stretch[]::new));
  }

  /** Where the elbow is at a moment. */
  interface Way {
    double[] at(double timeS);
  }

  static ElbowPath path(List<Double> timesS, Way way, Stretch... gaps) {
    List<ElbowPath.Sample> samples = new ArrayList<>();
    for (double timeS : timesS) {
      double[] at = way.at(timeS);
      samples.add(ElbowPath.Sample.of(timeS, at[0], at[1]));
    }
    return new ElbowPath(
        null,
        null,
        new ElbowPath.PictureScale("given", 0.1, null),
        new Point(300, 200),
        samples,
        List.of(gaps),
        List.of());
  }
}
