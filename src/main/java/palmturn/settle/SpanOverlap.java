package palmturn.settle;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import palmturn.trial.Span;

/** Pairs of overlapping spans of one kind, by intersection over union. */
final class SpanOverlap {
  /** Least intersection over union of a match; the usual threshold. */
  static final double SAME = 0.5;

  private SpanOverlap() {}

  /**
   * Two overlapping spans of one kind.
   *
   * @param a index into the first list
   * @param b index into the second list
   * @param iou intersection over union, above 0, up to 1
   */
  record SpanPair(int a, int b, double iou) {}

  /** Returns the pairs, each stretch in one at most, the best overlaps taken first. */
  static List<SpanPair> pairs(List<Span> a, List<Span> b) {
    List<SpanPair> all = new ArrayList<>();
    for (int i = 0; i < a.size(); i++) {
      for (int j = 0; j < b.size(); j++) {
        double iou = iou(a.get(i), b.get(j));
        if (a.get(i).kind() == b.get(j).kind() && iou > 0) {
          all.add(new SpanPair(i, j, iou));
        }
      }
    }
    all.sort(Comparator.comparingDouble(SpanPair::iou).reversed());
    Set<Integer> usedA = new HashSet<>();
    Set<Integer> usedB = new HashSet<>();
    List<SpanPair> best = new ArrayList<>();
    for (SpanPair pair : all) {
      if (!usedA.contains(pair.a) && !usedB.contains(pair.b)) {
        usedA.add(pair.a);
        usedB.add(pair.b);
        best.add(pair);
      }
    }
    return best;
  }

  /** Returns intersection over union of two stretches. */
  static double iou(Span a, Span b) {
    double both = Math.max(0, Math.min(a.endS(), b.endS()) - Math.max(a.startS(), b.startS()));
    return both / (a.endS() - a.startS() + b.endS() - b.startS() - both);
  }
}
