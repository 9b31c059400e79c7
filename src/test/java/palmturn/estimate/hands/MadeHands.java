package palmturn.estimate.hands;

import java.util.ArrayList;
import java.util.List;
import palmturn.estimate.hands.HandFollower.TimedHand;

/**
 * Made-up hands of a right-handed trial seen from the front: the target, a left hand with its palm
 * up, points to the left of the picture, the moving one to the right.
 */
final class MadeHands {
  static final double PALM_PX = 50;

  /** The target's palm in the middle of a picture. */
  static final HandMarks TARGET = hand(300, 300, Math.PI, 0.7);

  private MadeHands() {}

  /**
   * Returns a hand whose palm's middle is at a place.
   *
   * @param direction which way it points, radians, clockwise from to the right
   * @param face as {@link HandMarks#face} tells it, roughly
   */
  static HandMarks hand(double middleX, double middleY, double direction, double face) {
    double[] x = new double[HandMarks.SIZE];
    double[] y = new double[HandMarks.SIZE];
    double wide = 0.4 * face;
    for (int finger = 0; finger < 5; finger++) {
      for (int joint = 0; joint < 4; joint++) {
        double along = finger == 0 ? 0.3 + 0.25 * joint : 1 + 0.35 * joint;
        double across = finger == 0 ? -1.4 * wide : (finger - 2.5) / 1.5 * wide;
        put(x, y, 1 + 4 * finger + joint, along, across, direction);
      }
    }
    double offX = middleX - new HandMarks(x, y, 1).palmX();
    double offY = middleY - new HandMarks(x, y, 1).palmY();
    for (int i = 0; i < HandMarks.SIZE; i++) {
      x[i] += offX;
      y[i] += offY;
    }
    return new HandMarks(x, y, 0.98);
  }

  private static void put(
      double[] x, double[] y, int i, double along, double across, double direction) {
    x[i] = PALM_PX * (along * Math.cos(direction) - across * Math.sin(direction));
    y[i] = PALM_PX * (along * Math.sin(direction) + across * Math.cos(direction));
  }

  /**
   * Returns a moving hand at a place of the target's palm.
   *
   * @param along from its middle to its fingers, palm lengths
   * @param palmShown over 0 with its palm to the camera, under 0 with its back
   */
  static HandMarks moving(double along, double palmShown) {
    double up = 0.3 * TARGET.palmLength();
    return hand(TARGET.palmX() - along * TARGET.palmLength(), TARGET.palmY() - up, 0.2, -palmShown);
  }

  /** Returns the paths of hands of which each contact shows one in three frames. */
  static HandPaths paths(List<PosedContact> touches, List<HandMarks> at) {
    List<TimedHand> moving = new ArrayList<>();
    for (int i = 0; i < at.size(); i++) {
      for (int frame = -1; frame <= 1; frame++) {
        moving.add(new TimedHand(touches.get(i).timeS() + frame / 60.0, at.get(i)));
      }
    }
    return new HandPaths(true, moving, List.of(), TARGET);
  }

  /** Returns contacts five a second, of which motion says that they alternate, +1 first. */
  static List<PosedContact> alternating(int n) {
    List<PosedContact> touches = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      touches.add(new PosedContact(1 + 0.2 * i, i % 2 == 0 ? 1 : -1, 0.9));
    }
    return touches;
  }
}
