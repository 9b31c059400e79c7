package palmturn.app.marking;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import palmturn.numbers.Robust;
import palmturn.trial.Slap;
import palmturn.trial.TimeScale;

/**
 * Typed marks snapped to evidence. The typist's median lag is removed from all marks; then they are
 * matched to the evidence one-to-one and in order: the most pairs first, then the least total
 * distance. No mark moves further than 80 ms or 0.4 of the interval to its nearer neighbour, real
 * time; one without evidence in reach stays a typed mark.
 *
 * @param moves every mark before and after, in order of time
 * @param snapped how many marks were matched
 * @param lagS the median lag, real seconds; positive where keys were pressed late
 */
public record Snapping(List<Move> moves, int snapped, double lagS) {
  private static final double FARTHEST_S = 0.08;
  private static final double OF_INTERVAL = 0.4;

  /** With fewer marks on evidence a lag can't be told from the marks' own error. */
  private static final int FEWEST_FOR_LAG = 4;

  /** A finger is late or early by less than this many of a typed mark's half widths. */
  private static final double MOST_LAG_WIDTHS = 5;

  private static final double LAG_COST = 0.1;
  private static final int ROUNDS = 2;

  /** A mark before and after. */
  public record Move(Slap from, Slap to) {}

  public Snapping {
    moves = List.copyOf(moves);
  }

  /**
   * Snaps marks to evidence.
   *
   * @param typed in order of time, their widths in media seconds
   * @param evidence to snap to, in any order
   * @param scale how media seconds become real ones
   */
  public static Snapping of(List<Slap> typed, List<ContactEvidence> evidence, TimeScale scale) {
    List<ContactEvidence> sorted = new ArrayList<>(evidence);
    sorted.sort(Comparator.comparingDouble(ContactEvidence::timeS));
    double[] marks = typed.stream().mapToDouble(m -> scale.realBetween(0, m.timeS())).toArray();
    double[] found = sorted.stream().mapToDouble(e -> scale.realBetween(0, e.timeS())).toArray();
    double[] reach = reach(marks);
    double lag = lag(marks, found, reach, maxLag(typed, scale));
    int[] onto = match(marks, found, reach, lag).onto();
    List<Move> moves = new ArrayList<>();
    int settled = 0;
    for (int i = 0; i < onto.length; i++) {
      Slap mark = typed.get(i);
      if (onto[i] >= 0) {
        settled++;
        moves.add(new Move(mark, sorted.get(onto[i]).applyTo(mark)));
      } else {
        double shift = lag / scale.factorAt(mark.timeS());
        moves.add(new Move(mark, shiftedTo(mark, mark.timeS() - shift)));
      }
    }
    return new Snapping(moves, settled, lag);
  }

  /** Returns how many marks were not matched. */
  public int unmatched() {
    return moves.size() - snapped;
  }

  private static double maxLag(List<Slap> typed, TimeScale scale) {
    return typed.stream()
        .mapToDouble(m -> MOST_LAG_WIDTHS * m.resolutionS() * scale.factorAt(m.timeS()))
        .max()
        .orElse(0);
  }

  private static double[] reach(double[] marks) {
    double[] reach = new double[marks.length];
    for (int i = 0; i < marks.length; i++) {
      double before = i == 0 ? Double.POSITIVE_INFINITY : marks[i] - marks[i - 1];
      double after = i + 1 == marks.length ? Double.POSITIVE_INFINITY : marks[i + 1] - marks[i];
      reach[i] = Math.min(FARTHEST_S, OF_INTERVAL * Math.min(before, after));
    }
    return reach;
  }

  /** The lag under which the most marks find evidence, then the median of what they are late. */
  private static double lag(double[] marks, double[] found, double[] reach, double most) {
    double lag = 0;
    Match best = match(marks, found, reach, 0);
    for (double mark : marks) {
      for (double at : found) {
        double tried = mark - at;
        if (Math.abs(tried) <= most) {
          Match match = match(marks, found, reach, tried);
          if (match.pairs() > best.pairs()
              || match.pairs() == best.pairs() && cost(match, tried) < cost(best, lag)) {
            best = match;
            lag = tried;
          }
        }
      }
    }
    if (best.pairs() < FEWEST_FOR_LAG) {
      return 0;
    }
    for (int round = 0; round < ROUNDS; round++) {
      lag = Robust.median(lateness(marks, found, match(marks, found, reach, lag).onto()));
    }
    return lag;
  }

  /** An even trial fits as well a whole beat away, so that the smaller lag is the likelier one. */
  private static double cost(Match match, double lag) {
    return match.costS() + LAG_COST * match.pairs() * Math.abs(lag);
  }

  private static double[] lateness(double[] marks, double[] found, int[] onto) {
    List<Double> late = new ArrayList<>();
    for (int i = 0; i < onto.length; i++) {
      if (onto[i] >= 0) {
        late.add(marks[i] - found[onto[i]]);
      }
    }
    return late.isEmpty()
        ? new double[] {0}
        : late.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /**
   * A matching.
   *
   * @param onto for each mark the place of its evidence, −1 for none
   * @param pairs how many have one
   * @param costS sum of the distances
   */
  @SuppressWarnings("ArrayRecordComponent") // Made and read in one place.
  private record Match(int[] onto, int pairs, double costS) {}

  /** Each mark has a reach of its own, which the matching of two readings does not know. */
  private static Match match(double[] marks, double[] found, double[] reach, double lag) {
    int n = marks.length;
    int m = found.length;
    int[][] pairs = new int[n + 1][m + 1];
    double[][] cost = new double[n + 1][m + 1];
    for (int i = 1; i <= n; i++) {
      for (int j = 1; j <= m; j++) {
        boolean leaveMark =
            better(pairs[i - 1][j], cost[i - 1][j], pairs[i][j - 1], cost[i][j - 1]);
        pairs[i][j] = leaveMark ? pairs[i - 1][j] : pairs[i][j - 1];
        cost[i][j] = leaveMark ? cost[i - 1][j] : cost[i][j - 1];
        double away = Math.abs(marks[i - 1] - lag - found[j - 1]);
        double paired = cost[i - 1][j - 1] + away;
        if (away <= reach[i - 1]
            && better(pairs[i - 1][j - 1] + 1, paired, pairs[i][j], cost[i][j])) {
          pairs[i][j] = pairs[i - 1][j - 1] + 1;
          cost[i][j] = paired;
        }
      }
    }
    int[] onto = new int[n];
    Arrays.fill(onto, -1);
    int i = n;
    int j = m;
    while (i > 0 && j > 0) {
      if (pairs[i][j] == pairs[i - 1][j] && cost[i][j] == cost[i - 1][j]) {
        i--;
      } else if (pairs[i][j] == pairs[i][j - 1] && cost[i][j] == cost[i][j - 1]) {
        j--;
      } else {
        onto[--i] = --j;
      }
    }
    return new Match(onto, pairs[n][m], cost[n][m]);
  }

  private static boolean better(int pairs, double costS, int thanPairs, double thanS) {
    return pairs > thanPairs || pairs == thanPairs && costS < thanS;
  }

  private static Slap shiftedTo(Slap mark, double timeS) {
    return new Slap(
        mark.kind(),
        timeS,
        mark.side(),
        mark.zone(),
        mark.timedBy(),
        mark.resolutionS(),
        mark.pictureS(),
        mark.soundS(),
        mark.seen(),
        mark.note(),
        mark.extra());
  }
}
