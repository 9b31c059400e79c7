package palmturn.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.wording.MarkNames;

/** Marks as captions that any player shows over the clip: WebVTT, in the clip's own seconds. */
public final class WebVtt {
  private static final double SHOWN_S = 0.5;
  private static final double LEAST_S = 0.001;

  private WebVtt() {}

  private record Cue(double fromS, double toS, String settings, String text) {}

  /**
   * Returns the captions of a reading: slaps by number at the foot of the picture, spans at its
   * head.
   *
   * @param title what the clip shows, put into the file's first line
   */
  public static String write(String title, Reading reading) {
    List<Cue> cues = new ArrayList<>();
    List<Slap> slaps = reading.slaps();
    int number = 0;
    for (int i = 0; i < slaps.size(); i++) {
      Slap slap = slaps.get(i);
      double fromS = Math.max(0, slap.timeS());
      double nextS = i + 1 < slaps.size() ? slaps.get(i + 1).timeS() : Double.POSITIVE_INFINITY;
      double toS = Math.max(fromS + LEAST_S, Math.min(fromS + SHOWN_S, nextS));
      number += slap.counts() ? 1 : 0;
      cues.add(new Cue(fromS, toS, "", text(slap, number)));
    }
    for (Span span : reading.spans()) {
      double fromS = Math.max(0, span.startS());
      cues.add(
          new Cue(
              fromS,
              Math.max(fromS + LEAST_S, span.endS()),
              " line:0",
              noted(MarkNames.fault(span.kind()), span.note())));
    }
    cues.sort(Comparator.comparingDouble(Cue::fromS));
    StringBuilder out = new StringBuilder("WEBVTT ").append(escaped(title)).append("\n");
    for (Cue cue : cues) {
      out.append("\n%s --> %s%s\n".formatted(stamp(cue.fromS()), stamp(cue.toS()), cue.settings()))
          .append(escaped(cue.text()))
          .append("\n");
    }
    return out.toString();
  }

  private static String text(Slap slap, int number) {
    StringBuilder text = new StringBuilder();
    if (slap.counts()) {
      text.append(number).append(' ');
    }
    text.append(slap.side() == Side.UNKNOWN ? "side unknown" : slap.side().code());
    String fault = MarkNames.fault(slap);
    if (!fault.isEmpty()) {
      text.append(", ").append(fault);
    }
    return noted(text.toString(), slap.note());
  }

  private static String noted(String text, String note) {
    return note.isBlank() ? text : text + ": " + note;
  }

  private static String escaped(String text) {
    return text.replaceAll("\\s+", " ")
        .strip()
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;");
  }

  private static String stamp(double timeS) {
    long ms = Math.round(timeS * 1000);
    return String.format(
        Locale.ROOT,
        "%02d:%02d:%02d.%03d",
        ms / 3_600_000,
        ms / 60_000 % 60,
        ms / 1000 % 60,
        ms % 1000);
  }
}
