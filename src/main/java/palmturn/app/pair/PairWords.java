package palmturn.app.pair;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import palmturn.measure.TrialAlignment;
import palmturn.measure.TrialClock;
import palmturn.trial.Block;
import palmturn.trial.Hand;
import palmturn.trial.Mirrored;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.TimeScale;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.wording.MarkNames;

/** Texts about the two trials and their current moment. */
final class PairWords {
  private PairWords() {}

  /**
   * The position of a trial at a moment.
   *
   * @param slap the last slap, such as "slap 7, palm"
   * @param fault what is wrong with it or around it; empty for nothing
   * @param interval how far into the interval, such as "64 of 198 ms, 32 %"
   * @param share how far into the interval, 0 to 1; null outside all of them
   */
  record SlapPosition(String slap, String fault, String interval, @Nullable Double share) {}

  static SlapPosition position(TrialClock beats, double momentS) {
    int number = beats.lastAt(momentS);
    double nowS = beats.realS(momentS);
    if (beats.slaps().isEmpty()) {
      return new SlapPosition(
          "no slap marked", faults(beats, 0, momentS), sinceFirstFrame(nowS), null);
    }
    if (number == 0) {
      return new SlapPosition(
          "before slap 1", faults(beats, 0, momentS), duration(-nowS) + " to slap 1", null);
    }
    Slap slap = beats.slaps().get(number - 1);
    String side = slap.side() == Side.UNKNOWN ? "side unknown" : slap.side().code();
    String words = "slap " + number + ", " + side;
    double sinceS = nowS - beats.slapS(number);
    String faults = faults(beats, number, momentS);
    if (number == beats.slaps().size()) {
      return new SlapPosition(words, faults, duration(sinceS) + " after the last slap", null);
    }
    double lengthS = beats.slapS(number + 1) - beats.slapS(number);
    double share = lengthS > 0 ? sinceS / lengthS : 0;
    return new SlapPosition(
        words,
        faults,
        String.format(
            Locale.ROOT,
            "%.0f of %s to slap %d, %.0f %%",
            sinceS * 1000,
            duration(lengthS),
            number + 1,
            share * 100),
        share);
  }

  /** The slap's own fault, marks after it that are no slaps, and spans around the moment. */
  private static String faults(TrialClock beats, int number, double momentS) {
    List<String> all = new ArrayList<>();
    double fromS = number == 0 ? Double.NEGATIVE_INFINITY : beats.slaps().get(number - 1).timeS();
    for (Slap mark : beats.marks()) {
      if (mark.timeS() >= fromS && mark.timeS() <= momentS && mark.faulty()) {
        all.add(mark.counts() ? MarkNames.fault(mark) : "then " + MarkNames.fault(mark));
      }
    }
    for (Span span : beats.spans()) {
      if (span.startS() <= momentS && momentS <= span.endS()) {
        all.add(MarkNames.fault(span.kind()));
      }
    }
    return String.join(", ", all);
  }

  private static String sinceFirstFrame(double realS) {
    return String.format(Locale.ROOT, "%.3f s since the first frame", realS);
  }

  /** Returns a time in milliseconds, or in seconds from one second on. */
  static String duration(double realS) {
    return realS < 0.9995
        ? String.format(Locale.ROOT, "%.0f ms", realS * 1000)
        : String.format(Locale.ROOT, "%.2f s", realS);
  }

  /** Returns a trial's name, such as "Left hand 2, after drill 1". */
  static String name(TrialId id) {
    return shortName(id) + ", " + block(id);
  }

  /** Returns a trial's name within its block, such as "Left hand 2". */
  static String shortName(TrialId id) {
    return (id.hand() == Hand.LEFT ? "Left hand " : "Right hand ") + id.repeat();
  }

  /** Returns what a trial's block is called. */
  static String block(TrialId id) {
    return id.block().equals(Block.BASELINE)
        ? "baseline"
        : "after drill " + Block.order(id.block());
  }

  /** Returns what a trial is called beside another, such as "left hand" or "earlier trial". */
  static String nameBeside(PairTrial of, PairTrial beside) {
    if (of.id().hand() != beside.id().hand()) {
      return of.id().hand() == Hand.LEFT ? "left hand" : "right hand";
    }
    int blocks = Block.order(of.id().block()) - Block.order(beside.id().block());
    boolean earlier = blocks < 0 || blocks == 0 && of.id().repeat() < beside.id().repeat();
    return earlier ? "earlier trial" : "later trial";
  }

  /** Returns a time with its sign, such as "+ 64 ms". */
  static String signed(double realS) {
    String sign = Math.abs(realS) < 0.0005 ? "" : realS < 0 ? "− " : "+ ";
    return sign + duration(Math.abs(realS));
  }

  /** Returns whose marks a trial shows. */
  static String marksSource(PairTrial of) {
    return switch (of.marksSource()) {
      case READER ->
          "reading "
              + (of.marks() == null ? "" : of.marks().reader())
              + (of.marks() != null && of.marks().finished() ? ", finished" : ", open");
      case ESTIMATE -> "estimated slaps, not read";
      case HIDDEN -> "marks hidden until you have read it";
      case NOBODY -> "no marks";
    };
  }

  /** Returns cautions about a clip, one sentence a line. */
  static List<String> notes(PairTrial of, boolean mirroredHere) {
    List<String> all = new ArrayList<>();
    Trial trial = of.trial();
    if (mirroredHere) {
      all.add(
          trial.mirrored() == Mirrored.TRUE
              ? "mirrored back for comparison"
              : "mirrored for comparison");
    } else if (trial.mirrored() == Mirrored.TRUE) {
      all.add("the clip is mirrored");
    }
    TimeScale scale = trial.timeScale();
    if (!scale.known()) {
      all.add("real time unknown: " + scale.refusedWhy());
    } else if (!scale.equals(TimeScale.REAL)) {
      all.add("slow motion, shown in real time");
    }
    if (!of.hasSlaps()) {
      all.add("no slaps: starts at its first frame");
    }
    return all;
  }

  /** Returns how the two are aligned. */
  static String alignment(TrialAlignment now, String oneName, String otherName) {
    if (!now.onSlap()) {
      return now.one().slaps().isEmpty() == now.other().slaps().isEmpty()
          ? "Aligned on the first frames, in real time"
          : "Aligned on the first slap of one and the first frame of the other, in real time";
    }
    if (now.samePace()) {
      return "Same pace: slaps aligned, the time between them stretched";
    }
    return now.shift() == 0
        ? "Aligned on slap " + now.slap() + " of both, in real time"
        : String.format(
            Locale.ROOT,
            "Aligned on slap %d of the %s and slap %d of the %s, in real time",
            now.slap(),
            oneName,
            now.slap() + now.shift(),
            otherName);
  }

  /** Returns a warning where the palm meets the back; empty otherwise. */
  static String sidesWarning(TrialAlignment now) {
    if (!now.onSlap()) {
      return "";
    }
    Side here = now.one().slaps().get(now.slap() - 1).side();
    Side there = now.other().slaps().get(now.slap() + now.shift() - 1).side();
    return here == Side.UNKNOWN || there == Side.UNKNOWN || here == there
        ? ""
        : here.code() + " meets " + there.code();
  }
}
