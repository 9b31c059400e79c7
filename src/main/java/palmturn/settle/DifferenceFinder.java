package palmturn.settle;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import palmturn.settle.Difference.What;
import palmturn.trial.Slap;
import palmturn.trial.Span;

/** The search for differences between two readings. */
final class DifferenceFinder {
  private final ComparedMarks a;
  private final ComparedMarks b;
  private final double[] aS;
  private final double[] bS;
  private final boolean bySide;
  private final boolean byZone;
  private final List<Difference<Slap>> found = new ArrayList<>();

  DifferenceFinder(ComparedMarks a, ComparedMarks b, double[] aS, double[] bS) {
    this.a = a;
    this.b = b;
    this.aS = aS;
    this.bS = bS;
    this.bySide = a.namesSides() && b.namesSides();
    this.byZone = a.namesZones() && b.namesZones();
  }

  /**
   * Returns where marks differ, worst first.
   *
   * @param apartS up to which two marks without a partner, with no matched slap between them, are
   *     of one slap told at different times, rather than two slaps
   */
  List<Difference<Slap>> slaps(Matching matching, double apartS) {
    for (Matching.Pair pair : matching.pairs()) {
      Set<What> what = labels(a.slaps().get(pair.a()), b.slaps().get(pair.b()));
      if (!what.isEmpty()) {
        add(what, pair.a(), pair.b());
      }
    }
    int fromA = 0;
    int fromB = 0;
    for (Matching.Pair pair : matching.pairs()) {
      between(fromA, pair.a(), fromB, pair.b(), apartS);
      fromA = pair.a() + 1;
      fromB = pair.b() + 1;
    }
    between(fromA, aS.length, fromB, bS.length, apartS);
    found.sort(Difference.worstFirst());
    return found;
  }

  /** Goes through the marks without a partner that lie between two matched slaps. */
  private void between(int fromA, int toA, int fromB, int toB, double apartS) {
    if (fromA == toA && fromB == toB) {
      return;
    }
    double[] restA = Arrays.copyOfRange(aS, fromA, toA);
    double[] restB = Arrays.copyOfRange(bS, fromB, toB);
    Matching rest = Matching.of(restA, restB, apartS);
    for (Matching.Pair pair : rest.pairs()) {
      Set<What> what = labels(a.slaps().get(fromA + pair.a()), b.slaps().get(fromB + pair.b()));
      what.add(What.APART);
      add(what, fromA + pair.a(), fromB + pair.b());
    }
    for (int i : rest.onlyA()) {
      Slap slap = a.slaps().get(fromA + i);
      found.add(new Difference<>(Set.of(What.ONLY_A), slap, null, slap.timeS(), 0));
    }
    for (int j : rest.onlyB()) {
      Slap slap = b.slaps().get(fromB + j);
      found.add(new Difference<>(Set.of(What.ONLY_B), null, slap, slap.timeS(), 0));
    }
  }

  private void add(Set<What> what, int i, int j) {
    Slap first = a.slaps().get(i);
    found.add(new Difference<>(what, first, b.slaps().get(j), first.timeS(), bS[j] - aS[i]));
  }

  private Set<What> labels(Slap first, Slap second) {
    Set<What> what = EnumSet.noneOf(What.class);
    if (first.kind() != second.kind()) {
      boolean aDouble = first.kind() == Slap.Kind.DOUBLE || second.kind() == Slap.Kind.DOUBLE;
      what.add(aDouble ? What.DOUBLE : What.KIND);
    }
    if (bySide && first.side() != second.side()) {
      what.add(What.SIDE);
    }
    if (byZone && first.zone() != second.zone()) {
      what.add(What.ZONE);
    }
    return what;
  }

  /** Returns where stretches differ, worst first. */
  static List<Difference<Span>> spans(List<Span> a, List<Span> b) {
    List<Difference<Span>> found = new ArrayList<>();
    Set<Integer> pairedA = new HashSet<>();
    Set<Integer> pairedB = new HashSet<>();
    for (SpanOverlap.SpanPair pair : SpanOverlap.pairs(a, b)) {
      pairedA.add(pair.a());
      pairedB.add(pair.b());
      Span first = a.get(pair.a());
      Span second = b.get(pair.b());
      if (pair.iou() < SpanOverlap.SAME) {
        double gapS = second.startS() - first.startS();
        found.add(new Difference<>(Set.of(What.APART), first, second, first.startS(), gapS));
      }
    }
    for (int i = 0; i < a.size(); i++) {
      if (!pairedA.contains(i)) {
        Span span = a.get(i);
        found.add(new Difference<>(Set.of(What.ONLY_A), span, null, span.startS(), 0));
      }
    }
    for (int j = 0; j < b.size(); j++) {
      if (!pairedB.contains(j)) {
        Span span = b.get(j);
        found.add(new Difference<>(Set.of(What.ONLY_B), null, span, span.startS(), 0));
      }
    }
    found.sort(Difference.worstFirst());
    return found;
  }
}
