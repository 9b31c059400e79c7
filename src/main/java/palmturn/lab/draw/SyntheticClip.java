package palmturn.lab.draw;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleConsumer;
import java.util.stream.IntStream;
import palmturn.film.ClipWriter;
import palmturn.trial.Extra;
import palmturn.trial.Hand;
import palmturn.trial.Slap;
import palmturn.trial.Span;

/** A clip planned from its parameters: its truth is there at once, drawing it takes a while. */
public final class SyntheticClip {
  /** Twice the usual frame rate, so that interpolation loses nothing. */
  private static final double SERIES_HZ = 120;

  /** A phone's exposure in a lit room. */
  private static final double EXPOSURE_S = 1 / 125.0;

  /** Share of a wanted stretch's largest amount from which it is a fault. */
  private static final double FAULT_SHARE = 0.5;

  /** About a phone's quality, in files small enough to bundle. */
  private static final double BITS_PER_PIXEL = 7.0 / 144;

  /** With fewer frames a second each gets more bits, as phones do. */
  private static final double LEAST_FRAMES_PAID = 60;

  private final ClipParameters wanted;
  private final List<Contact> contacts;
  private final HandGap touch;
  private final Motion motion;
  private final double[] framesS;
  private final int margin;
  private final Camera camera;

  private SyntheticClip(ClipParameters wanted) {
    this.wanted = wanted;
    contacts = ContactSchedule.of(wanted);
    touch = new HandGap(Room.arm(), Room.targetPose().apply(Room.arm(), true));
    motion = new Motion(wanted, contacts, touch);
    margin = 2 + (int) Math.ceil(3 * wanted.filming().shakePx());
    framesS = framesS(wanted);
    camera = Camera.of(wanted.filming(), margin);
  }

  /** Plans a clip. */
  public static SyntheticClip plan(ClipParameters wanted) {
    return new SyntheticClip(wanted);
  }

  /** Returns what is certain about the clip. */
  public Truth truth() {
    List<Span> spans = spans();
    boolean person = wanted.content() != ClipContent.NOBODY;
    int samples = person ? (int) Math.floor(wanted.lengthS() * SERIES_HZ) + 1 : 0;
    double[] rotation = new double[samples];
    double[] bent = new double[samples];
    double[] gap = new double[samples];
    double[][] displacement = new double[samples][];
    double[] inSpace = new double[samples];
    Vec home = restPlace();
    double[] place = pixel(asFilmed(home));
    double cmPerPixel = camera.cmPerPixel(asFilmed(home));
    for (int i = 0; i < samples; i++) {
      Pose pose = motion.at(i / SERIES_HZ);
      rotation[i] = pose.twistDeg();
      bent[i] = pose.flexionDeg();
      gap[i] = motion.liftCm(i / SERIES_HZ);
      double[] at = pixel(asFilmed(pose.elbow()));
      displacement[i] =
          new double[] {cmPerPixel * (at[0] - place[0]), cmPerPixel * (place[1] - at[1])};
      inSpace[i] = pose.elbow().minus(home).length();
    }
    double[] right = IntStream.range(0, samples).mapToDouble(i -> displacement[i][0]).toArray();
    double[] up = IntStream.range(0, samples).mapToDouble(i -> displacement[i][1]).toArray();
    double[] length =
        IntStream.range(0, samples).mapToDouble(i -> Math.hypot(right[i], up[i])).toArray();
    return new Truth(
        wanted,
        contacts,
        contacts.stream().map(this::place).toList(),
        spans,
        framesS.clone(),
        EXPOSURE_S,
        RoomSound.delayS(),
        RoomSound.HZ,
        cmPerPixel,
        pixel(asFilmed(motion.at(0).elbow())),
        pixel(Body.TARGET),
        SERIES_HZ,
        rotation,
        bent,
        gap,
        right,
        up,
        length,
        inSpace,
        RealisedMeasures.of(contacts, spans));
  }

  /** The first picture is always kept. */
  private static double[] framesS(ClipParameters wanted) {
    Filming filming = wanted.filming();
    Random random = new Random(wanted.seed() * 53 + 29);
    return IntStream.range(0, (int) Math.round(wanted.lengthS() * filming.framesPerS()))
        .filter(i -> i == 0 || random.nextDouble() >= filming.dropShare())
        .mapToDouble(i -> (double) i / filming.framesPerS())
        .toArray();
  }

  /** The elbow's place: the median over the 0.3 s before the first slap. */
  private Vec restPlace() {
    double first = wanted.firstSlapS();
    List<Vec> places = new ArrayList<>();
    for (int i = 0; i <= 60; i++) {
      places.add(motion.at(first - 0.3 + i * 0.005).elbow());
    }
    return new Vec(
        places.stream().mapToDouble(Vec::x).sorted().toArray()[30],
        places.stream().mapToDouble(Vec::y).sorted().toArray()[30],
        places.stream().mapToDouble(Vec::z).sorted().toArray()[30]);
  }

  private Vec asFilmed(Vec asRightArm) {
    return wanted.hand() == Hand.RIGHT
        ? asRightArm
        : new Vec(-asRightArm.x(), asRightArm.y(), asRightArm.z());
  }

  private double[] pixel(Vec at) {
    float[] out = new float[3];
    camera.project(at.x(), at.y(), at.z(), out, 0);
    return new double[] {out[0] - margin, out[1] - margin};
  }

  private List<Span> spans() {
    List<Span> spans = new ArrayList<>();
    for (ClipParameters.FaultStretch stretch : wanted.stretches()) {
      if (stretch.kind() == ClipParameters.StretchKind.SHORT_TURN) {
        continue;
      }
      double ramp = Math.min(0.3, (stretch.toS() - stretch.fromS()) / 3);
      // The smooth ramp passes half its height half-way.
      double lead = wanted.firstSlapS() + ramp * FAULT_SHARE;
      double tail = wanted.firstSlapS() - ramp * FAULT_SHARE;
      Span.SpanKind kind =
          stretch.kind() == ClipParameters.StretchKind.BENT_WRIST
              ? Span.SpanKind.BENT_WRIST
              : Span.SpanKind.ELBOW_OUT;
      spans.add(new Span(kind, stretch.fromS() + lead, stretch.toS() + tail, "", Extra.NONE));
    }
    spans.sort(Comparator.comparingDouble(Span::startS));
    return List.copyOf(spans);
  }

  private TargetPlace place(Contact contact) {
    return TargetPlace.under(motion.at(contact.timeS()).palm());
  }

  /** Returns how the moving arm is held at a moment, as a right arm. */
  Pose pose(double timeS) {
    return motion.at(timeS);
  }

  /** Returns how far the drawn hands are apart at a contact, cm; 0 where they touch. */
  double gapAtContactCm(Contact contact) {
    return contact.kind() == Slap.Kind.MISSED
        ? Double.NaN
        : touch.gapCm(motion.at(contact.timeS()));
  }

  /** Returns the sound of the clip, one channel. */
  float[] sound() {
    return RoomSound.of(wanted, contacts);
  }

  /**
   * Draws the clip and writes it as an MP4 file.
   *
   * @param progress is told the share that is done, 0 to 1
   * @throws IOException if the file can't be written, in one line
   */
  public void write(Path mp4, DoubleConsumer progress) throws IOException {
    int frames = framesS.length;
    int workers = Math.max(1, Math.min(4, Runtime.getRuntime().availableProcessors()));
    Scene scene = new Scene(camera, wanted, motion);
    List<Scene.Painter> painters =
        IntStream.range(0, workers).mapToObj(i -> scene.new Painter()).toList();
    Sensor lens = new Sensor(wanted, margin, camera.width());
    int soundBits = 56_000;
    Filming filming = wanted.filming();
    double framesPaidPerS = Math.max(LEAST_FRAMES_PAID, filming.framesPerS());
    int videoBits =
        (int) Math.round(BITS_PER_PIXEL * filming.width() * filming.height() * framesPaidPerS);
    ClipWriter.Settings settings =
        new ClipWriter.Settings(
            filming.width(),
            filming.height(),
            filming.framesPerS(),
            videoBits,
            4 * filming.framesPerS(),
            wanted.sound().hasTrack() ? RoomSound.HZ : 0,
            soundBits);
    try (ClipWriter writer = ClipWriter.create(mp4, settings)) {
      if (wanted.sound().hasTrack()) {
        writer.sound(sound());
      }
      for (int from = 0; from < frames; from += workers) {
        int first = from;
        int[][] pictures = new int[Math.min(workers, frames - from)][];
        IntStream.range(0, pictures.length)
            .parallel()
            .forEach(
                i -> {
                  double at = framesS[first + i];
                  float[] light = painters.get(i).draw(at, EXPOSURE_S);
                  pictures[i] = lens.pixels(light, at, first + i);
                });
        for (int i = 0; i < pictures.length; i++) {
          writer.picture(framesS[first + i], pictures[i]);
        }
        progress.accept((double) (first + pictures.length) / frames);
      }
      writer.finish();
    }
  }
}
