package palmturn.work.pack;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Decision;
import palmturn.trial.PackOrigin;
import palmturn.trial.Settlement;
import palmturn.trial.Slap;
import palmturn.trial.Span;

/**
 * The settlements of a trial and those of the same trial in packs. A decision made here stands; a
 * pack's is kept after it with its pack.
 */
final class MergedSettlements {
  private final Arrival arrival;
  private final List<Settlement> all = new ArrayList<>();
  private int brought;
  private int opposed;
  private int leftOut;

  private MergedSettlements(Arrival arrival) {
    this.arrival = arrival;
  }

  /**
   * Merges.
   *
   * @param readings after merging, which tells their names
   */
  static MergedSettlements of(
      List<Settlement> here, List<Settlement> packed, MergedReadings readings, Arrival arrival) {
    MergedSettlements merged = new MergedSettlements(arrival);
    Map<String, String> names = readings.namesOfHere();
    for (Settlement each : here) {
      String first = names.getOrDefault(each.first(), each.first());
      String second = names.getOrDefault(each.second(), each.second());
      merged.all.add(with(each, first, second, each.slaps(), each.spans(), each.pack()));
    }
    for (int place = 0; place < packed.size(); place++) {
      merged.addPacked(packed.get(place), readings.namesOfPacked(), arrival.origin(place));
    }
    return merged;
  }

  private void addPacked(Settlement packed, Map<String, String> names, PackOrigin pack) {
    String first = name(packed.first(), names);
    String second = name(packed.second(), names);
    if (first == null || second == null || first.equals(second)) {
      leftOut += packed.slaps().size() + packed.spans().size();
      return;
    }
    Settlement fresh =
        with(packed, first, second, received(packed.slaps()), received(packed.spans()), pack);
    for (int i = 0; i < all.size(); i++) {
      Settlement here = all.get(i);
      if (here.between(first, second)) {
        boolean sameWay = here.first().equals(first);
        if (!sameWay && (here.removeOffset() || packed.removeOffset())) {
          leftOut += packed.slaps().size() + packed.spans().size();
        } else {
          all.set(i, both(here, sameWay ? fresh : turned(fresh)));
        }
        return;
      }
    }
    brought += fresh.slaps().size() + fresh.spans().size();
    all.add(fresh);
  }

  private static @Nullable String name(String packed, Map<String, String> names) {
    return packed.equals(Settlement.ESTIMATE) ? packed : names.get(packed);
  }

  /** Returns what the pack's sender decided last on each difference, and what others had before. */
  private <M> List<Decision<M>> received(List<Decision<M>> packed) {
    Map<List<@Nullable M>, Decision<M>> last = new HashMap<>();
    packed.stream()
        .filter(each -> each.packedAt() == null)
        .forEach(each -> last.put(marks(each), each));
    return packed.stream()
        .filter(
            each ->
                each.packedAt() == null
                    ? last.get(marks(each)) == each
                    : !last.containsKey(marks(each)))
        .map(each -> each.packedAt() == null ? each.withPackedAt(arrival.packedAt()) : each)
        .toList();
  }

  private static <M> List<@Nullable M> marks(Decision<M> decision) {
    return Arrays.asList(decision.a(), decision.b());
  }

  private Settlement both(Settlement here, Settlement packed) {
    PackOrigin pack = here.pack() == null ? null : Arrival.earlier(here.pack(), packed.pack());
    return with(
        here,
        here.first(),
        here.second(),
        both(here.slaps(), packed.slaps()),
        both(here.spans(), packed.spans()),
        pack);
  }

  private <M> List<Decision<M>> both(List<Decision<M>> here, List<Decision<M>> packed) {
    List<Decision<M>> own = here.stream().filter(each -> each.packedAt() == null).toList();
    Map<Decision<M>, Instant> received = new HashMap<>();
    for (Decision<M> each : here) {
      if (each.packedAt() != null) {
        received.put(each.withPackedAt(null), each.packedAt());
      }
    }
    for (Decision<M> each : packed) {
      Decision<M> plain = each.withPackedAt(null);
      Instant at = each.packedAt();
      if (at != null && !own.contains(plain)) {
        brought += received.containsKey(plain) ? 0 : 1;
        opposed += own.stream().anyMatch(mine -> marks(mine).equals(marks(each))) ? 1 : 0;
        received.merge(plain, at, (one, other) -> one.isBefore(other) ? one : other);
      }
    }
    return Stream.concat(
            own.stream(),
            received.entrySet().stream()
                .map(each -> each.getKey().withPackedAt(each.getValue()))
                .sorted(
                    Comparator.comparing((Decision<M> each) -> each.at())
                        .thenComparing(Decision::toString)))
        .toList();
  }

  /** Returns the same with the two readings in the other order. */
  private static Settlement turned(Settlement each) {
    return with(
        each, each.second(), each.first(), turned(each.slaps()), turned(each.spans()), each.pack());
  }

  private static <M> List<Decision<M>> turned(List<Decision<M>> decisions) {
    return decisions.stream()
        .map(
            each ->
                new Decision<>(
                    switch (each.choice()) {
                      case FIRST -> Decision.Choice.SECOND;
                      case SECOND -> Decision.Choice.FIRST;
                      case NEITHER, OPEN -> each.choice();
                    },
                    each.by(),
                    each.at(),
                    each.why(),
                    each.b(),
                    each.a(),
                    each.anew(),
                    each.packedAt(),
                    each.extra()))
        .toList();
  }

  private static Settlement with(
      Settlement each,
      String first,
      String second,
      List<Decision<Slap>> slaps,
      List<Decision<Span>> spans,
      @Nullable PackOrigin pack) {
    return new Settlement(
        first, second, each.toleranceS(), each.removeOffset(), slaps, spans, pack, each.extra());
  }

  /**
   * Returns all: what packs brought by their packs, then those worked on here, the last at the end.
   */
  List<Settlement> all() {
    Comparator<Settlement> order =
        Comparator.comparing(Settlement::pack, arrival.order())
            .thenComparing(Settlement::first)
            .thenComparing(Settlement::second);
    return Stream.concat(
            all.stream().filter(each -> each.pack() != null).sorted(order),
            all.stream().filter(each -> each.pack() == null))
        .toList();
  }

  /** Returns how many decisions were not here before. */
  int brought() {
    return brought;
  }

  /** Returns how many of the pack's decisions are on something that was decided here. */
  int opposed() {
    return opposed;
  }

  /** Returns how many of the pack's decisions are on readings that are not here. */
  int leftOut() {
    return leftOut;
  }
}
