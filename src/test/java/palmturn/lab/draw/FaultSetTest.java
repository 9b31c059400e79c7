package palmturn.lab.draw;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.function.DoublePredicate;
import org.junit.jupiter.api.Test;
import palmturn.trial.Hand;
import palmturn.trial.Side;
import palmturn.trial.Span;
import palmturn.trial.Zone;

class FaultSetTest {
  private static final List<NamedClip> CLIPS = FaultSet.clips();

  /**
   * Planning takes a while: those with both kinds of picture and with bent wrists of both hands.
   */
  private static final List<Planned> PLANNED =
      CLIPS.stream()
          .limit(6)
          .map(named -> SyntheticClip.plan(named.parameters()))
          .map(clip -> new Planned(clip, clip.truth()))
          .toList();

  /** The height of the target is kept in cells, so that the gap has steps of this size. */
  private static final double STEP_CM = 0.05;

  private record Planned(SyntheticClip clip, Truth truth) {
    Hand hand() {
      return truth.parameters().hand();
    }
  }

  @Test
  void everyFaultIsThereOnBothSidesOfBothHandsAndInBothKindsOfPicture() {
    List<String> planted = new ArrayList<>();
    for (NamedClip named : CLIPS) {
      ClipParameters p = named.parameters();
      for (Contact contact : ContactSchedule.of(p)) {
        planted.add(contact.zone() + " " + contact.side() + " " + p.hand());
        planted.add(contact.zone() + " " + p.filming().isUpright());
      }
      p.stretches().forEach(s -> planted.add(s.kind() + " " + p.hand()));
      p.stretches().forEach(s -> planted.add(s.kind() + " " + p.filming().isUpright()));
    }
    for (Zone zone : List.of(Zone.FINGERS, Zone.WRIST, Zone.EDGE)) {
      for (Hand hand : List.of(Hand.LEFT, Hand.RIGHT)) {
        for (Side side : List.of(Side.PALM, Side.BACK)) {
          long n = planted.stream().filter((zone + " " + side + " " + hand)::equals).count();
          assertTrue(n >= 2, "%s %s %s: %d".formatted(zone, side, hand, n));
        }
      }
      for (boolean upright : new boolean[] {false, true}) {
        long n = planted.stream().filter((zone + " " + upright)::equals).count();
        assertTrue(n >= 6, "%s, upright %s: %d".formatted(zone, upright, n));
      }
    }
    for (ClipParameters.StretchKind kind : ClipParameters.StretchKind.values()) {
      for (String which : List.of("LEFT", "RIGHT", "false", "true")) {
        assertTrue(planted.contains(kind + " " + which), kind + " " + which);
      }
    }
  }

  @Test
  void theMiddleOfTheMovingPalmIsSeenOverThePartOfTheTargetThatTheZoneNames() {
    for (Planned planned : PLANNED) {
      Truth truth = planned.truth();
      boolean left = planned.hand() == Hand.LEFT;
      Camera camera = Camera.of(truth.parameters().filming(), 0);
      float[] target = Room.targetPose().apply(Room.arm(), !left);
      Map<Zone, float[]> parts =
          Map.of(
              Zone.WRIST, middle(camera, target, x -> x > -2.5 && x < 1),
              Zone.CENTRE, middle(camera, target, x -> x > 2.5 && x < 8.5),
              Zone.FINGERS, middle(camera, target, x -> x > 10.5));
      for (Contact contact : truth.contacts()) {
        Vec palm = planned.clip().pose(contact.timeS()).palm();
        float[] seen = new float[3];
        camera.project(left ? -palm.x() : palm.x(), palm.y(), palm.z(), seen, 0);
        Zone nearest =
            parts.keySet().stream()
                .min(Comparator.comparingDouble(zone -> apart(parts.get(zone), seen)))
                .orElseThrow();
        Zone told = contact.zone() == Zone.EDGE ? nearest : contact.zone();
        assertEquals(told, nearest, planned.hand() + " " + contact);
      }
    }
  }

  private static double apart(float[] a, float[] b) {
    return Math.hypot(a[0] - b[0], a[1] - b[1]);
  }

  /** Where the middle of a stretch of the target is seen; cm from its wrist, thumb left out. */
  private static float[] middle(Camera camera, float[] target, DoublePredicate stretch) {
    float[] sum = new float[2];
    float[] seen = new float[3];
    int n = 0;
    float[] rest = Room.arm().points();
    for (int v = 0; v < Room.arm().size(); v++) {
      if (stretch.test(rest[3 * v] - Arm.FOREARM_CM) && rest[3 * v + 2] > -3.9) {
        camera.project(target[6 * v], target[6 * v + 1], target[6 * v + 2], seen, 0);
        sum[0] += seen[0];
        sum[1] += seen[1];
        n++;
      }
    }
    return new float[] {sum[0] / n, sum[1] / n};
  }

  @Test
  void theTruthSaysHowFarTheHandCameDownFromTheMiddle() {
    for (Planned planned : PLANNED) {
      Truth truth = planned.truth();
      for (int i = 0; i < truth.contacts().size(); i++) {
        TargetPlace place = truth.places().get(i);
        double along = place.alongCm();
        double across = place.acrossCm();
        boolean right =
            switch (truth.contacts().get(i).zone()) {
              case FINGERS -> along > 7 && along < 9.5 && Math.abs(across) < 2;
              case WRIST -> along < -5.5 && along > -8 && Math.abs(across) < 2;
              case EDGE -> Math.abs(along) < 1 && across > 3 && across < 6.5;
              default -> Math.abs(along) < 1 && Math.abs(across) < 2;
            };
        assertTrue(right, "%s %s %s".formatted(planned.hand(), truth.contacts().get(i), place));
      }
    }
  }

  @Test
  void theHandsTouchAtEveryContactOfEveryZoneAndNeverPassThroughEachOther() {
    HandGap touch = new HandGap(Room.arm(), Room.targetPose().apply(Room.arm(), true));
    for (Planned planned : PLANNED) {
      SyntheticClip clip = planned.clip();
      for (Contact contact : planned.truth().contacts()) {
        String where = planned.hand() + " " + contact;
        assertEquals(0, clip.gapAtContactCm(contact), STEP_CM, where);
        for (double after = 0; after < 0.2; after += 0.02) {
          double gap = touch.gapCm(clip.pose(contact.timeS() + after));
          assertTrue(gap > -2 * STEP_CM, "%s, %s s after: %s".formatted(where, after, gap));
        }
      }
    }
  }

  @Test
  void aBentWristIsBentAsFarAsWasAskedToThePalmAtPalmSlapsAndToTheBackAtBackSlaps() {
    for (Planned planned : PLANNED) {
      Truth truth = planned.truth();
      double asked =
          truth.parameters().stretches().stream()
              .filter(s -> s.kind() == ClipParameters.StretchKind.BENT_WRIST)
              .mapToDouble(ClipParameters.FaultStretch::amount)
              .findFirst()
              .orElse(0);
      double largest = 0;
      for (Contact contact : truth.contacts()) {
        int at = (int) Math.round(contact.timeS() * truth.seriesHz());
        double toPalm = truth.bentWristDeg()[at];
        double down = contact.side() == Side.PALM ? toPalm : -toPalm;
        boolean inside =
            truth.spans().stream()
                .anyMatch(s -> s.kind() == Span.SpanKind.BENT_WRIST && s.contains(contact.timeS()));
        String where = "%s %s: %s".formatted(planned.hand(), contact, toPalm);
        assertTrue(inside ? down > 0.4 * asked : down > -1 && down < 0.55 * asked + 5, where);
        largest = Math.max(largest, down);
      }
      if (asked > 0) {
        assertEquals(asked, largest, 1, planned.hand().code());
      }
    }
  }

  @Test
  void aTurnFallsShortByWhatWasAskedHalfOfItAtEitherSide() {
    NamedClip named =
        CLIPS.stream()
            .filter(each -> each.name().equals("short-turn-right-wide-11"))
            .findFirst()
            .orElseThrow();
    SyntheticClip clip = SyntheticClip.plan(named.parameters());
    ClipParameters.FaultStretch stretch = named.parameters().stretches().get(0);
    double fullFromS = named.parameters().firstSlapS() + stretch.fromS();
    for (Contact contact : ContactSchedule.of(named.parameters())) {
      double twist = clip.pose(contact.timeS()).twistDeg();
      double shy = contact.side() == Side.PALM ? twist : 180 - twist;
      // A hand never lies quite square: 2.5° is usual.
      double more = contact.timeS() < fullFromS ? 0 : contact.timeS() > fullFromS + 0.3 ? 20 : -1;
      assertTrue(more < 0 || shy >= more && shy < more + 10, contact + " " + twist);
    }
    assertTrue(clip.truth().spans().isEmpty(), "a short turn is no fault over a stretch");
  }
}
