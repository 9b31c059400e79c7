package palmturn.lab.draw;

import java.util.ArrayList;
import java.util.List;
import palmturn.trial.Hand;

/**
 * The picture before the lens and the sensor, in linear light. What stands still is lit once; each
 * picture adds the moving arm, its shadow and its blur.
 */
final class Scene {
  private static final Material[] MATERIALS = Material.values();
  private static final Vec KEY = new Vec(-0.42, 0.8, 0.55).unit();
  private static final Vec TOP = new Vec(0.18, 0.95, 0.22).unit();

  /** A warm key lamp, a cool top lamp and dim surroundings, in linear red, green and blue. */
  private static final float[] KEY_LIGHT = {1.28f, 1.2f, 1.08f};

  private static final float[] TOP_LIGHT = {0.42f, 0.46f, 0.52f};
  private static final float[] SKY = {0.36f, 0.38f, 0.41f};
  private static final float[] GROUND = {0.24f, 0.21f, 0.18f};

  /** Moments within a picture's exposure; each also looks through another part of the pixel. */
  static final int EXPOSURE_SAMPLES = 3;

  /** Pixels by which each exposure sample is shifted, for smooth edges. */
  private static final double[] SHIFT_X = {-0.33, 0.0, 0.33};

  private static final double[] SHIFT_Y = {0.0, -0.33, 0.33};

  final Camera camera;
  private final boolean mirror;
  private final boolean person;
  private final Motion motion;
  private final Still[] stillLayers = new Still[EXPOSURE_SAMPLES];
  private final Still mean;
  private final ShadowMap stillKey = new ShadowMap(KEY, 2);
  private final ShadowMap stillTop = new ShadowMap(TOP, 3);

  /** The still part seen through one part of the pixel: depth, place and light by its source. */
  private record Still(float[] depth, float[] place, float[] base, float[] key, float[] top) {}

  Scene(Camera camera, ClipParameters wanted, Motion motion) {
    this.camera = camera;
    this.motion = motion;
    mirror = wanted.hand() == Hand.LEFT;
    person = wanted.content() != ClipContent.NOBODY;
    List<Room.PlacedMesh> still = new ArrayList<>();
    if (person) {
      still.addAll(Room.trunk());
      still.addAll(Room.arm(Room.targetPose(), !mirror));
    }
    for (Room.PlacedMesh placed : still) {
      stillKey.add(placed.mesh(), placed.points());
      stillTop.add(placed.mesh(), placed.points());
    }
    still.addAll(0, Room.furniture());
    for (int k = 0; k < EXPOSURE_SAMPLES; k++) {
      Raster raster = new Raster(camera.width(), camera.height());
      for (Room.PlacedMesh placed : still) {
        raster.draw(placed.mesh(), placed.points(), camera, SHIFT_X[k], SHIFT_Y[k]);
      }
      stillLayers[k] = light(raster, k);
    }
    mean = mean();
  }

  private Still mean() {
    int size = 3 * camera.width() * camera.height();
    Still out =
        new Still(
            stillLayers[0].depth,
            stillLayers[0].place,
            new float[size],
            new float[size],
            new float[size]);
    for (Still each : stillLayers) {
      for (int i = 0; i < size; i++) {
        out.base[i] += each.base[i] / EXPOSURE_SAMPLES;
        out.key[i] += each.key[i] / EXPOSURE_SAMPLES;
        out.top[i] += each.top[i] / EXPOSURE_SAMPLES;
      }
    }
    return out;
  }

  private Still light(Raster raster, int k) {
    int size = camera.width() * camera.height();
    Still out =
        new Still(
            raster.depth,
            new float[3 * size],
            new float[3 * size],
            new float[3 * size],
            new float[3 * size]);
    float[] sources = new float[9];
    for (int at = 0; at < size; at++) {
      if (raster.material[at] == 0) {
        continue;
      }
      Vec p = place(raster, at, k);
      out.place[3 * at] = (float) p.x();
      out.place[3 * at + 1] = (float) p.y();
      out.place[3 * at + 2] = (float) p.z();
      lightBySource(raster, at, p, sources);
      float key = stillKey.lightShare(p.x(), p.y(), p.z());
      float top = stillTop.lightShare(p.x(), p.y(), p.z());
      for (int i = 0; i < 3; i++) {
        out.base[3 * at + i] = sources[i];
        out.key[3 * at + i] = sources[3 + i] * key;
        out.top[3 * at + i] = sources[6 + i] * top;
      }
    }
    return out;
  }

  private Vec place(Raster raster, int at, int k) {
    int x = at % camera.width();
    int y = at / camera.width();
    return camera.point(x + 0.5 + SHIFT_X[k], y + 0.5 + SHIFT_Y[k], raster.depth[at]);
  }

  /** Puts the light off a surface into {@code out}: of the room, of the key, of the top lamp. */
  private static void lightBySource(Raster raster, int at, Vec place, float[] out) {
    Material material = MATERIALS[raster.material[at]];
    int from = at * Raster.ATTRIBUTES;
    float[] colour = new float[3];
    Paint.colour(material, raster.attributes, from, colour);
    double nx = raster.attributes[from + 4];
    double ny = raster.attributes[from + 5];
    double nz = raster.attributes[from + 6];
    double length = Math.sqrt(nx * nx + ny * ny + nz * nz);
    Vec normal = new Vec(nx / length, ny / length, nz / length);
    boolean skin = material == Material.SKIN || material == Material.UPPER_ARM;
    // Light that has gone under the skin comes out softer and redder.
    double wrap = skin ? 0.22 : 0.05;
    double key = Math.max(0, (normal.dot(KEY) + wrap) / (1 + wrap));
    double top = Math.max(0, (normal.dot(TOP) + wrap) / (1 + wrap));
    double red = skin ? 0.18 * key * (1 - key) : 0;
    double shine = 0;
    if (skin) {
      Vec half = KEY.plus(Camera.position().minus(place).unit()).unit();
      shine = 0.055 * Math.pow(Math.max(0, normal.dot(half)), 22);
    }
    double sky = 0.5 + 0.5 * normal.y();
    for (int i = 0; i < 3; i++) {
      out[i] = (float) (colour[i] * (GROUND[i] + sky * (SKY[i] - GROUND[i])));
      out[3 + i] = (float) ((colour[i] * (key + (i == 0 ? red : 0)) + shine) * KEY_LIGHT[i]);
      out[6 + i] = (float) (colour[i] * top * TOP_LIGHT[i]);
    }
  }

  private List<Room.PlacedMesh> movingArm(double timeS) {
    return person ? Room.arm(motion.at(timeS), mirror) : List.of();
  }

  /** Buffers of one picture at a time; each thread that draws has its own. */
  final class Painter {
    private final Raster raster = new Raster(camera.width(), camera.height());
    private final ShadowMap key = new ShadowMap(KEY, 2);
    private final ShadowMap top = new ShadowMap(TOP, 3);
    private final float[] shadeKey = new float[camera.width() * camera.height()];
    private final float[] shadeTop = new float[camera.width() * camera.height()];
    private final float[] picture = new float[3 * camera.width() * camera.height()];

    /**
     * Draws a picture in linear light, three numbers a pixel.
     *
     * @param timeS the middle of the exposure
     * @param exposureS how long it lasts
     */
    float[] draw(double timeS, double exposureS) {
      castShadow(timeS);
      fillStill();
      float[] sources = new float[9];
      for (int k = 0; k < EXPOSURE_SAMPLES; k++) {
        double moment = timeS + exposureS * ((k + 0.5) / EXPOSURE_SAMPLES - 0.5);
        raster.clear();
        for (Room.PlacedMesh placed : movingArm(moment)) {
          raster.draw(placed.mesh(), placed.points(), camera, SHIFT_X[k], SHIFT_Y[k]);
        }
        overlayArm(k, sources);
      }
      return picture;
    }

    /** The moving arm's shadow on what stands still, worked out for each block of four pixels. */
    private void castShadow(double timeS) {
      key.clear();
      top.clear();
      for (Room.PlacedMesh placed : movingArm(timeS)) {
        key.add(placed.mesh(), placed.points());
        top.add(placed.mesh(), placed.points());
      }
      float[] place = mean.place();
      int width = camera.width();
      for (int y = 0; y + 1 < camera.height(); y += 2) {
        for (int x = 0; x + 1 < width; x += 2) {
          int at = y * width + x;
          float k = key.lightShare(place[3 * at], place[3 * at + 1], place[3 * at + 2]);
          float t = top.lightShare(place[3 * at], place[3 * at + 1], place[3 * at + 2]);
          for (int to : new int[] {at, at + 1, at + width, at + width + 1}) {
            shadeKey[to] = k;
            shadeTop[to] = t;
          }
        }
      }
    }

    private void fillStill() {
      for (int at = 0; at < shadeKey.length; at++) {
        for (int i = 3 * at; i < 3 * at + 3; i++) {
          picture[i] = stillLight(mean, at, i);
        }
      }
    }

    private float stillLight(Still behind, int at, int i) {
      float over = shadeTop[at];
      return behind.base()[i] * (0.6f + 0.4f * over)
          + behind.key()[i] * shadeKey[at]
          + behind.top()[i] * over;
    }

    /** Puts the moving arm over what stands still, for one moment's share of the light. */
    private void overlayArm(int k, float[] sources) {
      Still behind = stillLayers[k];
      int end = (raster.toRow() + 1) * camera.width();
      for (int at = raster.fromRow() * camera.width(); at < end; at++) {
        if (raster.depth[at] >= behind.depth()[at]) {
          continue;
        }
        Vec p = place(raster, at, k);
        lightBySource(raster, at, p, sources);
        float lit = key.lightShare(p.x(), p.y(), p.z()) * stillKey.lightShare(p.x(), p.y(), p.z());
        float over = top.lightShare(p.x(), p.y(), p.z()) * stillTop.lightShare(p.x(), p.y(), p.z());
        for (int i = 0; i < 3; i++) {
          float light =
              sources[i] * (0.6f + 0.4f * over) + sources[3 + i] * lit + sources[6 + i] * over;
          picture[3 * at + i] += (light - stillLight(behind, at, 3 * at + i)) / EXPOSURE_SAMPLES;
        }
      }
    }
  }
}
