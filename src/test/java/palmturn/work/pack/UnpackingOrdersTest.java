package palmturn.work.pack;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.json.SessionJson;
import palmturn.json.TrialJson;
import palmturn.store.PackWriter;
import palmturn.store.SessionFolder;
import palmturn.trial.Decision;
import palmturn.trial.Extra;
import palmturn.trial.Message;
import palmturn.trial.Reading;
import palmturn.trial.SampleFiles;
import palmturn.trial.Session;
import palmturn.trial.Settlement;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.StartedFrom;
import palmturn.trial.Trial;
import palmturn.trial.Zone;
import palmturn.work.score.LastSettled;
import palmturn.work.score.Scoring;

/** An old, a forged and a newer pack of one session: nothing lost, nothing overruled, any order. */
class UnpackingOrdersTest {
  private static final Clock NOW =
      Clock.fixed(Instant.parse("2026-12-01T09:00:00Z"), ZoneOffset.UTC);
  private static final Instant OLD = Instant.parse("2026-11-14T08:00:00Z");
  private static final Instant NEWER = Instant.parse("2026-11-20T08:00:00Z");
  private static final Instant FAR = Instant.parse("2099-01-01T00:00:00Z");
  private static final int[][] ORDERS = {
    {0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}
  };
  private static final Slap SLAP =
      Slap.onFrame(Slap.Kind.SLAP, 1.0, 1 / 60.0, Side.PALM, Zone.CENTRE);

  @TempDir Path folder;
  private final List<Path> packs = new ArrayList<>();

  @BeforeEach
  void threePacks() throws Exception {
    Reading b = reading("B", 1.0, 1.2, 1.4);
    Reading oldA = reading("A", 1.0, 1.2);
    Reading newA = reading("A", 1.0, 1.2, 1.4, 1.6);
    Reading forgedA = reading("A", 0.5);
    pack(OLD, trial(settled(OLD, Decision.Choice.FIRST), oldA, b), message("A", OLD, "one"));
    pack(
        OLD,
        trial(settled(FAR, Decision.Choice.SECOND), forgedA, b),
        message("A", OLD, "one"),
        message("A", FAR, "from afar"));
    pack(
        NEWER,
        trial(settled(OLD, Decision.Choice.FIRST), newA, b, reading("C", 1.1)),
        message("A", OLD, "one"),
        message("A", NEWER, "two"));
  }

  private static Reading reading(String reader, double... timesS) {
    Reading reading = Reading.begin(reader, StartedFrom.NOTHING).withFinished(true);
    for (double timeS : timesS) {
      reading = reading.plus(Slap.onFrame(Slap.Kind.SLAP, timeS, 1 / 60.0, Side.PALM, Zone.CENTRE));
    }
    return reading;
  }

  private static Settlement settled(Instant at, Decision.Choice choice) {
    return Settlement.begin("B", "C").plusSlap(decision(at, choice, "B"));
  }

  private static Decision<Slap> decision(Instant at, Decision.Choice choice, String by) {
    return new Decision<>(choice, by, at, "", SLAP, null, null, Extra.NONE);
  }

  private static Trial trial(Settlement settlement, Reading... readings) {
    Trial trial = SampleFiles.plainTrial(SampleFiles.RIGHT).withReadings(List.of(readings));
    return trial.reading("C").isPresent() ? trial.withSettlement(settlement) : trial;
  }

  private static Message message(String from, Instant at, String text) {
    return new Message(from, at, null, null, text, Extra.NONE);
  }

  private void pack(Instant at, Trial trial, Message... messages) throws Exception {
    Path file = folder.resolve("pack-" + packs.size() + ".zip");
    Session session = session().withMessages(List.of(messages));
    try (PackWriter writer = PackWriter.create(file)) {
      writer.add("session.json", SessionJson.write(session));
      writer.add("trials/" + trial.id().name() + ".json", TrialJson.write(trial));
      writer.finish(session, at);
    }
    packs.add(file);
  }

  private static Session session() {
    return Session.begin("H-07", java.time.LocalDate.of(2026, 11, 13))
        .withFilmed(List.of(SampleFiles.RIGHT));
  }

  /** Returns each file of the session after all packs came in an order. */
  private Map<String, String> after(int[] order, @Nullable Trial own) throws Exception {
    Path into = folder.resolve("session-" + order[0] + order[1] + order[2] + (own == null));
    if (own != null) {
      try (SessionFolder mine = SessionFolder.create(into, session())) {
        mine.save(own);
      }
    }
    for (int each : order) {
      Unpacking.unpack(packs.get(each), into, false, NOW);
    }
    for (int each : order) {
      Unpacking.Unpacked again = Unpacking.unpack(packs.get(each), into, false, NOW);
      assertEquals(List.of(), again.brought(), "nothing comes twice");
    }
    Map<String, String> files = new TreeMap<>();
    try (Stream<Path> all = Files.walk(into)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        files.put(into.relativize(file).toString(), Files.readString(file));
      }
    }
    return files;
  }

  private static Trial trial(Map<String, String> files) throws Exception {
    return TrialJson.read(
        String.valueOf(files.get("trials/" + SampleFiles.RIGHT.name() + ".json")));
  }

  @Test
  void aNewSessionIsTheSameInAllOrders() throws Exception {
    Map<String, String> first = after(ORDERS[0], null);
    for (int[] order : ORDERS) {
      if (order != ORDERS[0]) {
        assertEquals(first, after(order, null));
      }
    }
    Trial trial = trial(first);
    List<String> names = trial.readings().stream().map(Reading::reader).toList();
    assertEquals(5, names.size(), names.toString());
    assertTrue(names.contains("B") && names.contains("C"), names.toString());
    assertTrue(names.contains("A, from the pack of 20 Nov"), names.toString());
    assertEquals(
        2, names.stream().filter(name -> name.startsWith("A, from the pack of 14 Nov (")).count());
    List<Integer> marks = trial.readings().stream().map(r -> r.slaps().size()).sorted().toList();
    assertEquals(List.of(1, 1, 2, 3, 4), marks, "the readings of all three packs are whole");
    Session session = SessionJson.read(String.valueOf(first.get("session.json")));
    assertEquals(
        List.of("from afar", "one", "two"),
        session.messages().stream().map(Message::text).toList(),
        "one dated 2099 is not the last word");
  }

  @Test
  void readingsUnderNamesOfTheProgramAreLeftOut() throws Exception {
    for (String name : List.of("A, from the pack of 14 Nov", "estimate", "settled")) {
      pack(NEWER, trial(settled(OLD, Decision.Choice.OPEN), reading(name, 1.0)));
      Path into = folder.resolve("names-" + packs.size());
      var done = Unpacking.unpack(packs.get(packs.size() - 1), into, false, NOW);
      assertTrue(done.left().toString().contains("as no person is called"), done.toString());
      try (SessionFolder session = SessionFolder.openReadOnly(into)) {
        assertEquals(List.of(), session.trials().get(0).readings());
      }
    }
  }

  @Test
  void onesOwnReadingAndDecisionsStandInAllOrders() throws Exception {
    Reading mine = reading("A", 1.0, 1.3, 1.6);
    Trial own =
        trial(
            Settlement.begin("B", "C").plusSlap(decision(NEWER, Decision.Choice.NEITHER, "A")),
            mine,
            reading("B", 1.0, 1.2, 1.4),
            reading("C", 1.1));
    Map<String, String> first = after(ORDERS[0], own);
    for (int[] order : ORDERS) {
      if (order != ORDERS[0]) {
        assertEquals(first, after(order, own));
      }
    }
    Trial trial = trial(first);
    assertEquals(mine, trial.reading("A").orElseThrow());
    assertEquals(6, trial.readings().size());
    assertEquals(
        Scoring.choice(null).of(own), Scoring.choice(null).of(trial), "the same reading is scored");
    var settled = LastSettled.of(trial);
    assertTrue(settled != null, "one's own settlement is the last");
    assertTrue(
        settled.slaps().stream()
            .filter(each -> SLAP.equals(each.difference().a()))
            .allMatch(
                each ->
                    each.decision() != null
                        && each.decision().choice() == Decision.Choice.NEITHER));
    List<Decision<Slap>> all = trial.settlement("B", "C").orElseThrow().slaps();
    assertEquals(2, all.size(), "the packs' decision is kept beside: " + all);
  }
}
