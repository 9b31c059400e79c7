package palmturn.lab.draw;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Zone;

/**
 * The moving arm's path: its pose at every moment. It touches the target exactly at the contacts,
 * and without contacts never.
 */
final class Motion {
  /** A resting hand hovers clearly clear of the target. */
  private static final double REST_CM = 7.5;

  /** A hand comes to rest in about this time after the last slap. */
  private static final double SETTLE_S = 0.4;

  /** The least height in the air of a hand that turns, cm. */
  private static final double AIR_CM = 2.5;

  /** The elbow's share in the hand's displacement over the target, across the forearm. */
  private static final double FOLLOWS_BESIDE = 0.15;

  /** The same along the forearm, which carries the elbow with it more. */
  private static final double FOLLOWS_ALONG = 0.53;

  private static final Vec FOREARM = Body.TARGET.minus(Body.ELBOW).unit();

  private final ClipParameters wanted;
  private final List<Stop> stops = new ArrayList<>();
  private final double[] sway = new double[6];

  /** The pose of a flat contact; {@code edgeCm} is the height of one with the edge. */
  private final Pose flat;

  private final double edgeCm;

  /** The pose at a contact, how long the hand stays there and how high it goes after it. */
  private record Stop(double timeS, Pose pose, double stayS, double liftCm, double gapCm) {}

  Motion(ClipParameters wanted, List<Contact> contacts, HandGap touch) {
    this.wanted = wanted;
    Random random = new Random(wanted.seed() * 31 + 7);
    Random astray = new Random(wanted.seed() * 37 + 11);
    for (int i = 0; i < sway.length; i++) {
      sway[i] = random.nextDouble() * 2 * Math.PI;
    }
    flat = touch.poseTouching(new Pose(Body.ELBOW, 0, 0, 0, 0, TargetPlace.MIDDLE));
    edgeCm = touch.poseTouching(new Pose(Body.ELBOW, 0, 90, 0, 0, TargetPlace.MIDDLE)).heightCm();
    for (int i = 0; i < contacts.size(); i++) {
      Contact contact = contacts.get(i);
      double next =
          i + 1 < contacts.size() ? contacts.get(i + 1).timeS() - contact.timeS() : SETTLE_S;
      boolean bounce = i + 1 < contacts.size() && contacts.get(i + 1).kind() == Slap.Kind.DOUBLE;
      double lift = bounce ? 1.7 : 6.6 * Math.sqrt(Math.min(1.3, next / 0.2));
      lift *= 1 + 0.07 * random.nextGaussian();
      double stay = bounce ? 0.012 : Math.min(0.026, 0.14 * next);
      double twist = twistDeg(contact, random);
      Pose pose = touch.poseTouching(poseAt(contact, twist, random, astray));
      double gap = contact.kind() == Slap.Kind.MISSED ? 2.5 : 0;
      stops.add(new Stop(contact.timeS(), pose, stay, lift, gap));
    }
  }

  private double twistDeg(Contact contact, Random random) {
    double square = contact.side() == Side.PALM ? 0 : 180;
    double inward = contact.side() == Side.PALM ? 1 : -1;
    double shy = Math.abs(2.5 * random.nextGaussian());
    shy += stretchAmount(ClipParameters.StretchKind.SHORT_TURN, contact.timeS()) / 2;
    if (contact.kind() == Slap.Kind.PART_TURN) {
      shy += 48;
    } else if (contact.zone() == Zone.EDGE) {
      shy += 30;
    }
    return square + inward * shy;
  }

  private Pose poseAt(Contact contact, double twistDeg, Random random, Random astray) {
    double slide = 0.45 * random.nextGaussian();
    TargetPlace place = place(contact.zone(), astray);
    Vec elbow = elbowAt(contact.timeS(), slide, place);
    double bend = stretchAmount(ClipParameters.StretchKind.BENT_WRIST, contact.timeS());
    return new Pose(elbow, 0, twistDeg, bend, slide, place);
  }

  /**
   * The middle of the target's fingers, its wrist, or just past its palm's edge under the little
   * finger, so that half of the moving palm hangs over; each a little off.
   */
  private static TargetPlace place(Zone zone, Random astray) {
    return switch (zone) {
      case FINGERS -> new TargetPlace(8.25 + spread(0.75, astray), 0);
      case WRIST -> new TargetPlace(-6.75 + spread(0.75, astray), 0);
      case EDGE -> new TargetPlace(0, 4.75 + spread(0.25, astray));
      default -> TargetPlace.MIDDLE;
    };
  }

  private static double spread(double mostCm, Random random) {
    return mostCm * Math.max(-1, Math.min(1, 0.6 * random.nextGaussian()));
  }

  /** Returns how the arm is held at a moment. */
  Pose at(double timeS) {
    return moment(timeS).pose();
  }

  /** Returns how high the hand is over where it would touch, cm. */
  double liftCm(double timeS) {
    return moment(timeS).liftCm();
  }

  private record LiftedPose(Pose pose, double liftCm) {}

  private LiftedPose moment(double timeS) {
    double drift = 0.12 * Math.sin(2.1 * timeS + sway[0]) + 0.08 * Math.sin(5.3 * timeS + sway[1]);
    if (stops.isEmpty()) {
      return inTheAir(timeS, drift);
    }
    Stop first = stops.get(0);
    Stop last = stops.get(stops.size() - 1);
    if (timeS < first.timeS()) {
      double q = Math.max(0, 1 - (first.timeS() - timeS) / 0.21);
      double high = (REST_CM + drift) * (1 - q * q) + 0.9 * Math.sin(Math.PI * q);
      return interpolate(first, first, 0, high, timeS);
    }
    int i = 0;
    while (i + 1 < stops.size() && stops.get(i + 1).timeS() <= timeS) {
      i++;
    }
    Stop from = stops.get(i);
    if (from == last) {
      double q = Solid.smoothstep(from.stayS(), SETTLE_S, timeS - from.timeS());
      return interpolate(from, from, 0, from.gapCm() * (1 - q) + (REST_CM + drift) * q, timeS);
    }
    Stop to = stops.get(i + 1);
    double span = to.timeS() - from.timeS() - from.stayS();
    double q = Math.max(0, (timeS - from.timeS() - from.stayS()) / span);
    // Leaves gently and lands at speed; the turn is done before the hand comes down.
    double high = from.liftCm() * Math.pow(q, 1.5) * (1 - q) / 0.186;
    high += from.gapCm() * (1 - q) + to.gapCm() * q;
    return interpolate(from, to, q, high, timeS);
  }

  private LiftedPose inTheAir(double timeS, double drift) {
    boolean turning = wanted.content() == ClipContent.TURNING;
    double turned = 0;
    if (turning) {
      double since = Math.max(0, Math.min(timeS, wanted.slappingEndS()) - wanted.firstSlapS());
      turned = 90 - 90 * Math.cos(Math.PI * wanted.tempo().rateSlapsPerS() * since);
    }
    double high = drift + (turning ? edgeCm - flat.heightCm() + AIR_CM : REST_CM);
    Pose pose =
        new Pose(
            elbowAt(timeS, 0, TargetPlace.MIDDLE),
            flat.heightCm() + high,
            turned,
            0,
            0,
            TargetPlace.MIDDLE);
    return new LiftedPose(pose, high);
  }

  private LiftedPose interpolate(Stop from, Stop to, double q, double high, double timeS) {
    double turn = Solid.smoothstep(0.1, 0.9, q);
    double ease = Solid.smoothstep(0, 1, q);
    Pose a = from.pose();
    Pose b = to.pose();
    double slide = a.slideCm() + (b.slideCm() - a.slideCm()) * ease;
    TargetPlace place = a.place().interpolate(b.place(), ease);
    Pose pose =
        new Pose(
            elbowAt(timeS, slide, place),
            a.heightCm() + (b.heightCm() - a.heightCm()) * ease + high,
            a.twistDeg() + (b.twistDeg() - a.twistDeg()) * turn,
            a.bendDeg() + (b.bendDeg() - a.bendDeg()) * ease,
            slide,
            place);
    return new LiftedPose(pose, high);
  }

  /** The elbow wanders a little, goes out where wanted, and follows the hand in part. */
  private Vec elbowAt(double timeS, double slideCm, TargetPlace place) {
    double out = stretchAmount(ClipParameters.StretchKind.ELBOW_OUT, timeS);
    double sideways =
        0.18 * Math.sin(1.7 * timeS + sway[2]) + 0.12 * Math.sin(4.1 * timeS + sway[3]);
    double up = 0.15 * Math.sin(2.3 * timeS + sway[4]) + 0.08 * Math.sin(6.2 * timeS + sway[5]);
    Vec moved = new Vec(sideways - 0.18 * slideCm, up + 0.02 * slideCm, -0.5 * slideCm);
    Vec offset = place.offset();
    Vec along = FOREARM.times(offset.dot(FOREARM));
    Vec followed = offset.minus(along).times(FOLLOWS_BESIDE).plus(along.times(FOLLOWS_ALONG));
    return Body.elbowOut(out).plus(moved).plus(followed);
  }

  private double stretchAmount(ClipParameters.StretchKind kind, double timeS) {
    double amount = 0;
    for (ClipParameters.FaultStretch stretch : wanted.stretches()) {
      double from = wanted.firstSlapS() + stretch.fromS();
      double to = wanted.firstSlapS() + stretch.toS();
      if (stretch.kind() == kind && timeS > from && timeS < to) {
        double ramp = Math.min(0.3, (to - from) / 3);
        double share =
            Math.min(
                Solid.smoothstep(0, ramp, timeS - from), Solid.smoothstep(0, ramp, to - timeS));
        amount += stretch.amount() * share;
      }
    }
    return amount;
  }
}
