package palmturn.json;

import java.util.List;
import palmturn.trial.ClipFacts;

/** The printed form of clip facts. */
public final class FactsJson {
  private FactsJson() {}

  /** Returns the text that {@code inspect --json} prints. */
  public static String write(List<ClipFacts> clips) {
    return JsonText.page(
        RecordForm.all(
            clips,
            "clip sha256 container videoCodec width height rotationDeg frames firstS durationS"
                + " nominalFps meanFps variableRate captureFps sound location warnings"));
  }
}
