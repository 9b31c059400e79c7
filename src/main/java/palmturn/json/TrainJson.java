package palmturn.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;
import palmturn.advise.Advice;
import palmturn.advise.Plan;
import palmturn.advise.StartingPace;
import palmturn.advise.Training;

/** The training advice as JSON for scripts. */
final class TrainJson {
  private TrainJson() {}

  /** Puts the advice and the plan under their keys. */
  static void put(ObjectNode root, Training training) {
    ArrayNode train = root.putArray("train");
    training.advice().forEach(advice -> train.add(write(advice)));
    ObjectNode plan = root.putObject("plan");
    plan.put("note", training.plan().note());
    ArrayNode weeks = plan.putArray("weeks");
    training.plan().weeks().forEach(week -> weeks.add(write(week)));
  }

  private static ObjectNode write(Advice advice) {
    ObjectNode node = JsonText.object();
    node.put("rule", advice.rule());
    node.put("hand", advice.hand().code());
    node.put("quality", advice.quality() == null ? null : advice.quality().code());
    node.put("sure", advice.sure());
    node.put("why", advice.why());
    node.put("action", advice.action());
    ArrayNode drills = node.putArray("drills");
    advice.drills().forEach(drills::add);
    return node;
  }

  private static ObjectNode write(Plan.Week week) {
    @Nullable StartingPace pace = week.pace();
    ObjectNode node = JsonText.object();
    node.put("week", week.number());
    node.put("aim", week.aim());
    node.put("drill", week.drill().code());
    node.put("hand", week.hand().code());
    node.put("dose", week.drill().dose());
    Put.figure(node, "paceSlapsPerS", pace == null ? null : pace.slapsPerS());
    node.put("harder", week.drill().harderWhen());
    node.put("retest", week.drill().retest());
    node.put("stop", week.drill().stop());
    return node;
  }
}
