package palmturn.advise;

import java.util.Arrays;
import java.util.List;
import palmturn.trial.Coded;

/** A caution of the program; a drill lists the codes of those that belong beside it. */
public enum Caution implements Coded {
  NO_DIAGNOSIS(
      "Palmturn measures a skill; it does not diagnose. A side difference is not a medical"
          + " finding."),
  URGENT(
      "Sudden or one-sided loss of coordination, weakness, numbness, slurred speech, a new"
          + " tremor or headache: stop and seek urgent medical care."),
  PAIN(
      "Pain, dizziness or double vision in a drill: stop; see a licensed clinician before going"
          + " on. After head, neck, wrist or elbow injury, ask a licensed professional first."),
  HEAD_AND_EYES(
      "Head-turn and eye drills: seated; not after recent concussion, neck or eye surgery, or"
          + " with vertigo, unless a clinician agrees."),
  BREATH(
      "Breathing drills: never forced; stop if light-headed; ask first with heart or lung"
          + " disease or in pregnancy."),
  SORE("A sore or red palm or forearm: stop."),
  FILMING(
      "A young athlete’s clips need a guardian’s consent; follow local law on filming and data."
          + " Clips stay on this computer; nothing is sent anywhere.");

  private final String text;

  Caution(String text) {
    this.text = text;
  }

  /** Returns the caution in full. */
  public String text() {
    return text;
  }

  /** Returns all cautions in full, in the order to show them in. */
  public static List<String> all() {
    return Arrays.stream(values()).map(Caution::text).toList();
  }
}
