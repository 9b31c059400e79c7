package palmturn.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import palmturn.trial.Coded;
import palmturn.trial.Reading;
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
        keys.parsedOrNull("receivedSha256", TrialJson::sha256),
        keys.list("slaps", MarksJson::slap),
        keys.list("spans", MarksJson::span),
        keys.rest());
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
        keys.parsed("kind", code -> Coded.parse(Slap.Kind.class, code)),
        keys.number("timeS", -MOST_S, MOST_S),
        keys.parsed("side", code -> Coded.parse(Side.class, code)),
        keys.parsed("zone", code -> Coded.parse(Zone.class, code)),
        keys.parsed("timedBy", code -> Coded.parse(TimedBy.class, code)),
        keys.number("resolutionS", 0, 60),
        keys.numberOrNull("pictureS", -MOST_S, MOST_S),
        keys.numberOrNull("soundS", -MOST_S, MOST_S),
        keys.flag("seen", true),
        keys.textOrEmpty("note"),
        keys.rest());
  }

  static Span span(Keys keys) throws JsonException {
    Span.Kind kind = keys.parsed("kind", code -> Coded.parse(Span.Kind.class, code));
    double startS = keys.number("startS", -MOST_S, MOST_S);
    double endS = keys.number("endS", -MOST_S, MOST_S);
    String note = keys.textOrEmpty("note");
    return keys.make(() -> new Span(kind, startS, endS, note, keys.rest()));
  }

  static ObjectNode write(Reading reading) {
    ObjectNode node = JsonText.object();
    node.put("reader", reading.reader());
    node.put("state", reading.finished() ? "finished" : "open");
    node.put("startedFrom", reading.startedFrom().code());
    if (reading.estimateSeen()) {
      node.put("estimateSeen", true);
    }
    if (!reading.reopenedAt().isEmpty()) {
      ArrayNode moments = node.putArray("reopenedAt");
      reading.reopenedAt().forEach(moment -> moments.add(moment.toString()));
    }
    Put.text(node, "receivedSha256", reading.receivedSha256());
    ArrayNode slaps = node.putArray("slaps");
    reading.slaps().forEach(slap -> slaps.add(write(slap)));
    ArrayNode spans = node.putArray("spans");
    reading.spans().forEach(span -> spans.add(write(span)));
    return Put.extra(node, reading.extra());
  }

  static ObjectNode write(Slap slap) {
    ObjectNode node = JsonText.object();
    node.put("kind", slap.kind().code());
    Put.number(node, "timeS", slap.timeS());
    node.put("side", slap.side().code());
    node.put("zone", slap.zone().code());
    node.put("timedBy", slap.timedBy().code());
    Put.number(node, "resolutionS", slap.resolutionS());
    Put.number(node, "pictureS", slap.pictureS());
    Put.number(node, "soundS", slap.soundS());
    node.put("seen", slap.seen());
    Put.words(node, "note", slap.note());
    return Put.extra(node, slap.extra());
  }

  static ObjectNode write(Span span) {
    ObjectNode node = JsonText.object();
    node.put("kind", span.kind().code());
    Put.number(node, "startS", span.startS());
    Put.number(node, "endS", span.endS());
    Put.words(node, "note", span.note());
    return Put.extra(node, span.extra());
  }
}
