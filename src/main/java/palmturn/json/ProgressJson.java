package palmturn.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.measure.ProgressScore;
import palmturn.trial.Drill;

/** One athlete over sessions as a script reads it: every key is there, null where it can't be. */
public final class ProgressJson {
  private ProgressJson() {}

  /**
   * Returns the text that {@code progress --json} prints.
   *
   * @param unread a line for each session that has no figures
   */
  public static String write(@Nullable ProgressScore score, List<String> unread) {
    ObjectNode root = RecordForm.put(JsonText.object(), score, "athlete");
    root.set(
        "blocks", RecordForm.all(score == null ? List.of() : score.steps(), ProgressJson::write));
    root.set(
        "courses",
        RecordForm.all(score == null ? List.of() : score.courses(), ProgressJson::write));
    return JsonText.page(root.set("unread", JsonText.tree(unread)));
  }

  private static ObjectNode write(ProgressScore.Step step) {
    ObjectNode node = JsonText.object().put("session", step.session() + 1);
    RecordForm.put(node, step, "date block drill=drill.code drillHand=drill.hand");
    Drill drill = step.drill();
    return node.put("dose", drill == null || drill.dose().isBlank() ? null : drill.dose());
  }

  private static ObjectNode write(ProgressScore.Course course) {
    return RecordForm.of(
            course,
            "hand quality measure unit=measure.unit typicalError change low=changeLow"
                + " high=changeHigh margin verdict")
        .set("points", RecordForm.all(course.points(), ProgressJson::write));
  }

  private static ObjectNode write(ProgressScore.Point point) {
    ObjectNode node = JsonText.object().put("block", point.step() + 1);
    return RecordForm.put(node.put("n", point.trials().size()), point, "mean noiseLow noiseHigh");
  }
}
