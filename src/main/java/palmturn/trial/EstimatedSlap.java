package palmturn.trial;

import java.util.EnumSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * One contact that the program found.
 *
 * @param timeS time on the picture's clock, media seconds
 * @param timedBy what {@code timeS} rests on: {@code SOUND} or {@code MOTION}
 * @param resolutionS standard deviation by sound, distance of frames by motion, seconds
 * @param pose +1 or −1, the same for all contacts by one side of the hand, whichever it is; 0 where
 *     that can't be told
 * @param side side of the hand that touched; {@code UNKNOWN} while nothing fixes the polarity
 * @param sideConfidence 0 to 1, of the turns before and after; of palm or back only if the polarity
 *     is fixed
 * @param zone where it touched
 * @param zoneConfidence 0 to 1
 * @param isDouble whether it is a second contact without a turn between
 * @param sources what saw it
 * @param confidence 0 to 1, that there was a contact
 * @param pictureS time by the picture alone, if it saw it
 * @param soundS time of the onset on the sound's own clock, if it was heard
 * @param why where the sources disagree or something is doubtful, in words; often empty
 */
public record EstimatedSlap(
    double timeS,
    TimedBy timedBy,
    double resolutionS,
    int pose,
    Side side,
    double sideConfidence,
    Zone zone,
    double zoneConfidence,
    boolean isDouble,
    Set<Estimate.Source> sources,
    double confidence,
    @Nullable Double pictureS,
    @Nullable Double soundS,
    String why) {
  public EstimatedSlap {
    sources = Set.copyOf(sources);
  }

  /** Returns this contact with another side. */
  public EstimatedSlap withSide(Side newSide) {
    return new EstimatedSlap(
        timeS,
        timedBy,
        resolutionS,
        pose,
        newSide,
        sideConfidence,
        zone,
        zoneConfidence,
        isDouble,
        sources,
        confidence,
        pictureS,
        soundS,
        why);
  }

  /**
   * Returns this contact with what the shape of the hand said of it.
   *
   * @param newPose +1, −1 or 0
   * @param newConfidence of the pose, 0 to 1
   * @param nowDouble whether it is a second contact without a turn between
   * @param reason why the sources disagree, in words; empty where they do not
   */
  public EstimatedSlap withShape(
      int newPose,
      double newConfidence,
      Zone newZone,
      double newZoneConfidence,
      boolean nowDouble,
      String reason) {
    Set<Estimate.Source> more = EnumSet.of(Estimate.Source.SHAPE);
    more.addAll(sources);
    return new EstimatedSlap(
        timeS,
        timedBy,
        resolutionS,
        newPose,
        side,
        newConfidence,
        newZone,
        newZoneConfidence,
        nowDouble,
        more,
        confidence,
        pictureS,
        soundS,
        why.isEmpty() || reason.isEmpty() ? why + reason : why + "; " + reason);
  }

  /** Returns this contact as a mark that its reader has not seen yet. */
  Slap toSlap() {
    return new Slap(
        isDouble ? Slap.Kind.DOUBLE : Slap.Kind.SLAP,
        timeS,
        side,
        zone,
        timedBy,
        resolutionS,
        pictureS,
        soundS,
        false,
        why,
        Extra.NONE);
  }
}
