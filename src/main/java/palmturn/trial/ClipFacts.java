package palmturn.trial;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A clip's metadata, as its file states it, and the obstacles to scoring it.
 *
 * @param clip the file's name
 * @param sha256 of the whole file
 * @param container its kind, as FFmpeg names it
 * @param videoCodec how the picture is coded
 * @param width of the upright picture, pixels
 * @param height of the upright picture, pixels
 * @param rotationDeg clockwise turn from the stored to the upright picture: 0, 90, 180 or 270
 * @param frames shown frames
 * @param firstS time of the first frame, seconds
 * @param durationS from the first frame to the end of the last, seconds
 * @param nominalFps frames a second that the file claims; null if it claims none
 * @param meanFps frames over duration
 * @param variableRate whether the distance between frames varies
 * @param captureFps frames a second at which it was captured, if the file says so
 * @param sound its first sound track, if there is one
 * @param location whether the file says where it was filmed
 * @param warnings obstacles to scoring it, a sentence each
 * @param medianFrameS median distance between frames, seconds
 * @param slowedInPart whether the file marks stretches to be slowed down
 */
public record ClipFacts(
    String clip,
    String sha256,
    String container,
    String videoCodec,
    int width,
    int height,
    int rotationDeg,
    int frames,
    double firstS,
    double durationS,
    @Nullable Double nominalFps,
    double meanFps,
    boolean variableRate,
    @Nullable Double captureFps,
    @Nullable Sound sound,
    boolean location,
    List<String> warnings,
    double medianFrameS,
    boolean slowedInPart) {

  /**
   * A sound track.
   *
   * @param codec how it is coded
   * @param sampleRate samples a second
   * @param channels 1 for mono
   * @param firstS time of its first sample on the picture's time line; null if it holds none
   */
  public record Sound(String codec, int sampleRate, int channels, @Nullable Double firstS) {}

  public ClipFacts {
    warnings = List.copyOf(warnings);
  }
}
