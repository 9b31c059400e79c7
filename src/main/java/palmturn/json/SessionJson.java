package palmturn.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Block;
import palmturn.trial.BodyLength;
import palmturn.trial.Coded;
import palmturn.trial.Drill;
import palmturn.trial.DrillHand;
import palmturn.trial.Hand;
import palmturn.trial.Message;
import palmturn.trial.Session;
import palmturn.trial.TrialId;

/** The form of {@code session.json}; every key is described in docs/file-format.md. */
public final class SessionJson {
  private static final Format FORMAT = new Format("palmturn-session", List.of());

  private SessionJson() {}

  /**
   * Reads a session.
   *
   * @throws JsonException if the text is damaged, newer than this program, or holds a value that
   *     can't be
   */
  public static Session read(String text) throws JsonException {
    Keys keys = FORMAT.open(text);
    String athlete = keys.text("athlete");
    LocalDate date = keys.parsed("date", LocalDate::parse);
    Session.Facts facts =
        new Session.Facts(
            keys.parsedOrNull("racketHand", code -> Coded.parse(Hand.class, code)),
            lengthOrNull(keys, "forearmCm", BodyLength.FOREARM),
            lengthOrNull(keys, "handCm", BodyLength.HAND),
            lengthOrNull(keys, "statureCm", BodyLength.STATURE),
            keys.textOrNull("painToday"),
            keys.flagOrNull("guardianConsent"),
            keys.textOrNull("camera"),
            keys.textOrNull("club"));
    Double windowS = keys.above0OrNull("windowS", 600);
    List<Block> blocks = keys.list("blocks", SessionJson::block);
    refuseTwice(keys, blocks);
    return new Session(
        athlete,
        date,
        facts,
        windowS == null ? Session.DEFAULT_WINDOW_S : windowS,
        blocks,
        keys.texts("filmed", TrialId::parse),
        keys.list("messages", SessionJson::message),
        keys.rest());
  }

  private static @Nullable Double lengthOrNull(Keys keys, String key, BodyLength what)
      throws JsonException {
    return what.leastKeptCm() == 0
        ? keys.above0OrNull(key, what.mostCm())
        : keys.numberOrNull(key, what.leastKeptCm(), what.mostCm());
  }

  private static void refuseTwice(Keys keys, List<Block> blocks) throws JsonException {
    Set<String> names = new HashSet<>();
    for (Block block : blocks) {
      if (!names.add(block.name())) {
        throw keys.fault("two blocks named " + block.name());
      }
    }
  }

  private static Block block(Keys keys) throws JsonException {
    String name = keys.text("name");
    Drill drill = keys.objectOrNull("drill", SessionJson::drill);
    return keys.make(() -> new Block(name, drill, keys.rest()));
  }

  private static Drill drill(Keys keys) throws JsonException {
    return new Drill(
        keys.text("code"),
        keys.parsed("hand", code -> Coded.parse(DrillHand.class, code)),
        keys.textOrEmpty("dose"),
        keys.parsedOrNull("start", Instant::parse),
        keys.parsedOrNull("end", Instant::parse),
        keys.rest());
  }

  private static Message message(Keys keys) throws JsonException {
    return new Message(
        keys.text("from"),
        keys.parsed("at", Instant::parse),
        keys.parsedOrNull("trial", TrialId::parse),
        keys.numberOrNull("timeS", -MarksJson.MOST_S, MarksJson.MOST_S),
        keys.text("text"),
        keys.rest());
  }

  /** Returns the text of {@code session.json}. */
  public static String write(Session session) {
    ObjectNode file = FORMAT.begin();
    file.put("athlete", session.athlete());
    file.put("date", session.date().toString());
    Session.Facts facts = session.facts();
    Put.text(file, "racketHand", facts.racketHand() == null ? null : facts.racketHand().code());
    Put.number(file, "forearmCm", facts.forearmCm());
    Put.number(file, "handCm", facts.handCm());
    Put.number(file, "statureCm", facts.statureCm());
    Put.text(file, "painToday", facts.painToday());
    if (facts.guardianConsent() != null) {
      file.put("guardianConsent", facts.guardianConsent());
    }
    Put.text(file, "camera", facts.camera());
    Put.text(file, "club", facts.club());
    Put.number(file, "windowS", session.windowS());
    ArrayNode blocks = file.putArray("blocks");
    session.blocks().forEach(block -> blocks.add(write(block)));
    ArrayNode filmed = file.putArray("filmed");
    session.filmed().forEach(id -> filmed.add(id.name()));
    ArrayNode messages = file.putArray("messages");
    session.messages().forEach(message -> messages.add(write(message)));
    return JsonText.page(Put.extra(file, session.extra()));
  }

  private static ObjectNode write(Block block) {
    ObjectNode node = JsonText.object().put("name", block.name());
    if (block.drill() != null) {
      node.set("drill", write(block.drill()));
    }
    return Put.extra(node, block.extra());
  }

  private static ObjectNode write(Drill drill) {
    ObjectNode node = JsonText.object();
    node.put("code", drill.code());
    node.put("hand", drill.hand().code());
    Put.words(node, "dose", drill.dose());
    Put.text(node, "start", drill.start() == null ? null : drill.start().toString());
    Put.text(node, "end", drill.end() == null ? null : drill.end().toString());
    return Put.extra(node, drill.extra());
  }

  private static ObjectNode write(Message message) {
    ObjectNode node = JsonText.object();
    node.put("from", message.from());
    node.put("at", message.at().toString());
    Put.text(node, "trial", message.trial() == null ? null : message.trial().name());
    Put.number(node, "timeS", message.timeS());
    node.put("text", message.text());
    return Put.extra(node, message.extra());
  }
}
