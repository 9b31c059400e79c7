package palmturn.trial;

import java.util.EnumSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * One contact that the program found.
 *
 * @param timing when it was
 * @param estimatedSide side of the hand that touched
 * @param estimatedZone part of the target that it touched
 * @param isDouble whether it is a second contact without a turn between
 * @param sources what saw it
 * @param confidence 0 to 1, that there was a contact
 * @param doubt where the sources disagree or something is uncertain, in words; often empty
 */
public record EstimatedSlap(
    Timing timing,
    EstimatedSide estimatedSide,
    EstimatedZone estimatedZone,
    boolean isDouble,
    Set<Estimate.Source> sources,
    double confidence,
    String doubt) {

  /**
   * The time of a contact, by the source that times it best and by each one.
   *
   * @param timeS time on the picture's clock, media seconds
   * @param timedBy what {@code timeS} rests on: {@code SOUND} or {@code MOTION}
   * @param resolutionS standard deviation by sound, distance of frames by motion, seconds
   * @param pictureS time by the picture alone, if it was seen
   * @param soundS time of the onset on the sound's own clock, if it was heard
   */
  public record Timing(
      double timeS,
      TimedBy timedBy,
      double resolutionS,
      @Nullable Double pictureS,
      @Nullable Double soundS) {
    /** Returns the time of a contact that was only seen. */
    public static Timing seen(double timeS, double frameS) {
      return new Timing(timeS, TimedBy.MOTION, frameS, timeS, null);
    }
  }

  /**
   * The side of the hand that touched.
   *
   * @param pose +1 or −1, the same for all contacts by one side of the hand, whichever it is; 0
   *     where that can't be told
   * @param side of the hand; {@code UNKNOWN} while nothing fixes the polarity
   * @param confidence 0 to 1, of the turns before and after; of palm or back only if the polarity
   *     is fixed
   */
  public record EstimatedSide(int pose, Side side, double confidence) {
    /** Nothing known. */
    public static final EstimatedSide UNKNOWN = new EstimatedSide(0, Side.UNKNOWN, 0);

    /** Returns a pose whose side is not known yet. */
    public static EstimatedSide of(int pose, double confidence) {
      return new EstimatedSide(pose, Side.UNKNOWN, confidence);
    }
  }

  /**
   * The part of the target that was touched.
   *
   * @param zone of the target
   * @param confidence 0 to 1
   */
  public record EstimatedZone(Zone zone, double confidence) {
    /** Nothing known. */
    public static final EstimatedZone UNKNOWN = new EstimatedZone(Zone.UNKNOWN, 0);
  }

  public EstimatedSlap {
    sources = Set.copyOf(sources);
  }

  /** Returns the time on the picture's clock, media seconds. */
  public double timeS() {
    return timing.timeS();
  }

  /** Returns what the time rests on. */
  public TimedBy timedBy() {
    return timing.timedBy();
  }

  /** Returns the standard deviation by sound, the distance of frames by motion, seconds. */
  public double resolutionS() {
    return timing.resolutionS();
  }

  /** Returns the time by the picture alone, null if it was not seen. */
  public @Nullable Double pictureS() {
    return timing.pictureS();
  }

  /** Returns the time on the sound's own clock, null if it was not heard. */
  public @Nullable Double soundS() {
    return timing.soundS();
  }

  /** Returns +1 or −1 for the two sides of the hand, whichever they are; 0 where unknown. */
  public int pose() {
    return estimatedSide.pose();
  }

  /** Returns the side of the hand. */
  public Side side() {
    return estimatedSide.side();
  }

  /** Returns the confidence of the side, 0 to 1. */
  public double sideConfidence() {
    return estimatedSide.confidence();
  }

  /** Returns the part of the target. */
  public Zone zone() {
    return estimatedZone.zone();
  }

  /** Returns the confidence of the zone, 0 to 1. */
  public double zoneConfidence() {
    return estimatedZone.confidence();
  }

  /** Returns this contact with another side. */
  public EstimatedSlap withSide(Side newSide) {
    EstimatedSide changed =
        new EstimatedSide(estimatedSide.pose(), newSide, estimatedSide.confidence());
    return new EstimatedSlap(timing, changed, estimatedZone, isDouble, sources, confidence, doubt);
  }

  /**
   * Returns this contact with what the shape of the hand adds.
   *
   * @param pose +1, −1 or 0
   * @param poseConfidence 0 to 1
   * @param newZone part of the target
   * @param nowDouble whether it is a second contact without a turn between
   * @param newDoubt where the sources disagree, in words; empty where they do not
   */
  public EstimatedSlap withShape(
      int pose, double poseConfidence, EstimatedZone newZone, boolean nowDouble, String newDoubt) {
    Set<Estimate.Source> more = EnumSet.of(Estimate.Source.SHAPE);
    more.addAll(sources);
    String separator = doubt.isEmpty() || newDoubt.isEmpty() ? "" : "; ";
    return new EstimatedSlap(
        timing,
        new EstimatedSide(pose, estimatedSide.side(), poseConfidence),
        newZone,
        nowDouble,
        more,
        confidence,
        doubt + separator + newDoubt);
  }

  /** Returns this contact as a mark that its reader has not seen yet. */
  Slap toSlap() {
    return new Slap(
        isDouble ? Slap.Kind.DOUBLE : Slap.Kind.SLAP,
        timeS(),
        side(),
        zone(),
        timedBy(),
        resolutionS(),
        pictureS(),
        soundS(),
        false,
        doubt,
        Extra.NONE);
  }
}
