package palmturn.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * One attempt: one moving hand, a block, a repeat and a stretch of a clip.
 *
 * @param id hand, block and repeat
 * @param clip the file it was filmed in
 * @param fromS start of its stretch, media seconds; null for the clip's start
 * @param toS end of its stretch, media seconds; null for the clip's end
 * @param mirrored whether the file shows the athlete mirrored
 * @param captureFps frames a second at which it was captured, if the file or the user says so
 * @param timeScale how its media seconds become real ones
 * @param paceSlapsPerS the click track it was filmed to; null for an ordinary trial. A paced trial
 *     serves the clean ceiling and nothing else
 * @param soundOffsetS how much later the sound is than the picture, seconds, once known
 * @param readings one of each reader at the most
 * @param estimate what the program found by itself, null before it was asked
 * @param settlements one of each two readings at the most, the one worked on last at the end
 * @param places what a person has pointed at in the picture
 * @param extra unknown keys
 */
public record Trial(
    TrialId id,
    ClipRef clip,
    @Nullable Double fromS,
    @Nullable Double toS,
    Mirrored mirrored,
    @Nullable Double captureFps,
    TimeScale timeScale,
    @Nullable Double paceSlapsPerS,
    @Nullable Double soundOffsetS,
    List<Reading> readings,
    @Nullable Estimate estimate,
    List<Settlement> settlements,
    PlacedPoints places,
    Extra extra) {

  public Trial {
    readings = List.copyOf(readings);
    settlements = List.copyOf(settlements);
    if (fromS != null && toS != null && !(toS > fromS)) {
      throw new IllegalArgumentException(
          "a trial must end after it starts: %s s to %s s".formatted(fromS, toS));
    }
  }

  /** A trial of which nothing has been settled, and nothing pointed at in its picture. */
  public Trial(
      TrialId id,
      ClipRef clip,
      @Nullable Double fromS,
      @Nullable Double toS,
      Mirrored mirrored,
      @Nullable Double captureFps,
      TimeScale timeScale,
      @Nullable Double paceSlapsPerS,
      @Nullable Double soundOffsetS,
      List<Reading> readings,
      @Nullable Estimate estimate,
      Extra extra) {
    this(
        id,
        clip,
        fromS,
        toS,
        mirrored,
        captureFps,
        timeScale,
        paceSlapsPerS,
        soundOffsetS,
        readings,
        estimate,
        List.of(),
        PlacedPoints.NONE,
        extra);
  }

  /** Returns the reading of a reader. */
  public Optional<Reading> reading(String reader) {
    return readings.stream().filter(r -> r.reader().equals(reader)).findFirst();
  }

  /** Returns this trial with a reading put in, in place of the same reader's if there was one. */
  public Trial withReading(Reading reading) {
    List<Reading> all = new ArrayList<>(readings);
    all.replaceAll(each -> each.reader().equals(reading.reader()) ? reading : each);
    if (!all.contains(reading)) {
      all.add(reading);
    }
    return with(soundOffsetS, all, estimate, settlements, places);
  }

  /** Returns this trial with other readings. */
  public Trial withReadings(List<Reading> newReadings) {
    return with(soundOffsetS, newReadings, estimate, settlements, places);
  }

  /** Returns this trial with other settlements. */
  public Trial withSettlements(List<Settlement> newSettlements) {
    return with(soundOffsetS, readings, estimate, newSettlements, places);
  }

  /** Returns this trial with another estimate, and the sound's offset that it found. */
  public Trial withEstimate(Estimate newEstimate) {
    return with(newEstimate.soundOffsetS(), readings, newEstimate, settlements, places);
  }

  /** Returns the settling of two readings, whichever is called the first. */
  public Optional<Settlement> settlement(String one, String other) {
    return settlements.stream().filter(each -> each.between(one, other)).findFirst();
  }

  /** Returns this trial with a settlement put last, and without an older one of the same two. */
  public Trial withSettlement(Settlement settlement) {
    List<Settlement> all = new ArrayList<>(settlements);
    all.removeIf(each -> each.between(settlement.first(), settlement.second()));
    all.add(settlement);
    return with(soundOffsetS, readings, estimate, all, places);
  }

  /** Returns this trial with other places pointed at. */
  public Trial withPlaces(PlacedPoints newPlaces) {
    return with(soundOffsetS, readings, estimate, settlements, newPlaces);
  }

  /** Returns this trial filmed in another file, which shows the same film. */
  public Trial withClip(ClipRef newClip) {
    return with(newClip, soundOffsetS, readings, estimate, settlements, places);
  }

  private Trial with(
      @Nullable Double newSoundOffsetS,
      List<Reading> newReadings,
      @Nullable Estimate newEstimate,
      List<Settlement> newSettlements,
      PlacedPoints newPlaces) {
    return with(clip, newSoundOffsetS, newReadings, newEstimate, newSettlements, newPlaces);
  }

  private Trial with(
      ClipRef newClip,
      @Nullable Double newSoundOffsetS,
      List<Reading> newReadings,
      @Nullable Estimate newEstimate,
      List<Settlement> newSettlements,
      PlacedPoints newPlaces) {
    return new Trial(
        id,
        newClip,
        fromS,
        toS,
        mirrored,
        captureFps,
        timeScale,
        paceSlapsPerS,
        newSoundOffsetS,
        newReadings,
        newEstimate,
        newSettlements,
        newPlaces,
        extra);
  }
}
