package palmturn.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
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
    ObjectNode root = JsonText.object();
    root.put("athlete", score == null ? null : score.athlete());
    ArrayNode blocks = root.putArray("blocks");
    ArrayNode courses = root.putArray("courses");
    if (score != null) {
      score.steps().forEach(step -> blocks.add(write(step)));
      score.courses().forEach(course -> courses.add(write(course)));
    }
    ArrayNode problems = root.putArray("unread");
    unread.forEach(problems::add);
    return JsonText.page(root);
  }

  private static ObjectNode write(ProgressScore.Step step) {
    ObjectNode node = JsonText.object();
    node.put("session", step.session() + 1);
    RecordForm.put(node, step, "date block");
    Drill drill = step.drill();
    node.put("drill", drill == null ? null : drill.code());
    node.put("drillHand", drill == null ? null : drill.hand().code());
    node.put("dose", drill == null || drill.dose().isBlank() ? null : drill.dose());
    return node;
  }

  private static ObjectNode write(ProgressScore.Course course) {
    ObjectNode node = RecordForm.of(course, "hand quality measure");
    node.put("unit", course.measure().unit());
    RecordForm.put(
        node, course, "typicalError change low=changeLow high=changeHigh margin verdict");
    ArrayNode points = node.putArray("points");
    for (ProgressScore.Point point : course.points()) {
      ObjectNode each = points.addObject();
      each.put("block", point.step() + 1);
      each.put("n", point.trials().size());
      RecordForm.put(each, point, "mean noiseLow noiseHigh");
    }
    return node;
  }
}
