package palmturn.estimate.hands;

import static org.bytedeco.opencv.global.opencv_imgproc.COLOR_BGRA2BGR;
import static org.bytedeco.opencv.global.opencv_imgproc.cvtColor;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.bytedeco.opencv.opencv_core.Mat;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.PartProgress;
import palmturn.clip.Picture;
import palmturn.clip.Progress;
import palmturn.clip.StoppedException;
import palmturn.estimate.image.Footage;
import palmturn.estimate.image.FrameFeed;
import palmturn.estimate.image.Mats;
import palmturn.estimate.image.Similarity;
import palmturn.trial.Point;

/**
 * Decodes a trial twice for the landmark networks: a few frames to find the two hands, then all to
 * follow the moving one.
 */
public final class LandmarkPass {
  /** Longer side of the pictures that are looked at. */
  static final int LONG_SIDE_PX = 960;

  /**
   * Frames in which the two hands are detected: enough to distinguish the still one from the moving
   * one.
   */
  private static final int SURVEYED = 30;

  /** Time before the first and after the last contact that is looked at. */
  private static final double AROUND_S = 0.3;

  /** Share of the progress, by the time it takes. */
  private static final double SURVEY_SHARE = 0.3;

  /** Frames at rest in which the elbows are looked for: each costs twelve runs of a network. */
  private static final int BODY_FRAMES = 3;

  private static final String LOOKING = "looking at the hands";

  /** Time around a contact from which palm, zone and wrist are read, and a frame more. */
  private static final double NEAR_CONTACT_S = 0.055;

  /**
   * The landmarks of a trial.
   *
   * @param paths of the hands
   * @param elbow the moving arm's, before the first slap; null where it was not found
   * @param targetElbow the target arm's
   */
  public record Landmarks(HandPaths paths, @Nullable Point elbow, @Nullable Point targetElbow) {}

  private final ClipFile clip;
  private final Footage footage;
  private final double realPerMediaS;
  private final Progress watch;

  /**
   * @param footage of the stretch, in real seconds
   */
  public LandmarkPass(ClipFile clip, Footage footage, double realPerMediaS, Progress watch) {
    this.clip = clip;
    this.footage = footage;
    this.realPerMediaS = realPerMediaS;
    this.watch = watch;
  }

  /**
   * Returns the hands' paths, null where they were not both found. The elbows are located in frames
   * before the first contact, at which the arms rest.
   *
   * @param contactsS the contacts, real seconds, in order
   * @param everyFrame whether the moving hand is followed through all of the trial, or looked at
   *     only around the contacts
   * @param right whether the moving hand is a right one as the picture shows it
   * @throws ClipException if the clip can't be opened any more
   * @throws StoppedException if {@code watch} stops it
   */
  @Nullable
  public Landmarks follow(Networks networks, double[] contactsS, boolean everyFrame, boolean right)
      throws ClipException {
    double firstS = contactsS[0];
    double lastS = contactsS[contactsS.length - 1];
    int from = clip.frames().indexAt((firstS - AROUND_S) / realPerMediaS);
    int to = clip.frames().indexAt((lastS + AROUND_S) / realPerMediaS) + 1;
    HandSurvey survey = new HandSurvey(networks);
    int every = Math.max(1, (to - from) / SURVEYED);
    each(
        IntStream.iterate(from, i -> i < to, i -> i + every).toArray(),
        new PartProgress(watch, 0, SURVEY_SHARE),
        LOOKING,
        (timeS, picture, stage) -> survey.look(picture, stage));
    HandSurvey.Hands hands = survey.hands();
    if (hands == null) {
      return null;
    }
    HandFollower follower = new HandFollower(networks, hands);
    ElbowLandmarks elbows = new ElbowLandmarks(networks, hands.target());
    double rest = firstS - AROUND_S / 2;
    double[] looked = {0};
    each(
        IntStream.range(from, to).toArray(),
        new PartProgress(watch, SURVEY_SHARE, 1 - SURVEY_SHARE),
        LOOKING,
        (timeS, picture, stage) -> {
          if (timeS < rest && looked[0]++ < BODY_FRAMES) {
            elbows.look(picture, stage);
          }
          if (everyFrame || near(contactsS, timeS)) {
            follower.follow(timeS, picture, stage);
          }
        });
    return new Landmarks(
        new HandPaths(right, follower.moving(), follower.target(), hands.target()),
        point(elbows.place(right)),
        point(elbows.place(!right)));
  }

  /**
   * Returns the moving arm's elbow by the body's landmarks.
   *
   * @param hands the two hands, as they were followed
   * @param frames to look at, in order
   * @throws ClipException if the clip can't be opened any more
   * @throws StoppedException if {@code watch} stops it
   */
  public List<ElbowCandidates> elbow(Networks networks, HandPaths hands, int[] frames)
      throws ClipException {
    ElbowLandmarks elbows = new ElbowLandmarks(networks, hands.rest());
    List<ElbowCandidates> looks = new ArrayList<>();
    each(
        frames,
        watch,
        "looking for the lost elbow",
        (timeS, picture, stage) -> looks.add(elbows.look(timeS, picture, stage, hands.right())));
    return looks;
  }

  private static boolean near(double[] contactsS, double timeS) {
    return Arrays.stream(contactsS).anyMatch(at -> Math.abs(at - timeS) <= NEAR_CONTACT_S);
  }

  private static @Nullable Point point(double @Nullable [] place) {
    return place == null ? null : new Point(place[0], place[1]);
  }

  /** A step applied to each frame. */
  private interface FrameAction {
    void at(double timeS, Mat picture, Registration stage);
  }

  private void each(int[] wanted, Progress within, String doing, FrameAction look)
      throws ClipException {
    if (wanted.length == 0) {
      return;
    }
    int from = wanted[0];
    int to = wanted[wanted.length - 1] + 1;
    try (FrameFeed feed = new FrameFeed(clip, from, to, LONG_SIDE_PX);
        Mat bgr = new Mat()) {
      for (Picture picture = feed.next(); picture != null; picture = feed.next()) {
        if (watch.stopped()) {
          throw new StoppedException();
        }
        within.at((picture.index() - from) / (double) (to - from), doing);
        if (Arrays.binarySearch(wanted, picture.index()) >= 0) {
          try (Mat colour = Mats.bgra(picture)) {
            cvtColor(colour, bgr, COLOR_BGRA2BGR);
          }
          double realS = picture.timeS() * realPerMediaS;
          look.at(realS, bgr, stage(realS, clip.facts().width() / (double) picture.width()));
        }
      }
    }
  }

  private Registration stage(double realS, double fullPerSmall) {
    int at = footage.nearest(realS);
    Similarity back = footage.camera().get(at).scaled(footage.pxPerCell()).inverse();
    return new Registration(back.a() * fullPerSmall, back.b() * fullPerSmall, back.dx(), back.dy());
  }
}
