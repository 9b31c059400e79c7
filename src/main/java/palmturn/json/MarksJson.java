package palmturn.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import org.jspecify.annotations.Nullable;
import palmturn.trial.PackOrigin;
import palmturn.trial.Reading;
import palmturn.trial.Received;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.StartedFrom;
import palmturn.trial.TimedBy;
import palmturn.trial.Zone;

/** The form of a reading and its marks, the same in a trial's file and in its journal. */
final class MarksJson {
  /** No clip is longer, in seconds. */
  static final double MOST_S = 1_000_000;

  private MarksJson() {}

  static Reading reading(Keys keys) throws JsonException {
    String reader = keys.text("reader");
    if (reader.isBlank()) {
      throw keys.fault("a reader needs a name");
    }
    return new Reading(
        reader,
        keys.parsed("state", MarksJson::finished),
        keys.parsed("startedFrom", StartedFrom::parse),
        keys.flag("estimateSeen", false),
        keys.texts("reopenedAt", Instant::parse),
        received(keys, reader),
        keys.list("slaps", MarksJson::slap),
        keys.list("spans", MarksJson::span),
        keys.rest());
  }

  private static @Nullable Received received(Keys keys, String reader) throws JsonException {
    String sha256 = keys.parsedOrNull("receivedSha256", TrialJson::sha256);
    String by = keys.textOrNull("receivedReader");
    PackOrigin pack = pack(keys);
    boolean changed = keys.flag("receivedChanged", false);
    return sha256 == null ? null : new Received(by == null ? reader : by, pack, sha256, changed);
  }

  static @Nullable PackOrigin pack(Keys keys) throws JsonException {
    Instant at = keys.parsedOrNull("packedAt", Instant::parse);
    Double place = keys.numberOrNull("packedPlace", 0, 1_000_000);
    return at == null ? null : new PackOrigin(at, place == null ? 0 : place.intValue());
  }

  private static boolean finished(String state) {
    return switch (state) {
      case "open" -> false;
      case "finished" -> true;
      default ->
          throw new IllegalArgumentException("\"%s\" is not open or finished".formatted(state));
    };
  }

  static Slap slap(Keys keys) throws JsonException {
    return new Slap(
        keys.coded("kind", Slap.Kind.class),
        keys.number("timeS", -MOST_S, MOST_S),
        keys.coded("side", Side.class),
        keys.coded("zone", Zone.class),
        keys.coded("timedBy", TimedBy.class),
        keys.number("resolutionS", 0, 60),
        keys.numberOrNull("pictureS", -MOST_S, MOST_S),
        keys.numberOrNull("soundS", -MOST_S, MOST_S),
        keys.flag("seen", true),
        keys.textOrEmpty("note"),
        keys.rest());
  }

  static Span span(Keys keys) throws JsonException {
    return new Span(
        keys.coded("kind", Span.SpanKind.class),
        keys.number("startS", -MOST_S, MOST_S),
        keys.number("endS", -MOST_S, MOST_S),
        keys.textOrEmpty("note"),
        keys.rest());
  }

  static ObjectNode write(Reading reading) {
    ObjectNode node = JsonText.object();
    node.put("reader", reading.reader());
    node.put("state", reading.finished() ? "finished" : "open");
    RecordForm.put(
        node,
        reading,
        "startedFrom=startedFrom.code estimateSeen* reopenedAt* receivedSha256=received.sha256?"
            + " receivedReader=received.reader? packedAt=received.pack.at?"
            + " packedPlace=received.pack.place? receivedChanged=received.changed*");
    node.set("slaps", RecordForm.all(reading.slaps(), MarksJson::write));
    node.set("spans", RecordForm.all(reading.spans(), MarksJson::write));
    return RecordForm.extra(node, reading.extra());
  }

  static ObjectNode write(Slap slap) {
    return RecordForm.extra(
        RecordForm.of(
            slap, "kind timeS side zone timedBy resolutionS pictureS? soundS? seen note*"),
        slap.extra());
  }

  static ObjectNode write(Span span) {
    return RecordForm.extra(RecordForm.of(span, "kind startS endS note*"), span.extra());
  }
}
