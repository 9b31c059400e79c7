package palmturn.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import palmturn.trial.ClipFacts;

/** The printed form of clip facts. */
public final class FactsJson {
  private FactsJson() {}

  /** Returns the text that {@code inspect --json} prints. */
  public static String write(List<ClipFacts> clips) {
    ArrayNode root = JsonText.array();
    clips.forEach(clip -> root.add(write(clip)));
    return JsonText.page(root);
  }

  private static ObjectNode write(ClipFacts facts) {
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

  private static ObjectNode write(ClipFacts.Sound sound) {
    ObjectNode node = JsonText.object();
    node.put("codec", sound.codec());
    node.put("sampleRate", sound.sampleRate());
    node.put("channels", sound.channels());
    Put.figure(node, "firstS", sound.firstS());
    return node;
  }
}
