package palmturn.settle;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Span;

/**
 * The agreement of two readings on one kind of span.
 *
 * @param kind the fault
 * @param same stretches that both marked, intersection over union 0.5 or more
 * @param onlyA stretches of the first without such a partner
 * @param onlyB stretches of the second without one
 * @param bothS seconds that both marked
 * @param eitherS seconds that at least one marked
 */
public record SpanAgreement(
    Span.SpanKind kind, int same, int onlyA, int onlyB, double bothS, double eitherS) {

  /** Returns intersection over union of all the time marked; null if neither marked any. */
  public @Nullable Double iou() {
    return eitherS == 0 ? null : bothS / eitherS;
  }

  static SpanAgreement of(Span.SpanKind kind, List<Span> allA, List<Span> allB) {
    List<Span> a = joined(kind, allA);
    List<Span> b = joined(kind, allB);
    int same =
        (int)
            SpanOverlap.pairs(a, b).stream().filter(pair -> pair.iou() >= SpanOverlap.SAME).count();
    double bothS = 0;
    for (Span x : a) {
      for (Span y : b) {
        bothS += Math.max(0, Math.min(x.endS(), y.endS()) - Math.max(x.startS(), y.startS()));
      }
    }
    double eitherS = lengthS(a) + lengthS(b) - bothS;
    return new SpanAgreement(kind, same, a.size() - same, b.size() - same, bothS, eitherS);
  }

  SpanAgreement plus(SpanAgreement other) {
    return new SpanAgreement(
        kind,
        same + other.same,
        onlyA + other.onlyA,
        onlyB + other.onlyB,
        bothS + other.bothS,
        eitherS + other.eitherS);
  }

  private static double lengthS(List<Span> spans) {
    return spans.stream().mapToDouble(span -> span.endS() - span.startS()).sum();
  }

  /** Joins stretches of one reader that overlap, so that no moment counts twice. */
  private static List<Span> joined(Span.SpanKind kind, List<Span> spans) {
    List<Span> joined = new ArrayList<>();
    for (Span span : spans) {
      Span last = joined.isEmpty() ? null : joined.get(joined.size() - 1);
      if (span.kind() != kind) {
        continue;
      }
      if (last != null && span.startS() <= last.endS()) {
        double endS = Math.max(last.endS(), span.endS());
        joined.set(
            joined.size() - 1, new Span(kind, last.startS(), endS, last.note(), last.extra()));
      } else {
        joined.add(span);
      }
    }
    return joined;
  }
}
