package palmturn.report;

import java.util.List;

/** What every report says in full, whatever its figures. */
final class Cautions {
  private Cautions() {}

  static final List<String> ALL =
      List.of(
          "Palmturn measures a skill; it does not diagnose. A side difference is not a medical"
              + " finding.",
          "Sudden or one-sided loss of coordination, weakness, numbness, slurred speech, a new"
              + " tremor or headache: stop and seek urgent medical care.",
          "Pain, dizziness or double vision in a drill: stop; see a licensed clinician before going"
              + " on. After head, neck, wrist or elbow injury, ask a licensed professional first.",
          "Head-turn and eye drills: seated; not after recent concussion, neck or eye surgery, or"
              + " with vertigo, unless a clinician agrees.",
          "Breathing drills: never forced; stop if light-headed; ask first with heart or lung"
              + " disease or in pregnancy.",
          "A sore or red palm or forearm: stop.",
          "A young athlete’s clips need a guardian’s consent; follow local law on filming and data."
              + " Clips stay on this computer; nothing is sent anywhere.");
}
