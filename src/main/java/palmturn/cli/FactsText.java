package palmturn.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import palmturn.trial.ClipFacts;
import palmturn.wording.Figures;

/** A clip's facts in plain words. */
final class FactsText {
  private FactsText() {}

  static String of(ClipFacts facts) {
    List<String> lines = new ArrayList<>();
    lines.add(facts.clip());
    lines.add(
        line(
            "picture",
            "%s, %d × %d upright%s",
            facts.videoCodec(),
            facts.width(),
            facts.height(),
            facts.rotationDeg() == 0 ? "" : ", stored turned by " + facts.rotationDeg() + "°"));
    lines.add(
        line(
            "frames",
            "%d, %.2f a second%s",
            facts.frames(),
            facts.meanFps(),
            facts.variableRate() ? ", uneven" : ""));
    lines.add(line("time", "from %.3f s, %.3f s long", facts.firstS(), facts.durationS()));
    Double capture = facts.captureFps();
    if (capture != null) {
      lines.add(line("captured", "at %.0f frames a second", capture));
    }
    ClipFacts.Sound sound = facts.sound();
    lines.add(sound == null ? line("sound", "none") : line("sound", "%s", of(sound)));
    facts.warnings().forEach(warning -> lines.add(line("warning", "%s", warning)));
    return String.join("\n", lines);
  }

  private static String of(ClipFacts.Sound sound) {
    String text =
        String.format(
            Locale.ROOT,
            "%s, %d Hz, %s",
            sound.codec(),
            sound.sampleRate(),
            Figures.count(sound.channels(), "channel"));
    Double firstS = sound.firstS();
    return firstS == null ? text : text + String.format(Locale.ROOT, ", from %.3f s", firstS);
  }

  private static String line(String name, String format, Object... values) {
    return "  %-9s".formatted(name) + String.format(Locale.ROOT, format, values);
  }
}
