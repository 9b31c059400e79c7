package palmturn.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import palmturn.advise.Training;

/** The training advice as JSON for scripts. */
final class TrainJson {
  private TrainJson() {}

  /** Puts the advice and the plan under their keys. */
  static void put(ObjectNode root, Training training) {
    root.set(
        "train", RecordForm.all(training.advice(), "rule hand quality sure why action drills"));
    root.set(
        "plan",
        RecordForm.of(training.plan(), "note")
            .set(
                "weeks",
                RecordForm.all(
                    training.plan().weeks(),
                    "week=number aim drill=drill.code hand dose=drill.dose"
                        + " paceSlapsPerS=pace.slapsPerS harder=drill.harderWhen"
                        + " retest=drill.retest stop=drill.stop")));
  }
}
