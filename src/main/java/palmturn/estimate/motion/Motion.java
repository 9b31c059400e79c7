package palmturn.estimate.motion;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import palmturn.estimate.image.Footage;
import palmturn.numbers.Robust;
import palmturn.trial.Estimate;

/**
 * The evidence of the motion in a stretch: contacts, their times and the turns between them.
 *
 * @param contacts the reading of the approach that was chosen
 * @param stops the moment of each contact, bounces included
 * @param poses the hand's motion between them
 * @param turns the directions in which it turned between them
 */
public record Motion(Contacts contacts, Stops stops, Poses poses, Turns turns) {
  /** Fewer cells are noise, or a hand too small to see it turn. */
  private static final int SMALLEST_BLOB = 6;

  /** A longer rest parts two trials: a pause within one is shorter. */
  private static final double BETWEEN_S = 2;

  /**
   * Reads a stretch.
   *
   * @param region where the moving hand is, in grid cells; null looks everywhere
   * @return the bouts of slapping in it, in order; none if nothing oscillates
   */
  public static List<Motion> find(Footage footage, Estimate.@Nullable Region region) {
    if (footage.frames() < 2 * Contacts.FEWEST) {
      return List.of();
    }
    float[] liveliness = MovingRegions.motionEnergy(footage);
    List<Blob> blobs =
        region == null
            ? MovingRegions.blobs(liveliness, footage.width())
            : List.of(MovingRegions.within(liveliness, footage.width(), region));
    return blobs.stream()
        .filter(blob -> blob.area() >= SMALLEST_BLOB)
        .map(blob -> read(new BlobMotion(footage, blob)))
        .filter(Objects::nonNull)
        .max(Comparator.comparingDouble(Contacts::score))
        .map(Motion::splitAtRests)
        .orElse(List.of());
  }

  /** Splits contacts at long rests, each of which separates two bouts. */
  private static List<Motion> splitAtRests(Contacts contacts) {
    double[] times = contacts.poses().timesS();
    List<Motion> attempts = new ArrayList<>();
    int first = 0;
    for (int j = 1; j <= times.length; j++) {
      if (j == times.length || times[j] - times[j - 1] > BETWEEN_S) {
        if (j - first >= Contacts.FEWEST) {
          attempts.add(of(contacts.part(first, j)));
        }
        first = j;
      }
    }
    return attempts;
  }

  private static @Nullable Contacts read(BlobMotion motion) {
    Contacts plain = Contacts.of(motion, Approach.alongMainAxis(motion));
    if (plain != null && !plain.doubtful()) {
      return plain;
    }
    Contacts paired = PairedChannels.of(motion, plain);
    return paired == null ? plain : paired;
  }

  private static Motion of(Contacts contacts) {
    Stops stops = Stops.of(contacts);
    Poses poses = Poses.at(contacts.motion(), stops.pictureS());
    return new Motion(contacts, stops, poses, Turns.of(contacts.motion().blob(), poses));
  }

  public int size() {
    return stops.pictureS().length;
  }

  /** Returns the speed between first and last contact in widths of the hand a second. */
  public double widthsPerS() {
    BlobMotion motion = contacts.motion();
    double[] times = stops.pictureS();
    double[] size =
        IntStream.range(0, motion.samples())
            .filter(i -> motion.timeS(i) >= times[0] && motion.timeS(i) <= times[times.length - 1])
            .mapToDouble(i -> Math.abs(contacts.approach().velocity()[i]))
            .toArray();
    return size.length == 0 ? 0 : Robust.quantile(size, 0.9) / Math.sqrt(motion.blob().area());
  }

  /** Returns the box about the moving hand in pixels of the upright full-size picture. */
  public Estimate.Region region() {
    int[] box = contacts.motion().blob().box();
    double px = contacts.motion().footage().pxPerCell();
    return new Estimate.Region(
        box[0] * px, box[1] * px, (box[2] - box[0]) * px, (box[3] - box[1]) * px);
  }
}
