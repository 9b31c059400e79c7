package palmturn.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;
import palmturn.advise.Plan;
import palmturn.advise.StartingPace;
import palmturn.advise.Training;

/** The training advice as JSON for scripts. */
final class TrainJson {
  private TrainJson() {}

  /** Puts the advice and the plan under their keys. */
  static void put(ObjectNode root, Training training) {
    root.set(
        "train", RecordForm.all(training.advice(), "rule hand quality sure why action drills"));
    ObjectNode plan = root.putObject("plan");
    plan.put("note", training.plan().note());
    ArrayNode weeks = plan.putArray("weeks");
    training.plan().weeks().forEach(week -> weeks.add(write(week)));
  }

  private static ObjectNode write(Plan.Week week) {
    @Nullable StartingPace pace = week.pace();
    ObjectNode node = RecordForm.of(week, "week=number aim");
    node.put("drill", week.drill().code());
    node.put("hand", week.hand().code());
    node.put("dose", week.drill().dose());
    Put.figure(node, "paceSlapsPerS", pace == null ? null : pace.slapsPerS());
    node.put("harder", week.drill().harderWhen());
    return RecordForm.put(node, week.drill(), "retest stop");
  }
}
