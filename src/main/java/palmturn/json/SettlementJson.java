package palmturn.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Coded;
import palmturn.trial.Decision;
import palmturn.trial.Settlement;

/** The form of a settlement inside a trial's file. */
final class SettlementJson {
  private SettlementJson() {}

  static Settlement read(Keys keys) throws JsonException {
    return new Settlement(
        keys.text("first"),
        keys.text("second"),
        keys.numberOrNull("toleranceS", 0, 60),
        keys.flag("removeOffset", false),
        keys.list("slaps", each -> decision(each, MarksJson::slap)),
        keys.list("spans", each -> decision(each, MarksJson::span)),
        keys.rest());
  }

  private static <M> Decision<M> decision(Keys keys, Keys.Item<M> mark) throws JsonException {
    Decision.Choice choice =
        keys.parsed("choice", code -> Coded.parse(Decision.Choice.class, code));
    String by = keys.text("by");
    Instant at = keys.parsed("at", Instant::parse);
    String why = keys.textOrEmpty("why");
    M a = keys.objectOrNull("a", mark);
    M b = keys.objectOrNull("b", mark);
    M anew = keys.objectOrNull("anew", mark);
    return keys.make(() -> new Decision<>(choice, by, at, why, a, b, anew, keys.rest()));
  }

  static ObjectNode write(Settlement settlement) {
    ObjectNode node = JsonText.object();
    node.put("first", settlement.first());
    node.put("second", settlement.second());
    Put.number(node, "toleranceS", settlement.toleranceS());
    if (settlement.removeOffset()) {
      node.put("removeOffset", true);
    }
    put(node.putArray("slaps"), settlement.slaps(), MarksJson::write);
    put(node.putArray("spans"), settlement.spans(), MarksJson::write);
    return Put.extra(node, settlement.extra());
  }

  private static <M> void put(
      ArrayNode list, List<Decision<M>> decisions, Function<M, ObjectNode> mark) {
    for (Decision<M> decision : decisions) {
      ObjectNode node = list.addObject();
      node.put("choice", decision.choice().code());
      node.put("by", decision.by());
      node.put("at", decision.at().toString());
      Put.words(node, "why", decision.why());
      mark(node, "a", decision.a(), mark);
      mark(node, "b", decision.b(), mark);
      mark(node, "anew", decision.anew(), mark);
      Put.extra(node, decision.extra());
    }
  }

  private static <M> void mark(
      ObjectNode node, String key, @Nullable M mark, Function<M, ObjectNode> form) {
    if (mark != null) {
      node.set(key, form.apply(mark));
    }
  }
}
