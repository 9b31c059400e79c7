package palmturn.lab.draw;

import java.util.ArrayList;
import java.util.List;

/** The still parts of a picture: the room, the trunk and the target arm. */
final class Room {
  /** A mesh and where it lies. */
  record PlacedMesh(Mesh mesh, float[] points) {
    static PlacedMesh atRest(Mesh mesh) {
      float[] points = new float[6 * mesh.size()];
      for (int v = 0; v < mesh.size(); v++) {
        System.arraycopy(mesh.points(), 3 * v, points, 6 * v, 3);
        System.arraycopy(mesh.normals(), 3 * v, points, 6 * v + 3, 3);
      }
      return new PlacedMesh(mesh, points);
    }
  }

  private static final Mesh ARM = Arm.mesh();
  private static final Mesh UPPER_ARM = Body.upperArm();
  private static final Mesh SLEEVE = Body.sleeve();
  private static final List<PlacedMesh> TRUNK =
      List.of(PlacedMesh.atRest(Body.shirt()), PlacedMesh.atRest(Body.trousers()));

  /** The wall is near enough to fill the picture, and clear of the trunk. */
  private static final double WALL_Z = -55;

  /** At the feet of {@link Body#trousers}. */
  private static final double FLOOR_Y = -101;

  private Room() {}

  static Mesh arm() {
    return ARM;
  }

  /** Returns the target arm's pose: flat, palm up. */
  static Pose targetPose() {
    return new Pose(Body.ELBOW, -1.2, 180, 0, 0, TargetPlace.MIDDLE);
  }

  static List<PlacedMesh> trunk() {
    return TRUNK;
  }

  /** Returns an arm from the shoulder to the fingertips, held as a pose says. */
  static List<PlacedMesh> arm(Pose pose, boolean mirror) {
    return List.of(
        new PlacedMesh(ARM, pose.apply(ARM, mirror)),
        new PlacedMesh(UPPER_ARM, hang(UPPER_ARM, pose.elbow(), mirror)),
        new PlacedMesh(SLEEVE, hang(SLEEVE, pose.elbow(), mirror)));
  }

  private static float[] hang(Mesh mesh, Vec elbow, boolean mirror) {
    Vec offset = elbow.minus(Body.SHOULDER);
    double stretch = offset.length() / Body.UPPER_ARM_CM;
    Vec x = offset.unit();
    Vec z = new Vec(0, 0, 1).perpendicularUnit(x);
    Vec y = z.cross(x);
    double sign = mirror ? -1 : 1;
    float[] placed = new float[6 * mesh.size()];
    for (int v = 0; v < mesh.size(); v++) {
      for (int part = 0; part < 2; part++) {
        float[] from = part == 0 ? mesh.points() : mesh.normals();
        double along = from[3 * v] * (part == 0 ? stretch : 1);
        Vec p = x.times(along).plus(y.times(from[3 * v + 1])).plus(z.times(from[3 * v + 2]));
        p = part == 0 ? p.plus(Body.SHOULDER) : p;
        placed[6 * v + 3 * part] = (float) (sign * p.x());
        placed[6 * v + 3 * part + 1] = (float) p.y();
        placed[6 * v + 3 * part + 2] = (float) p.z();
      }
    }
    return placed;
  }

  /** Returns the walls and the furniture. */
  static List<PlacedMesh> furniture() {
    List<Mesh> parts = new ArrayList<>();
    parts.add(
        Mesh.box(new Vec(-160, FLOOR_Y, WALL_Z - 2), new Vec(160, 90, WALL_Z), Material.WALL));
    parts.add(
        Mesh.box(new Vec(-160, FLOOR_Y - 2, WALL_Z), new Vec(160, FLOOR_Y, 40), Material.FLOOR));
    parts.add(
        Mesh.box(
            new Vec(-160, FLOOR_Y, WALL_Z), new Vec(160, FLOOR_Y + 9, WALL_Z + 2), Material.BOARD));
    for (double y : new double[] {-14, -48, -82}) {
      parts.add(
          Mesh.box(new Vec(-96, y, WALL_Z), new Vec(-30, y + 2, WALL_Z + 24), Material.SHELF));
    }
    parts.add(
        Mesh.box(new Vec(-32, FLOOR_Y, WALL_Z), new Vec(-30, 30, WALL_Z + 24), Material.SHELF));
    double x = -94;
    for (int i = 0; i < 17; i++) {
      double high = 17 + 6 * Math.sin(i * 2.4) + 2 * Math.sin(i * 5.1);
      for (double y : new double[] {-12, -46}) {
        double tall = y == -12 ? high : 36 - high;
        parts.add(
            Mesh.box(
                new Vec(x, y, WALL_Z + 2),
                new Vec(x + 3.3, y + tall, WALL_Z + 18),
                Material.BOOKS));
      }
      x += 3.3;
    }
    return parts.stream().map(PlacedMesh::atRest).toList();
  }
}
