package palmturn.trial;

import org.jspecify.annotations.Nullable;

/**
 * A mark at one moment: a slap, or a fault at a moment.
 *
 * @param kind slap, or kind of fault
 * @param timeS time on the picture's clock, media seconds
 * @param side side of the hand that touched
 * @param zone where it touched
 * @param timedBy evidence that {@code timeS} comes from
 * @param resolutionS how finely the time is known, seconds: the distance to the frame before for a
 *     mark by picture, the standard deviation for one by sound
 * @param pictureS time of the first frame that shows contact, if one was marked
 * @param soundS time of the onset on the sound's own clock, if one was matched
 * @param seen false for a mark copied from an estimate on which the reader has not stopped yet
 * @param note the reader's words, often empty
 * @param extra unknown keys
 */
public record Slap(
    Kind kind,
    double timeS,
    Side side,
    Zone zone,
    TimedBy timedBy,
    double resolutionS,
    @Nullable Double pictureS,
    @Nullable Double soundS,
    boolean seen,
    String note,
    Extra extra) {
  /**
   * Standard deviation of an onset's time about the true one, a constant lag apart: 0.45 ms over
   * the slaps of the twelve bundled clips, whose sound went through AAC, and 0.54 ms over 61
   * strikes of a real hand drum; measured anew by the tests. Under noise as strong as soft strikes
   * it was 3 ms.
   */
  public static final double SOUND_SD_S = 0.0005;

  /** A kind of mark. */
  public enum Kind implements Coded {
    /** One contact after a turn. */
    SLAP,
    /** A second contact without a turn between; never part of the rate or of an interval. */
    DOUBLE,
    /** A contact whose turn was cut short. */
    PART_TURN,
    /** A turn that made no contact: an attempt, never a slap of the rate or of an interval. */
    MISSED,
    /** A contact with a fault that has no word of its own; the note says which. */
    OTHER
  }

  /** Returns a mark made on the picture: the first frame that shows contact. */
  public static Slap onFrame(Kind kind, double frameS, double resolutionS, Side side, Zone zone) {
    return new Slap(
        kind, frameS, side, zone, TimedBy.PICTURE, resolutionS, frameS, null, true, "", Extra.NONE);
  }

  /** Returns whether the hand touched the target and had turned since the slap before. */
  public boolean counts() {
    return kind != Kind.DOUBLE && kind != Kind.MISSED;
  }

  /** Returns whether this mark has a fault of its own, leaving spans aside. */
  public boolean faulty() {
    return kind != Kind.SLAP || zone.offCentre();
  }

  /** Returns this mark as another kind. */
  public Slap withKind(Kind newKind) {
    return new Slap(
        newKind, timeS, side, zone, timedBy, resolutionS, pictureS, soundS, seen, note, extra);
  }

  /** Returns this mark with another side. */
  public Slap withSide(Side newSide) {
    return new Slap(
        kind, timeS, newSide, zone, timedBy, resolutionS, pictureS, soundS, seen, note, extra);
  }

  /** Returns this mark with another zone. */
  public Slap withZone(Zone newZone) {
    return new Slap(
        kind, timeS, side, newZone, timedBy, resolutionS, pictureS, soundS, seen, note, extra);
  }

  /** Returns this mark with other words. */
  public Slap withNote(String newNote) {
    return new Slap(
        kind, timeS, side, zone, timedBy, resolutionS, pictureS, soundS, seen, newNote, extra);
  }

  /** Returns this mark as one on which the reader has stopped, or not yet. */
  public Slap withSeen(boolean nowSeen) {
    return new Slap(
        kind, timeS, side, zone, timedBy, resolutionS, pictureS, soundS, nowSeen, note, extra);
  }

  /** Returns this mark moved to a frame, its time by picture from now on. */
  public Slap movedToFrame(double frameS, double newResolutionS) {
    return new Slap(
        kind, frameS, side, zone, TimedBy.PICTURE, newResolutionS, frameS, null, seen, note, extra);
  }
}
