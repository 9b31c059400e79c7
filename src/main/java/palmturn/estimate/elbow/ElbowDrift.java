package palmturn.estimate.elbow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.estimate.image.Similarity;
import palmturn.numbers.Stats;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate.EstimatedSpan;
import palmturn.trial.Estimate.Stretch;
import palmturn.trial.Point;
import palmturn.trial.Span;

/**
 * Turns the arm's tracked poses into the elbow's path, its drift and the stretches over the limit.
 */
public final class ElbowDrift {
  /**
   * Widths of the low-pass, a median and then a Gaussian: the error of unfiltered paths was three
   * times as large in drawn clips.
   */
  private static final double MEDIAN_S = 0.05;

  private static final double SIGMA_S = 0.025;

  /** Time before the first slap over which the rest position is the median. */
  static final double PLACE_S = 0.3;

  /** Longest gap that is smoothed over. */
  private static final double BREAK_S = 0.1;

  /** Shortest stretch over the limit that is reported. */
  private static final double OUT_S = 0.25;

  /** Hysteresis: a stretch ends below this share of the limit. */
  private static final double BACK_SHARE = 0.85;

  /** Error of the path in the picture plane, cm: 95 % of the frames. */
  private static final double ERROR_CM = 0.3;

  /** Share of tracked frames below which the elbow counts as mostly lost. */
  private static final double SEEN_SHARE = 0.5;

  /**
   * Time before a loss that is not trusted: an occluder comes from the side and drags the patch
   * along.
   */
  private static final double DOUBTED_S = 0.07;

  /**
   * One frame.
   *
   * @param timeS its time, seconds
   * @param arm transform of the skin around the elbow, less the camera's motion, with the elbow's
   *     given place as origin, pixels of the upright full-size picture; null where it is lost
   */
  record ArmPose(double timeS, @Nullable Similarity arm) {}

  private ElbowDrift() {}

  /**
   * Returns the smoothed path from the elbow's place, or null with the reason as a warning.
   *
   * @param all the frames, in order
   * @param start its place and scale in the reference frame
   * @param farthestPx largest distance of the joint from that place, full-size pixels
   * @param earlier warnings so far
   */
  static ElbowTracker.TrackedElbow path(
      List<ArmPose> all, ElbowTracker.Start start, double farthestPx, List<String> earlier) {
    double firstSlapS = start.firstSlapS();
    List<String> warnings = new ArrayList<>(earlier);
    List<ArmPose> samples = trusted(all);
    List<ArmPose> seen = samples.stream().filter(s -> s.arm() != null).toList();
    if (seen.isEmpty()) {
      warnings.add("The elbow could not be followed: it was lost in every frame.");
      return new ElbowTracker.TrackedElbow(null, warnings);
    }
    double[] timesS = seen.stream().mapToDouble(ArmPose::timeS).toArray();
    List<Similarity> arm = seen.stream().map(ElbowDrift::arm).toList();
    Point joint = Hinge.of(timesS, arm, farthestPx);
    double[] right = smooth(timesS, arm.stream().mapToDouble(s -> s.apply(joint).x()).toArray());
    double[] down = smooth(timesS, arm.stream().mapToDouble(s -> s.apply(joint).y()).toArray());
    Double placeX = place(timesS, right, firstSlapS);
    Double placeY = place(timesS, down, firstSlapS);
    if (placeX == null || placeY == null) {
      warnings.add(
          "The elbow could not be followed: it was lost before the first slap, so that its place is"
              + " not known.");
      return new ElbowTracker.TrackedElbow(null, warnings);
    }
    if (seen.size() < SEEN_SHARE * samples.size()) {
      warnings.add("The elbow was lost in most frames.");
    }
    List<ElbowPath.Sample> displacements = new ArrayList<>();
    double maxPx = 0;
    for (int i = 0; i < timesS.length; i++) {
      ElbowPath.Sample sample = ElbowPath.Sample.of(timesS[i], right[i] - placeX, down[i] - placeY);
      displacements.add(sample);
      if (timesS[i] >= firstSlapS - PLACE_S) {
        maxPx = Math.max(maxPx, sample.distancePx());
      }
    }
    Double cm = start.scale().cmPerPixel();
    Double forearm = start.scale().forearmPx();
    return new ElbowTracker.TrackedElbow(
        new ElbowPath(
            cm == null ? null : maxPx * cm,
            forearm == null ? null : maxPx / forearm,
            new ElbowPath.PictureScale(start.scale().source(), cm, forearm),
            // The displacement is the joint's, the place the one pointed at: skin can seem to turn
            // about a joint centimetres outside the arm.
            new Point(
                start.elbow().x() + placeX - joint.x(), start.elbow().y() + placeY - joint.y()),
            displacements,
            gaps(samples),
            List.of()),
        warnings);
  }

  /** Returns the frames with the poses just before a loss discarded. */
  private static List<ArmPose> trusted(List<ArmPose> all) {
    List<ArmPose> trusted = new ArrayList<>();
    double lostS = Double.POSITIVE_INFINITY;
    for (int i = all.size() - 1; i >= 0; i--) {
      ArmPose sample = all.get(i);
      lostS = sample.arm() == null ? sample.timeS() : lostS;
      boolean doubted = lostS - sample.timeS() < DOUBTED_S;
      trusted.add(0, doubted ? new ArmPose(sample.timeS(), null) : sample);
    }
    return trusted;
  }

  private static Similarity arm(ArmPose sample) {
    Similarity arm = sample.arm();
    return arm == null ? Similarity.IDENTITY : arm;
  }

  private static double[] smooth(double[] timesS, double[] values) {
    double[] smooth = new double[values.length];
    int from = 0;
    for (int i = 1; i <= timesS.length; i++) {
      if (i == timesS.length || timesS[i] - timesS[i - 1] > BREAK_S) {
        double[] times = Arrays.copyOfRange(timesS, from, i);
        double[] part = Arrays.copyOfRange(values, from, i);
        double[] calm = TimedSmoothing.median(times, part, MEDIAN_S);
        System.arraycopy(
            TimedSmoothing.gaussian(times, calm, SIGMA_S), 0, smooth, from, part.length);
        from = i;
      }
    }
    return smooth;
  }

  /** Returns the median before the first slap, else over the first part from there. */
  private static @Nullable Double place(double[] timesS, double[] values, double firstSlapS) {
    Double before = medianWithin(timesS, values, firstSlapS - PLACE_S, firstSlapS);
    return before != null ? before : medianWithin(timesS, values, firstSlapS, firstSlapS + PLACE_S);
  }

  private static @Nullable Double medianWithin(
      double[] timesS, double[] values, double fromS, double toS) {
    double[] within = new double[values.length];
    int n = 0;
    for (int i = 0; i < values.length; i++) {
      if (timesS[i] >= fromS && timesS[i] <= toS) {
        within[n++] = values[i];
      }
    }
    return Stats.median(Arrays.copyOf(within, n));
  }

  /** Returns each lost stretch, from the last frame that saw the elbow to the next that does. */
  private static List<Stretch> gaps(List<ArmPose> samples) {
    List<Stretch> gaps = new ArrayList<>();
    double seenS = samples.get(0).timeS();
    boolean lost = false;
    for (ArmPose sample : samples) {
      if (sample.arm() == null) {
        lost = true;
      } else {
        if (lost) {
          gaps.add(new Stretch(seenS, sample.timeS()));
        }
        lost = false;
        seenS = sample.timeS();
      }
    }
    if (lost) {
      gaps.add(new Stretch(seenS, samples.get(samples.size() - 1).timeS()));
    }
    return gaps;
  }

  /**
   * Returns the stretches in which the elbow is farther from its place than a limit for at least a
   * quarter of a second; empty without a scale.
   *
   * @param limitCm the limit, cm
   */
  public static List<EstimatedSpan> out(ElbowPath path, double limitCm) {
    Double cm = path.cmPerPixel();
    if (cm == null) {
      return List.of();
    }
    List<EstimatedSpan> spans = new ArrayList<>();
    int start = -1;
    int end = -1;
    double mostCm = 0;
    List<ElbowPath.Sample> samples = path.samples();
    int n = samples.size();
    for (int i = 0; i <= n; i++) {
      double distanceCm = i < n ? samples.get(i).distancePx() * cm : 0;
      boolean broken =
          i > 0 && i < n && samples.get(i).timeS() - samples.get(i - 1).timeS() > BREAK_S;
      if (start >= 0 && (broken || distanceCm < BACK_SHARE * limitCm)) {
        double lengthS = samples.get(end).timeS() - samples.get(start).timeS();
        if (lengthS >= OUT_S) {
          spans.add(
              new EstimatedSpan(
                  Span.SpanKind.ELBOW_OUT,
                  samples.get(start).timeS(),
                  samples.get(end).timeS(),
                  confidence(mostCm - limitCm)));
        }
        start = -1;
        mostCm = 0;
      }
      if (distanceCm > limitCm) {
        start = start < 0 ? i : start;
        end = i;
        mostCm = Math.max(mostCm, distanceCm);
      }
    }
    return spans;
  }

  /** Returns 0.5 at the limit itself and 1 where the excess is twice the path's error. */
  private static double confidence(double overCm) {
    return Math.min(1, 0.5 + overCm / (4 * ERROR_CM));
  }
}
