package palmturn.estimate.elbow;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.DoubleFunction;
import java.util.function.DoublePredicate;
import org.junit.jupiter.api.Test;
import palmturn.estimate.image.Similarity;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate.EstimatedSpan;
import palmturn.trial.Estimate.Stretch;
import palmturn.trial.Point;
import palmturn.trial.Span;

class ElbowDriftTest {
  private static final ElbowScale SCALE = new ElbowScale("given", 0.1, 250.0, null);

  @Test
  void placeIsWhereItWasBeforeTheFirstSlap() {
    ElbowPath path = path(t -> new Point(t < 1.5 ? 7 : 27, -3), t -> true);
    assertEquals(107, path.start().x(), 1e-9);
    assertEquals(197, path.start().y(), 1e-9);
    assertEquals(20, path.samples().get(path.samples().size() - 1).rightPx(), 1e-6);
    assertEquals(2.0, path.maxCm(), 1e-6);
    assertEquals(20 / 250.0, path.maxForearms(), 1e-6);
  }

  @Test
  void anElbowThatTurnsIsShownWhereItWasPointedAt() {
    Point joint = new Point(25, -15);
    List<ElbowDrift.ArmPose> samples = new ArrayList<>();
    for (int i = 0; i < 300; i++) {
      double turn = 0.1 * Math.sin(2 * Math.PI * 4 * i / 60.0);
      Similarity about = new Similarity(Math.cos(turn), Math.sin(turn), 0, 0);
      Point carried = about.apply(joint);
      samples.add(
          new ElbowDrift.ArmPose(
              i / 60.0,
              new Similarity(
                  about.a(), about.b(), joint.x() - carried.x() + 4, joint.y() - carried.y())));
    }
    ElbowPath path =
        ElbowDrift.path(
                samples, new ElbowTracker.Start(new Point(100, 200), 1, null, SCALE), 50, List.of())
            .path();
    assertNotNull(path);
    assertEquals(104, path.start().x(), 0.3);
    assertEquals(200, path.start().y(), 0.3);
    assertTrue(Objects.requireNonNull(path.maxCm()) < 0.05, "the joint stays");
  }

  @Test
  void withoutAScaleThereIsNoLengthInCentimetres() {
    ElbowTracker.TrackedElbow followed =
        ElbowDrift.path(
            samples(t -> new Point(10 * t, 0), t -> true),
            new ElbowTracker.Start(new Point(1, 1), 1, null, ElbowScale.NONE),
            50,
            List.of());
    assertNull(followed.path().maxCm());
    assertNull(followed.path().maxForearms());
    assertTrue(ElbowDrift.out(followed.path(), 3).isEmpty());
  }

  @Test
  void lostStretchIsAGap() {
    ElbowPath path = path(t -> new Point(0, 0), t -> t < 2 || t > 2.5);
    assertEquals(1, path.gaps().size());
    Stretch gap = path.gaps().get(0);
    // What was seen in the 0.07 s before it was lost is not trusted either.
    assertEquals(1.93, gap.startS(), 0.02);
    assertEquals(2.5, gap.endS(), 0.02);
    assertTrue(path.samples().stream().noneMatch(s -> s.timeS() > 1.95 && s.timeS() < 2.49));
  }

  @Test
  void whatPushesTheElbowAlongBeforeItCoversItIsNotItsWay() {
    ElbowPath path = path(t -> new Point(t < 1.95 || t > 2.5 ? 0 : 40, 0), t -> t < 2 || t > 2.5);
    assertEquals(0, path.maxCm(), 1e-6);
  }

  @Test
  void lostBeforeTheFirstSlapHasNoPlace() {
    ElbowTracker.TrackedElbow followed =
        ElbowDrift.path(
            samples(t -> new Point(0, 0), t -> t > 1.5),
            new ElbowTracker.Start(new Point(1, 1), 1, null, SCALE),
            50,
            List.of());
    assertNull(followed.path());
    assertTrue(followed.warnings().get(0).contains("lost before the first slap"));
  }

  @Test
  void longWayOutIsASpan() {
    ElbowPath path = path(t -> new Point(t > 2 && t < 3 ? 50 : 0, 0), t -> true);
    List<EstimatedSpan> spans = ElbowDrift.out(path, 3);
    assertEquals(1, spans.size());
    assertEquals(Span.SpanKind.ELBOW_OUT, spans.get(0).kind());
    assertEquals(2, spans.get(0).startS(), 0.05);
    assertEquals(3, spans.get(0).endS(), 0.05);
    assertEquals(1, spans.get(0).confidence(), 0.01);
  }

  @Test
  void shortWayOutIsNone() {
    ElbowPath path = path(t -> new Point(t > 2 && t < 2.2 ? 50 : 0, 0), t -> true);
    assertTrue(ElbowDrift.out(path, 3).isEmpty());
  }

  @Test
  void elbowAroundTheLimitIsOutOnce() {
    ElbowPath path =
        path(t -> new Point(t > 2 && t < 4 ? 31 + 3 * Math.sin(8 * t) : 0, 0), t -> true);
    assertEquals(1, ElbowDrift.out(path, 3).size());
  }

  private static ElbowPath path(DoubleFunction<Point> way, DoublePredicate seen) {
    ElbowPath path =
        ElbowDrift.path(
                samples(way, seen),
                new ElbowTracker.Start(new Point(100, 200), 1, null, SCALE),
                50,
                List.of())
            .path();
    assertTrue(path != null);
    return path;
  }

  private static List<ElbowDrift.ArmPose> samples(DoubleFunction<Point> way, DoublePredicate seen) {
    List<ElbowDrift.ArmPose> samples = new ArrayList<>();
    for (int i = 0; i < 300; i++) {
      double t = i / 60.0;
      samples.add(new ElbowDrift.ArmPose(t, seen.test(t) ? shift(way.apply(t)) : null));
    }
    return samples;
  }

  private static Similarity shift(Point way) {
    return new Similarity(1, 0, way.x(), way.y());
  }
}
