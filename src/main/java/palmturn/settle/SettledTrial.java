package palmturn.settle;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import java.util.function.BiPredicate;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Decision;
import palmturn.trial.Extra;
import palmturn.trial.Reading;
import palmturn.trial.Settlement;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.StartedFrom;
import palmturn.trial.Trial;
import palmturn.trial.Zone;

/**
 * A trial's two readings, the decisions on their differences, and the settled reading. A decision
 * holds until either reading changes at that difference; one that came with a pack holds only where
 * none was made here and no other pack's says otherwise.
 *
 * @param comparison the two readings beside each other
 * @param slaps each difference between marks with its decision, worst first
 * @param spans each difference between stretches with its decision, worst first
 * @param stale decisions whose difference is gone, because a reading has changed
 * @param reading the settled reading: where both agree the first's marks, with labels that only the
 *     second has; elsewhere as decided; where still open as the first has it. Finished when nothing
 *     is open
 */
public record SettledTrial(
    ReadingComparison comparison,
    List<DifferenceState<Slap>> slaps,
    List<DifferenceState<Span>> spans,
    int stale,
    Reading reading) {
  /** Name of the settled reading. */
  public static final String READER = "settled";

  /** Times written to a file and read again may differ by their last digit. */
  private static final double SAME_S = 1e-6;

  public SettledTrial {
    slaps = List.copyOf(slaps);
    spans = List.copyOf(spans);
  }

  /**
   * Settles a trial from its readings and the decisions alone.
   *
   * @throws SettleException as {@link ReadingComparison#of}
   */
  public static SettledTrial of(Trial trial, Settlement settlement) throws SettleException {
    return of(trial, settlement, ReadingComparison.of(trial, settlement));
  }

  /**
   * Returns the same two readings on the same terms with other decisions, without matching them
   * again.
   *
   * @param trial the one that both readings are of
   */
  public SettledTrial with(Trial trial, Settlement settlement) {
    return of(trial, settlement, comparison);
  }

  private static SettledTrial of(Trial trial, Settlement settlement, ReadingComparison comparison) {
    List<DifferenceState<Slap>> slaps =
        states(comparison.slaps(), settlement.slaps(), SettledTrial::sameSlap);
    List<DifferenceState<Span>> spans =
        states(comparison.spans(), settlement.spans(), SettledTrial::sameSpan);
    boolean finished =
        Stream.concat(slaps.stream(), spans.stream()).noneMatch(DifferenceState::isOpen);
    int stale =
        stale(comparison.slaps(), settlement.slaps(), SettledTrial::sameSlap)
            + stale(comparison.spans(), settlement.spans(), SettledTrial::sameSpan);
    Reading reading =
        new Reading(
            READER,
            finished,
            settlement.first().equals(Settlement.ESTIMATE)
                ? StartedFrom.ESTIMATE
                : new StartedFrom(StartedFrom.Origin.READER, settlement.first()),
            settledSlaps(trial, comparison, slaps),
            settledSpans(comparison, spans),
            Extra.NONE);
    return new SettledTrial(comparison, slaps, spans, stale, reading);
  }

  /** Returns how many differences still wait for a decision. */
  public int open() {
    return (int)
        Stream.concat(slaps.stream(), spans.stream()).filter(DifferenceState::isOpen).count();
  }

  /** Returns how many differences are decided. */
  public int decided() {
    return slaps.size() + spans.size() - open();
  }

  private static List<Slap> settledSlaps(
      Trial trial, ReadingComparison comparison, List<DifferenceState<Slap>> rulings) {
    List<Slap> a = comparison.a().slaps();
    List<Slap> b = comparison.b().slaps();
    Set<Slap> differing = Collections.newSetFromMap(new IdentityHashMap<>());
    comparison.slaps().stream().map(Difference::a).forEach(mark -> addIfThere(differing, mark));
    List<Slap> settled = new ArrayList<>();
    for (Matching.Pair pair : comparison.matching().pairs()) {
      if (!differing.contains(a.get(pair.a()))) {
        settled.add(fillLabels(a.get(pair.a()), b.get(pair.b())));
      }
    }
    settled.addAll(standing(rulings, mark -> onFirstClock(trial, mark, comparison.removedS())));
    return settled;
  }

  private static List<Span> settledSpans(
      ReadingComparison comparison, List<DifferenceState<Span>> rulings) {
    Set<Span> differing = Collections.newSetFromMap(new IdentityHashMap<>());
    comparison.spans().stream().map(Difference::a).forEach(span -> addIfThere(differing, span));
    List<Span> settled = new ArrayList<>();
    for (Span span : comparison.a().spans()) {
      if (!differing.contains(span)) {
        settled.add(span);
      }
    }
    settled.addAll(standing(rulings, UnaryOperator.identity()));
    return settled;
  }

  /** Returns the marks that stand, in no order. */
  private static <M> List<M> standing(
      List<DifferenceState<M>> rulings, UnaryOperator<M> onFirstClock) {
    List<M> marks = new ArrayList<>();
    for (DifferenceState<M> ruling : rulings) {
      Decision<M> decision = ruling.decision();
      Decision.Choice choice = decision == null ? Decision.Choice.OPEN : decision.choice();
      M second = ruling.difference().b();
      switch (choice) {
        case FIRST, OPEN -> addIfThere(marks, ruling.difference().a());
        case SECOND -> addIfThere(marks, second == null ? null : onFirstClock.apply(second));
        case NEITHER -> addIfThere(marks, decision == null ? null : decision.anew());
      }
    }
    return marks;
  }

  private static <M> void addIfThere(Collection<M> marks, @Nullable M mark) {
    if (mark != null) {
      marks.add(mark);
    }
  }

  /** Fills in the labels that only the second reading has. */
  private static Slap fillLabels(Slap first, Slap second) {
    Slap told = first.side() == Side.UNKNOWN ? first.withSide(second.side()) : first;
    return told.zone() == Zone.UNKNOWN ? told.withZone(second.zone()) : told;
  }

  private static Slap onFirstClock(Trial trial, Slap slap, double removedS) {
    if (removedS == 0) {
      return slap;
    }
    double factor = trial.timeScale().known() ? trial.timeScale().factorAt(slap.timeS()) : 1;
    double mediaS = removedS / factor;
    Double pictureS = slap.pictureS();
    return new Slap(
        slap.kind(),
        slap.timeS() - mediaS,
        slap.side(),
        slap.zone(),
        slap.timedBy(),
        slap.resolutionS(),
        pictureS == null ? null : pictureS - mediaS,
        slap.soundS(),
        slap.seen(),
        slap.note(),
        slap.extra());
  }

  private static <M> List<DifferenceState<M>> states(
      List<Difference<M>> differences, List<Decision<M>> decisions, BiPredicate<M, M> same) {
    List<DifferenceState<M>> rulings = new ArrayList<>();
    for (Difference<M> difference : differences) {
      List<Decision<M>> answers =
          decisions.stream().filter(each -> answers(each, difference, same)).toList();
      rulings.add(new DifferenceState<>(difference, inForce(answers)));
    }
    return rulings;
  }

  /** Returns the last made here; where none was, that of the packs if they agree. */
  private static <M> @Nullable Decision<M> inForce(List<Decision<M>> answers) {
    Decision<M> own = null;
    Decision<M> packed = null;
    boolean agreed = true;
    for (Decision<M> each : answers) {
      if (each.packedAt() == null) {
        own = each;
      } else {
        agreed &= packed == null || packed.sameChoice(each);
        packed = each;
      }
    }
    return own != null || !agreed ? own : packed;
  }

  private static <M> int stale(
      List<Difference<M>> differences, List<Decision<M>> decisions, BiPredicate<M, M> same) {
    return (int)
        decisions.stream()
            .filter(decision -> differences.stream().noneMatch(d -> answers(decision, d, same)))
            .count();
  }

  private static <M> boolean answers(
      Decision<M> decision, Difference<M> difference, BiPredicate<M, M> same) {
    return same(decision.a(), difference.a(), same) && same(decision.b(), difference.b(), same);
  }

  private static <M> boolean same(@Nullable M x, @Nullable M y, BiPredicate<M, M> same) {
    return x == null || y == null ? x == y : same.test(x, y);
  }

  private static boolean sameSlap(Slap x, Slap y) {
    return Math.abs(x.timeS() - y.timeS()) <= SAME_S
        && x.kind() == y.kind()
        && x.side() == y.side()
        && x.zone() == y.zone();
  }

  private static boolean sameSpan(Span x, Span y) {
    return Math.abs(x.startS() - y.startS()) <= SAME_S
        && Math.abs(x.endS() - y.endS()) <= SAME_S
        && x.kind() == y.kind();
  }
}
