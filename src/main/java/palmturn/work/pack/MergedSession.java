package palmturn.work.pack;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Block;
import palmturn.trial.Message;
import palmturn.trial.Session;
import palmturn.trial.TrialId;

/**
 * A session here and the same session from a pack, made one.
 *
 * @param session with all that either has; where they differ, what is here
 * @param brought a line for each thing that was not here
 * @param left a line for each thing that was left out, and why
 */
record MergedSession(Session session, List<String> brought, List<String> left) {

  static MergedSession of(Session here, Session packed, Arrival arrival) {
    List<String> brought = new ArrayList<>();
    List<String> left = new ArrayList<>();
    Session merged =
        here.withBlocks(blocks(here, packed, left))
            .withFilmed(filmed(here.filmed(), packed.filmed()))
            .withMessages(messages(here.messages(), packed.messages(), arrival, brought, left))
            .withFacts(facts(here.facts(), packed.facts(), brought, left));
    if (here.windowS() != packed.windowS()) {
      left.add("the session: the window of %s s".formatted(packed.windowS()));
    }
    return new MergedSession(merged, brought, left);
  }

  private static List<Block> blocks(Session here, Session packed, List<String> left) {
    Map<String, Block> blocks = new LinkedHashMap<>();
    here.blocks().forEach(block -> blocks.put(block.name(), block));
    for (Block block : packed.blocks()) {
      Block known = blocks.putIfAbsent(block.name(), block);
      if (known != null && known.drill() == null) {
        blocks.put(block.name(), block);
      } else if (known != null && block.drill() != null && !block.drill().equals(known.drill())) {
        left.add("the session: the drill before " + block.name());
      }
    }
    return blocks.values().stream()
        .sorted(Comparator.comparingInt(block -> Block.order(block.name())))
        .toList();
  }

  /** Returns the order here, with what is new; the pack's order where that only adds to it. */
  private static List<TrialId> filmed(List<TrialId> here, List<TrialId> packed) {
    List<TrialId> shared = new ArrayList<>(packed);
    shared.retainAll(here);
    Set<TrialId> all = new LinkedHashSet<>(shared.equals(here) ? packed : here);
    all.addAll(packed);
    return List.copyOf(all);
  }

  private static List<Message> messages(
      List<Message> here,
      List<Message> packed,
      Arrival arrival,
      List<String> brought,
      List<String> left) {
    Set<Message> all = new LinkedHashSet<>(here);
    all.addAll(packed);
    int fresh = all.size() - here.size();
    if (fresh > 0) {
      brought.add(
          String.format(
              Locale.ROOT, "the session: %d %s", fresh, fresh == 1 ? "message" : "messages"));
    }
    long ahead = packed.stream().filter(each -> arrival.isAhead(each.at())).count();
    if (ahead > 0) {
      left.add(
          String.format(
              Locale.ROOT,
              "the session: %d of its messages are dated in the future, and come first in the list",
              ahead));
    }
    return all.stream()
        .sorted(Message.order(arrival.now()).thenComparing(Message::toString))
        .toList();
  }

  private static Session.Facts facts(
      Session.Facts here, Session.Facts packed, List<String> brought, List<String> left) {
    Either either = new Either(brought, left);
    return new Session.Facts(
        either.of(here.racketHand(), packed.racketHand(), "racket hand"),
        either.of(here.forearmCm(), packed.forearmCm(), "length of the forearm"),
        either.of(here.handCm(), packed.handCm(), "length of the hand"),
        either.of(here.statureCm(), packed.statureCm(), "stature"),
        either.of(here.painToday(), packed.painToday(), "note on pain"),
        either.of(here.guardianConsent(), packed.guardianConsent(), "guardian's consent"),
        either.of(here.camera(), packed.camera(), "camera"),
        either.of(here.club(), packed.club(), "club"));
  }

  /** The choice of a fact, what is here if it is stated. */
  private record Either(List<String> brought, List<String> left) {
    <T> @Nullable T of(@Nullable T here, @Nullable T packed, String what) {
      if (packed != null && !packed.equals(here)) {
        (here == null ? brought : left).add("the session: the " + what);
      }
      return here == null ? packed : here;
    }
  }
}
