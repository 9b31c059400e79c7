package palmturn.json;

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
    return new Session(
        keys.text("athlete"),
        keys.parsed("date", LocalDate::parse),
        new Session.Facts(
            keys.parsedOrNull("racketHand", code -> Coded.parse(Hand.class, code)),
            lengthOrNull(keys, "forearmCm", BodyLength.FOREARM),
            lengthOrNull(keys, "handCm", BodyLength.HAND),
            lengthOrNull(keys, "statureCm", BodyLength.STATURE),
            keys.textOrNull("painToday"),
            keys.flagOrNull("guardianConsent"),
            keys.textOrNull("camera"),
            keys.textOrNull("club")),
        windowS(keys),
        blocks(keys),
        keys.texts("filmed", TrialId::parse),
        keys.list("messages", SessionJson::message),
        keys.rest());
  }

  private static double windowS(Keys keys) throws JsonException {
    Double windowS = keys.above0OrNull("windowS", 600);
    return windowS == null ? Session.DEFAULT_WINDOW_S : windowS;
  }

  private static @Nullable Double lengthOrNull(Keys keys, String key, BodyLength what)
      throws JsonException {
    return what.leastKeptCm() == 0
        ? keys.above0OrNull(key, what.mostCm())
        : keys.numberOrNull(key, what.leastKeptCm(), what.mostCm());
  }

  private static List<Block> blocks(Keys keys) throws JsonException {
    List<Block> blocks = keys.list("blocks", SessionJson::block);
    Set<String> names = new HashSet<>();
    for (Block block : blocks) {
      if (!names.add(block.name())) {
        throw keys.fault("two blocks named " + block.name());
      }
    }
    return blocks;
  }

  private static Block block(Keys keys) throws JsonException {
    return new Block(
        keys.text("name"), keys.objectOrNull("drill", SessionJson::drill), keys.rest());
  }

  private static Drill drill(Keys keys) throws JsonException {
    return new Drill(
        keys.text("code"),
        keys.coded("hand", DrillHand.class),
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
    ObjectNode file = RecordForm.put(FORMAT.begin(), session, "athlete date");
    RecordForm.put(
        file,
        session.facts(),
        "racketHand? forearmCm? handCm? statureCm? painToday? guardianConsent? camera? club?");
    RecordForm.put(file, session, "windowS");
    file.set("blocks", RecordForm.all(session.blocks(), SessionJson::write));
    file.set("filmed", RecordForm.all(session.filmed(), id -> JsonText.tree(id.name())));
    file.set(
        "messages",
        RecordForm.all(
            session.messages(),
            each ->
                RecordForm.extra(
                    RecordForm.of(each, "from at trial=trial.name? timeS? text"), each.extra())));
    return JsonText.page(RecordForm.extra(file, session.extra()));
  }

  private static ObjectNode write(Block block) {
    ObjectNode node = RecordForm.of(block, "name");
    Drill drill = block.drill();
    if (drill != null) {
      node.set(
          "drill",
          RecordForm.extra(RecordForm.of(drill, "code hand dose* start? end?"), drill.extra()));
    }
    return RecordForm.extra(node, block.extra());
  }
}
