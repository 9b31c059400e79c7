package palmturn.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import palmturn.trial.Slap;
import palmturn.trial.TimedBy;

/**
 * One attempt with the pace at which it was made.
 *
 * @param slapsPerS local rate, two turns over the time from the turn before to the turn after
 * @param faulty whether it was not clean
 */
public record TimedAttempt(double slapsPerS, boolean faulty) {

  /**
   * Returns the attempts whose pace can be told: each turn between two others without a pause, and
   * each double at the pace of the turn that it follows. None where clean or real time can't be
   * told, or where the marks were only typed.
   */
  static List<TimedAttempt> of(Window window, Series series) {
    boolean timed = series.timedBy() != null && series.timedBy() != TimedBy.TYPED;
    if (!timed || !window.scale().known() || !Accuracy.known(window)) {
      return List.of();
    }
    List<Slap> marks = window.marks();
    List<Slap> turns = marks.stream().filter(mark -> mark.kind() != Slap.Kind.DOUBLE).toList();
    NavigableSet<Double> pausesS =
        series.intervals().stream()
            .filter(each -> each.use() == SlapInterval.Use.PAUSE)
            .map(SlapInterval::midS)
            .collect(Collectors.toCollection(TreeSet::new));
    List<TimedAttempt> attempts = new ArrayList<>();
    int turn = -1;
    for (Slap mark : marks) {
      if (mark.kind() != Slap.Kind.DOUBLE) {
        turn++;
      }
      if (turn > 0 && turn + 1 < turns.size()) {
        double fromS = window.realS(turns.get(turn - 1).timeS());
        double toS = window.realS(turns.get(turn + 1).timeS());
        if (toS > fromS && pausesS.subSet(fromS, false, toS, false).isEmpty()) {
          attempts.add(new TimedAttempt(2 / (toS - fromS), !window.clean(mark)));
        }
      }
    }
    return List.copyOf(attempts);
  }
}
