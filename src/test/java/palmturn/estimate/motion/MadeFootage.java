package palmturn.estimate.motion;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import palmturn.estimate.image.Footage;
import palmturn.estimate.image.Similarity;

/**
 * Footage of a made hand: a disc that hops on a target and turns between contacts, drawn straight
 * as motion and pictures, so that every step after the flow can be tested without a clip.
 */
final class MadeFootage {
  static final int WIDTH = 80;
  static final int HEIGHT = 60;
  private static final double LEAD_S = 0.8;
  private static final double TAIL_S = 0.7;
  private static final double HOP = 6;
  private static final double HALF_S = 0.12;
  private static final double TURN = 5;
  private static final double RADIUS = 9;
  private static final double X = 44;
  private static final double Y = 32;

  private double[] contactsS = {};
  private int[] poses = {};
  private double[] framesS = {};
  private double noise;
  private boolean turning = true;
  private boolean lifting = true;
  private boolean mirrored;
  private boolean waving;
  private double leavesS = Double.POSITIVE_INFINITY;

  /** Evenly spaced frames until a while after the last contact. */
  static MadeFootage of(double[] contactsS, int[] poses, double fps) {
    MadeFootage made = new MadeFootage();
    made.contactsS = Arrays.stream(contactsS).map(t -> t + LEAD_S).toArray();
    made.poses = poses.clone();
    double end = made.contactsS[contactsS.length - 1] + TAIL_S;
    made.framesS = new double[(int) (end * fps) + 1];
    Arrays.setAll(made.framesS, k -> k / fps);
    return made;
  }

  /** Returns contacts at even intervals, with alternating poses. */
  static MadeFootage even(int n, double slapHz, double fps) {
    double[] contacts = new double[n];
    Arrays.setAll(contacts, j -> j / slapHz);
    return of(contacts, alternating(n), fps);
  }

  static int[] alternating(int n) {
    int[] poses = new int[n];
    Arrays.setAll(poses, j -> j % 2 == 0 ? 1 : -1);
    return poses;
  }

  MadeFootage withNoise(double cells) {
    noise = cells;
    return this;
  }

  MadeFootage withoutTurning() {
    turning = false;
    return this;
  }

  MadeFootage withoutLifting() {
    lifting = false;
    return this;
  }

  /** Lets somebody else wave in the corner, more vividly than the hand slaps. */
  MadeFootage withSomebodyWaving() {
    waving = true;
    return this;
  }

  /** Lets the hand leave the picture. */
  MadeFootage leavingAt(double timeS) {
    leavesS = timeS;
    return this;
  }

  MadeFootage mirrored() {
    mirrored = true;
    return this;
  }

  /** Leaves frames out at random, keeping the first. */
  MadeFootage dropping(double share, long seed) {
    Random random = new Random(seed);
    framesS = Arrays.stream(framesS).filter(t -> t == 0 || random.nextDouble() >= share).toArray();
    return this;
  }

  double[] contactsS() {
    return contactsS;
  }

  int[] poses() {
    return poses;
  }

  Footage footage() {
    List<float[]> right = new ArrayList<>();
    List<float[]> down = new ArrayList<>();
    List<byte[]> pictures = new ArrayList<>();
    List<Similarity> camera = new ArrayList<>();
    Random random = new Random(7);
    for (int k = 0; k < framesS.length; k++) {
      float[] u = new float[WIDTH * HEIGHT];
      float[] v = new float[WIDTH * HEIGHT];
      double before = framesS[Math.max(0, k - 1)];
      double sink = lifting ? height(before) - height(framesS[k]) : 0;
      double turn = turning ? turn(framesS[k]) - turn(before) : 0;
      for (int i = 0; i < u.length; i++) {
        double x = i % WIDTH - X;
        double y = i / WIDTH - Y;
        if (k > 0 && framesS[k] < leavesS && x * x + y * y < RADIUS * RADIUS) {
          u[i] = (float) (TURN * turn * y / RADIUS + noise * random.nextGaussian());
          v[i] = (float) (sink + 0.3 * TURN * turn * x / RADIUS + noise * random.nextGaussian());
        }
      }
      if (waving) {
        wave(u, framesS[k], before);
      }
      right.add(mirrored ? flipped(u, -1) : u);
      down.add(mirrored ? flipped(v, 1) : v);
      pictures.add(picture(turning ? turn(framesS[k]) : 0));
      camera.add(Similarity.IDENTITY);
    }
    return new Footage(WIDTH, HEIGHT, 8, framesS, right, down, pictures, camera, 0);
  }

  private static void wave(float[] u, double now, double before) {
    double way = 14 * (Math.sin(2 * Math.PI * 2.3 * now) - Math.sin(2 * Math.PI * 2.3 * before));
    for (int y = 4; y < 24; y++) {
      for (int x = 4; x < 26; x++) {
        u[y * WIDTH + x] = (float) way;
      }
    }
  }

  private static float[] flipped(float[] field, int sign) {
    float[] out = new float[field.length];
    for (int i = 0; i < out.length; i++) {
      out[i] = sign * field[i / WIDTH * WIDTH + WIDTH - 1 - i % WIDTH];
    }
    return out;
  }

  private byte[] picture(double turn) {
    byte[] picture = new byte[3 * WIDTH * HEIGHT];
    for (int i = 0; i < WIDTH * HEIGHT; i++) {
      int column = mirrored ? WIDTH - 1 - i % WIDTH : i % WIDTH;
      double x = column - X;
      double y = i / WIDTH - Y;
      double light = x * x + y * y < RADIUS * RADIUS ? 140 + turn * (40 + 20 * Math.sin(x)) : 60;
      Arrays.fill(picture, 3 * i, 3 * i + 3, (byte) (int) light);
    }
    return picture;
  }

  /**
   * Height over the target: hops from contact to contact, with a rest in the air between far ones.
   */
  private double height(double t) {
    int last = contactsS.length - 1;
    if (t <= contactsS[0]) {
      return half(contactsS[0] - t);
    }
    if (t >= contactsS[last]) {
      return half(t - contactsS[last]);
    }
    int j = before(t);
    double gap = contactsS[j + 1] - contactsS[j];
    if (gap > 4 * HALF_S) {
      return Math.min(half(t - contactsS[j]), half(contactsS[j + 1] - t));
    }
    double share = (t - contactsS[j]) / gap;
    return 4 * HOP * Math.min(1, gap / 0.15) * share * (1 - share);
  }

  /** Half a hop, from the target up, and then kept there. */
  private static double half(double sinceContactS) {
    double share = Math.min(1, sinceContactS / HALF_S);
    return HOP * share * (2 - share);
  }

  private double turn(double t) {
    int last = contactsS.length - 1;
    if (t <= contactsS[0] || t >= contactsS[last]) {
      return poses[t <= contactsS[0] ? 0 : last];
    }
    int j = before(t);
    double share = (t - contactsS[j]) / (contactsS[j + 1] - contactsS[j]);
    double smooth = share * share * (3 - 2 * share);
    return poses[j] + smooth * (poses[j + 1] - poses[j]);
  }

  private int before(double t) {
    int j = 0;
    while (contactsS[j + 1] <= t) {
      j++;
    }
    return j;
  }
}
