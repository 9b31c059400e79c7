package palmturn.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
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
        MarksJson.pack(keys),
        keys.rest());
  }

  private static <M> Decision<M> decision(Keys keys, Keys.Item<M> mark) throws JsonException {
    return new Decision<>(
        keys.coded("choice", Decision.Choice.class),
        keys.text("by"),
        keys.parsed("at", Instant::parse),
        keys.textOrEmpty("why"),
        keys.objectOrNull("a", mark),
        keys.objectOrNull("b", mark),
        keys.objectOrNull("anew", mark),
        keys.parsedOrNull("packedAt", Instant::parse),
        keys.rest());
  }

  static ObjectNode write(Settlement settlement) {
    ObjectNode node =
        RecordForm.of(
            settlement,
            "first second toleranceS? removeOffset* packedAt=pack.at? packedPlace=pack.place?");
    node.set("slaps", decisions(settlement.slaps(), MarksJson::write));
    node.set("spans", decisions(settlement.spans(), MarksJson::write));
    return RecordForm.extra(node, settlement.extra());
  }

  private static <M> ArrayNode decisions(
      List<Decision<M>> decisions, Function<M, ObjectNode> mark) {
    return RecordForm.all(
        decisions,
        decision -> {
          ObjectNode node = RecordForm.of(decision, "choice by at packedAt? why*");
          mark(node, "a", decision.a(), mark);
          mark(node, "b", decision.b(), mark);
          mark(node, "anew", decision.anew(), mark);
          return RecordForm.extra(node, decision.extra());
        });
  }

  private static <M> void mark(
      ObjectNode node, String key, @Nullable M mark, Function<M, ObjectNode> form) {
    if (mark != null) {
      node.set(key, form.apply(mark));
    }
  }
}
