package palmturn.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What a clip's file says of itself, as a script reads it. */
public final class FactsJson {
  private FactsJson() {}

  /**
   * The facts of one clip; null where the file does not say.
   *
   * @param clip the file as it was named
   * @param sha256 of the whole file
   * @param container its kind
   * @param videoCodec how the picture is coded
   * @param width of the upright picture, pixels
   * @param height of the upright picture, pixels
   * @param rotationDeg clockwise turn from the stored to the upright picture
   * @param frames shown frames
   * @param firstS time of the first frame
   * @param durationS from the first frame's start to the last one's end
   * @param nominalFps frames a second that the file claims
   * @param meanFps frames over duration
   * @param variableRate whether the distance between frames varies
   * @param captureFps frames a second at which it was captured
   * @param sound its sound, if it has a usable track
   * @param location whether the file says where it was filmed
   * @param warnings what stands in the way of scoring it
   */
  public record Facts(
      String clip,
      String sha256,
      String container,
      String videoCodec,
      int width,
      int height,
      int rotationDeg,
      int frames,
      @Nullable Double firstS,
      @Nullable Double durationS,
      @Nullable Double nominalFps,
      @Nullable Double meanFps,
      boolean variableRate,
      @Nullable Double captureFps,
      @Nullable Sound sound,
      boolean location,
      List<String> warnings) {}

  /**
   * The sound of a clip.
   *
   * @param codec how it is coded
   * @param sampleRate samples a second
   * @param channels 1 for mono
   * @param firstS time of the first sample on the picture's time line
   */
  public record Sound(String codec, int sampleRate, int channels, @Nullable Double firstS) {}

  /** Returns the text that {@code inspect --json} prints. */
  public static String write(List<Facts> clips) {
    ArrayNode root = JsonText.array();
    clips.forEach(clip -> root.add(write(clip)));
    return JsonText.page(root);
  }

  private static ObjectNode write(Facts facts) {
    ObjectNode node = JsonText.object();
    node.put("clip", facts.clip());
    node.put("sha256", facts.sha256());
    node.put("container", facts.container());
    node.put("videoCodec", facts.videoCodec());
    node.put("width", facts.width());
    node.put("height", facts.height());
    node.put("rotationDeg", facts.rotationDeg());
    node.put("frames", facts.frames());
    Put.figure(node, "firstS", facts.firstS());
    Put.figure(node, "durationS", facts.durationS());
    Put.figure(node, "nominalFps", facts.nominalFps());
    Put.figure(node, "meanFps", facts.meanFps());
    node.put("variableRate", facts.variableRate());
    Put.figure(node, "captureFps", facts.captureFps());
    node.set("sound", facts.sound() == null ? null : write(facts.sound()));
    node.put("location", facts.location());
    ArrayNode warnings = node.putArray("warnings");
    facts.warnings().forEach(warnings::add);
    return node;
  }

  private static ObjectNode write(Sound sound) {
    ObjectNode node = JsonText.object();
    node.put("codec", sound.codec());
    node.put("sampleRate", sound.sampleRate());
    node.put("channels", sound.channels());
    Put.figure(node, "firstS", sound.firstS());
    return node;
  }
}
