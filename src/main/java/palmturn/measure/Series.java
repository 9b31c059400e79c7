package palmturn.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Stats;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.TimedBy;
import palmturn.trial.Trial;

/**
 * The intervals between a window's slaps, timed by one source throughout: sound and picture differ
 * by tens of milliseconds, so that an interval from one to the other would be wrong by as much.
 *
 * @param timedBy the source; null without an interval
 * @param intervals one for each slap but the last, in order
 */
record Series(@Nullable TimedBy timedBy, List<SlapInterval> intervals) {
  private static final double PAUSE_OVER_MEDIAN = 2.2;
  private static final double LEAST_SOUND_SHARE = 0.8;

  static Series of(Trial trial, Window window) {
    List<Slap> slaps = window.slaps();
    if (slaps.size() < 2) {
      return new Series(null, List.of());
    }
    TimedBy timedBy = source(trial, window);
    NavigableSet<Double> missedS = missedS(window);
    NavigableSet<Double> pausesS = pausesS(window);
    Double pauseOverS = pauseOver(window, missedS);
    double soundSdS = soundSd(slaps);
    Function<Slap, @Nullable Double> clock = clock(trial, timedBy);
    List<SlapInterval> intervals = new ArrayList<>();
    for (int i = 0; i + 1 < slaps.size(); i++) {
      Slap from = slaps.get(i);
      Slap to = slaps.get(i + 1);
      Double fromS = clock.apply(from);
      Double toS = clock.apply(to);
      boolean timed = fromS != null && toS != null;
      double startS = timed ? fromS : from.timeS();
      double endS = timed ? toS : to.timeS();
      double durationS = window.scale().realBetween(startS, endS);
      SlapInterval.Use use = SlapInterval.Use.RHYTHM;
      if (anyIn(missedS, from.timeS(), to.timeS(), true)) {
        use = SlapInterval.Use.MISSED_TURN;
      } else if (pauseOverS != null && gapS(window, i) > pauseOverS
          || anyIn(pausesS, from.timeS(), to.timeS(), false)) {
        use = SlapInterval.Use.PAUSE;
      } else if (!timed || durationS <= 0) {
        use = SlapInterval.Use.OTHER_SOURCE;
      }
      intervals.add(
          new SlapInterval(
              (window.realS(startS) + window.realS(endS)) / 2,
              durationS,
              TurnClass.between(from.side(), to.side()),
              use,
              sum(
                  variance(trial, from, timedBy, soundSdS),
                  variance(trial, to, timedBy, soundSdS))));
    }
    return new Series(timedBy, List.copyOf(intervals));
  }

  /** Returns the intervals that rhythm and slow-down rest on. */
  List<SlapInterval> rhythm() {
    return intervals.stream().filter(each -> each.use() == SlapInterval.Use.RHYTHM).toList();
  }

  /** Returns how many intervals have a use. */
  int count(SlapInterval.Use use) {
    return (int) intervals.stream().filter(each -> each.use() == use).count();
  }

  private static TimedBy source(Trial trial, Window window) {
    List<Slap> slaps = window.slaps();
    if (slaps.stream().anyMatch(slap -> slap.timedBy() == TimedBy.TYPED)) {
      return TimedBy.TYPED;
    }
    int withSound = 0;
    for (int i = 0; i + 1 < slaps.size(); i++) {
      if (soundS(trial, slaps.get(i)) != null && soundS(trial, slaps.get(i + 1)) != null) {
        withSound++;
      }
    }
    boolean realTime = window.scale().pieces().stream().allMatch(piece -> piece.factor() == 1);
    if (realTime && withSound >= LEAST_SOUND_SHARE * (slaps.size() - 1)) {
      return TimedBy.SOUND;
    }
    boolean motion = slaps.stream().allMatch(slap -> slap.timedBy() == TimedBy.MOTION);
    return motion ? TimedBy.MOTION : TimedBy.PICTURE;
  }

  private static Function<Slap, @Nullable Double> clock(Trial trial, TimedBy timedBy) {
    return switch (timedBy) {
      case SOUND -> slap -> soundS(trial, slap);
      case TYPED, MOTION -> Slap::timeS;
      case PICTURE -> Series::pictureS;
    };
  }

  private static @Nullable Double pictureS(Slap slap) {
    if (slap.pictureS() != null) {
      return slap.pictureS();
    }
    return slap.timedBy() == TimedBy.SOUND ? null : slap.timeS();
  }

  /** On the sound's own clock; the offset matters only beside a mark whose onset was kept. */
  private static @Nullable Double soundS(Trial trial, Slap slap) {
    if (slap.soundS() != null) {
      return slap.soundS();
    }
    Double offsetS = trial.soundOffsetS();
    return slap.timedBy() == TimedBy.SOUND ? slap.timeS() + (offsetS == null ? 0 : offsetS) : null;
  }

  private static double gapS(Window window, int i) {
    return window.timesS()[i + 1] - window.timesS()[i];
  }

  private static @Nullable Double pauseOver(Window window, NavigableSet<Double> missedS) {
    List<Slap> slaps = window.slaps();
    List<Double> gaps = new ArrayList<>();
    for (int i = 0; i + 1 < slaps.size(); i++) {
      if (!anyIn(missedS, slaps.get(i).timeS(), slaps.get(i + 1).timeS(), true)) {
        gaps.add(gapS(window, i));
      }
    }
    Double median = Stats.median(gaps.stream().mapToDouble(each -> each).toArray());
    return median == null ? null : PAUSE_OVER_MEDIAN * median;
  }

  private static NavigableSet<Double> missedS(Window window) {
    return window.marks().stream()
        .filter(mark -> mark.kind() == Slap.Kind.MISSED)
        .map(Slap::timeS)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** By the span's middle, so that a span drawn a little too wide takes one interval, not three. */
  private static NavigableSet<Double> pausesS(Window window) {
    return window.spans().stream()
        .filter(span -> span.kind() == Span.SpanKind.PAUSE)
        .map(span -> (span.startS() + span.endS()) / 2)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static boolean anyIn(
      NavigableSet<Double> timesS, double fromS, double toS, boolean withEnd) {
    return !timesS.subSet(fromS, true, Math.max(fromS, toS), withEnd).isEmpty();
  }

  private static double soundSd(List<Slap> slaps) {
    Double median =
        Stats.median(
            slaps.stream()
                .filter(slap -> slap.timedBy() == TimedBy.SOUND)
                .mapToDouble(Slap::resolutionS)
                .toArray());
    return median == null ? Slap.SOUND_SD_S : median;
  }

  /** A frame distance r hides the contact evenly over itself, which has variance r²/12. */
  private static @Nullable Double variance(
      Trial trial, Slap slap, TimedBy timedBy, double soundSdS) {
    if (timedBy == TimedBy.TYPED) {
      return null;
    }
    if (timedBy == TimedBy.SOUND) {
      double sd = slap.timedBy() == TimedBy.SOUND ? slap.resolutionS() : soundSdS;
      return sd * sd;
    }
    double mediaS =
        slap.timedBy() == TimedBy.SOUND ? trial.clip().medianFrameS() : slap.resolutionS();
    double realS = mediaS * trial.timeScale().factorAt(slap.timeS());
    return realS * realS / 12;
  }

  private static @Nullable Double sum(@Nullable Double a, @Nullable Double b) {
    return a == null || b == null ? null : a + b;
  }
}
