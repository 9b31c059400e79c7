package palmturn.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import palmturn.numbers.Stats;
import palmturn.trial.Reading;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.Trial;

/**
 * The moments of a trial that show the athlete most: where the faults are thickest, and the
 * cleanest second beside them.
 *
 * @param worst at most so many as asked for, in order of time, none over another
 * @param cleanest null where fewer than three slaps follow each other within a second
 */
public record Moments(List<Moment> worst, @Nullable Moment cleanest) {
  /** The reach of a moment's marks, real seconds. */
  static final double LENGTH_S = 1;

  private static final int FEWEST_SLAPS = 3;

  /**
   * A stretch of a trial.
   *
   * @param marks the marks in it, in order of time
   * @param faulty those of them that are not clean
   * @param spans the stretches that spoil one of them
   */
  public record Moment(List<Slap> marks, List<Slap> faulty, List<Span> spans) {
    public Moment {
      marks = List.copyOf(marks);
      faulty = List.copyOf(faulty);
      spans = List.copyOf(spans);
    }

    /** Returns the time of its first mark, media seconds. */
    public double fromS() {
      return marks.get(0).timeS();
    }

    /** Returns the time of its last mark, media seconds. */
    public double toS() {
      return marks.get(marks.size() - 1).timeS();
    }
  }

  public Moments {
    worst = List.copyOf(worst);
  }

  /**
   * Returns the moments of a reading. Where real time can't be told, media seconds stand for it.
   *
   * @param windowS the protocol's seconds, real time
   * @param most how many of the worst
   */
  public static Moments of(Trial trial, Reading reading, double windowS, int most) {
    Window window = Window.of(trial, reading, windowS);
    List<Moment> all = new ArrayList<>();
    for (int i = 0; i < window.marks().size(); i++) {
      all.add(from(window, i));
    }
    return new Moments(worst(all, most), cleanest(all, window));
  }

  private static Moment from(Window window, int first) {
    double firstS = window.realS(window.marks().get(first).timeS());
    List<Slap> marks =
        window.marks().subList(first, window.marks().size()).stream()
            .filter(mark -> window.realS(mark.timeS()) - firstS <= LENGTH_S + Window.EDGE_S)
            .toList();
    List<Slap> faulty = marks.stream().filter(mark -> !window.clean(mark)).toList();
    List<Span> spans =
        window.spans().stream()
            .filter(span -> span.kind().spoils())
            .filter(span -> marks.stream().anyMatch(mark -> span.contains(mark.timeS())))
            .toList();
    return new Moment(marks, faulty, spans);
  }

  /** Takes the thickest again and again; each is cut to the faults that are in it. */
  private static List<Moment> worst(List<Moment> all, int most) {
    List<Moment> chosen = new ArrayList<>();
    Set<Slap> taken = new HashSet<>();
    for (int round = 0; round < most; round++) {
      Moment thickest =
          all.stream()
              .filter(moment -> !moment.faulty().isEmpty())
              .filter(moment -> moment.marks().get(0).equals(moment.faulty().get(0)))
              .filter(moment -> moment.marks().stream().noneMatch(taken::contains))
              // Of equally many faults the shortest, and of these the earliest.
              .max(
                  Comparator.comparingInt((Moment moment) -> moment.faulty().size())
                      .thenComparing(Comparator.comparingDouble(Moments::lastFaultS).reversed())
                      .thenComparing(Comparator.comparingDouble(Moment::fromS).reversed()))
              .orElse(null);
      if (thickest == null) {
        break;
      }
      Moment cut = upToLastFault(thickest);
      taken.addAll(cut.marks());
      chosen.add(cut);
    }
    chosen.sort(Comparator.comparingDouble(Moment::fromS));
    return chosen;
  }

  private static double lastFaultS(Moment moment) {
    return moment.faulty().get(moment.faulty().size() - 1).timeS() - moment.fromS();
  }

  private static Moment upToLastFault(Moment moment) {
    double lastS = moment.faulty().get(moment.faulty().size() - 1).timeS();
    return new Moment(
        moment.marks().stream().filter(mark -> mark.timeS() <= lastS).toList(),
        moment.faulty(),
        moment.spans());
  }

  /** The fewest faults, then the most even slaps, then the earliest. */
  private static @Nullable Moment cleanest(List<Moment> all, Window window) {
    return all.stream()
        .filter(moment -> moment.marks().stream().filter(Slap::counts).count() >= FEWEST_SLAPS)
        .min(
            Comparator.comparingInt((Moment moment) -> moment.faulty().size())
                .thenComparingDouble(moment -> unevenness(moment, window)))
        .orElse(null);
  }

  private static double unevenness(Moment moment, Window window) {
    double[] timesS =
        moment.marks().stream()
            .filter(Slap::counts)
            .mapToDouble(mark -> window.realS(mark.timeS()))
            .toArray();
    double[] intervals = new double[timesS.length - 1];
    for (int i = 0; i < intervals.length; i++) {
      intervals[i] = timesS[i + 1] - timesS[i];
    }
    Double cvPct = Stats.cvPct(intervals);
    // Rounded, so that of equally even ones the earliest is taken.
    return cvPct == null ? Double.POSITIVE_INFINITY : Math.rint(10 * cvPct) / 10;
  }
}
