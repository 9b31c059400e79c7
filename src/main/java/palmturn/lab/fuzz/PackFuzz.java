package palmturn.lab.fuzz;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import palmturn.clip.Progress;
import palmturn.json.SessionJson;
import palmturn.json.TrialJson;
import palmturn.store.PackWriter;
import palmturn.store.SessionFolder;
import palmturn.trial.ClipRef;
import palmturn.trial.Decision;
import palmturn.trial.Extra;
import palmturn.trial.Hand;
import palmturn.trial.Message;
import palmturn.trial.Mirrored;
import palmturn.trial.Reading;
import palmturn.trial.Session;
import palmturn.trial.Settlement;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.StartedFrom;
import palmturn.trial.TimeScale;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.trial.UserError;
import palmturn.trial.Zone;
import palmturn.work.pack.Packing;
import palmturn.work.pack.Unpacking;
import palmturn.work.score.Scoring;

/**
 * Packs of one session with readers, marks, decisions and messages of any number and any date,
 * unpacked in several orders: each must end in the same session, with everything of every pack in
 * it and nothing of its owner's changed.
 */
public final class PackFuzz {
  private static final Instant NOW = Instant.parse("2026-12-01T09:00:00Z");
  private static final Clock CLOCK = Clock.fixed(NOW, ZoneOffset.UTC);
  private static final LocalDate DAY = LocalDate.of(2026, 11, 13);
  private static final List<String> READERS = List.of("A", "a", "B", "C", "Ä", "А");
  private static final int ORDERS = 4;

  private final Path work;
  private final List<String> faults = new ArrayList<>();
  private int packs;
  private int unpacked;

  /**
   * A run.
   *
   * @param work an empty folder, which is empty again after it
   */
  public PackFuzz(Path work) {
    this.work = work;
  }

  /** Returns what went wrong, a line each; empty for nothing. */
  public List<String> faults() {
    return faults;
  }

  /** Returns what was done, in one line. */
  public String report() {
    return String.format(
        Locale.ROOT, "%d packs, unpacked %d times: %d faults", packs, unpacked, faults.size());
  }

  /** Tries the sessions of a range of seeds. */
  public void run(long firstSeed, int howMany) throws IOException, UserError {
    for (long seed = firstSeed; seed < firstSeed + howMany; seed++) {
      run(seed);
      clear();
    }
  }

  private void run(long seed) throws IOException, UserError {
    Random random = new Random(seed);
    List<Trial> sent = new ArrayList<>();
    List<Session> sessions = new ArrayList<>();
    int count = 2 + random.nextInt(3);
    for (int i = 0; i < count; i++) {
      sent.add(trial(random));
      sessions.add(session(random));
      write(i, sessions.get(i), sent.get(i), moment(random));
    }
    @Nullable Trial own = random.nextBoolean() ? trial(random) : null;
    @Nullable Map<String, String> first = null;
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      order.add(i);
    }
    for (int run = 0; run < ORDERS; run++) {
      Collections.shuffle(order, random);
      Path into = work.resolve("session-" + run);
      if (own != null) {
        try (SessionFolder mine = SessionFolder.create(into, Session.begin("H-07", DAY))) {
          mine.save(own);
        }
      }
      for (int pack : order) {
        Unpacking.unpack(pack(pack), into, false, CLOCK);
        unpacked++;
      }
      Map<String, String> files = files(into);
      first = first == null ? files : first;
      expect(first.equals(files), seed, "order " + order + " ends in another session");
      check(into, own, sent, sessions, seed);
    }
  }

  private void check(
      Path into, @Nullable Trial own, List<Trial> sent, List<Session> sessions, long seed)
      throws UserError, IOException {
    try (SessionFolder folder = SessionFolder.openReadOnly(into)) {
      Trial merged = folder.trials().get(0);
      List<List<Slap>> marks = merged.readings().stream().map(Reading::slaps).toList();
      for (Trial each : sent) {
        each.readings()
            .forEach(reading -> expect(marks.contains(reading.slaps()), seed, "marks are lost"));
      }
      for (Session each : sessions) {
        expect(folder.session().messages().containsAll(each.messages()), seed, "a message is lost");
      }
      if (own != null && !own.readings().isEmpty()) {
        expect(merged.readings().containsAll(own.readings()), seed, "own marks changed");
        expect(
            Objects.equals(Scoring.choice(null).of(own), Scoring.choice(null).of(merged)),
            seed,
            "another reading is scored");
      }
      Path again = work.resolve("again.zip");
      Packing.write(
          folder, Packing.ClipsAs.LEFT_OUT, Packing.SoundAs.NONE, again, CLOCK, Progress.NONE);
      Path back = work.resolve("back");
      Unpacking.unpack(again, back, false, CLOCK);
      Unpacking.Unpacked twice = Unpacking.unpack(again, into, false, CLOCK);
      expect(twice.brought().isEmpty(), seed, "its own pack brings something: " + twice.brought());
      clear(back);
    }
    try (Stream<Path> left = Files.list(work)) {
      expect(
          left.noneMatch(file -> file.toString().endsWith(".part")), seed, "a work file is left");
    }
  }

  private void expect(boolean holds, long seed, String fault) {
    if (!holds) {
      faults.add(String.format(Locale.ROOT, "seed %d: %s", seed, fault));
    }
  }

  private static Trial trial(Random random) {
    List<Reading> readings = new ArrayList<>();
    for (String reader : READERS) {
      if (random.nextInt(3) == 0) {
        readings.add(reading(reader, random));
      }
    }
    Collections.shuffle(readings, random);
    List<Settlement> settlements = new ArrayList<>();
    if (readings.size() > 1 && random.nextBoolean()) {
      Settlement settlement = Settlement.begin(readings.get(0).reader(), readings.get(1).reader());
      for (int i = random.nextInt(4); i > 0; i--) {
        settlement = settlement.plusSlap(decision(random));
      }
      settlements.add(settlement);
    }
    TrialId id = new TrialId(Hand.RIGHT, "baseline", 1);
    return new Trial(
            id,
            new ClipRef("clips/" + id.name() + ".mp4", "0".repeat(64), 1 / 60.0, Extra.NONE),
            null,
            null,
            Mirrored.FALSE,
            null,
            TimeScale.REAL,
            null,
            null,
            readings,
            null,
            Extra.NONE)
        .withSettlements(settlements);
  }

  private static Reading reading(String reader, Random random) {
    Reading reading = Reading.begin(reader, StartedFrom.NOTHING).withFinished(random.nextBoolean());
    int marks = random.nextInt(8) == 0 ? 2_000 : random.nextInt(4);
    List<Slap> slaps = new ArrayList<>();
    for (int i = 0; i < marks; i++) {
      slaps.add(slap(i + random.nextInt(2) * 0.5));
    }
    return reading.withSlaps(slaps);
  }

  private static Slap slap(double timeS) {
    return Slap.onFrame(Slap.Kind.SLAP, timeS, 1 / 60.0, Side.PALM, Zone.CENTRE);
  }

  private static Decision<Slap> decision(Random random) {
    Decision.Choice[] choices = Decision.Choice.values();
    return new Decision<>(
        choices[random.nextInt(choices.length)],
        READERS.get(random.nextInt(READERS.size())),
        moment(random),
        "",
        slap(random.nextInt(2)),
        null,
        null,
        Extra.NONE);
  }

  private static Session session(Random random) {
    List<Message> messages = new ArrayList<>();
    for (int i = random.nextInt(4); i > 0; i--) {
      messages.add(
          new Message("coach", moment(random), null, null, "m" + random.nextInt(3), Extra.NONE));
    }
    return Session.begin("H-07", DAY).withMessages(messages);
  }

  private static Instant moment(Random random) {
    return switch (random.nextInt(4)) {
      case 0 -> Instant.EPOCH.plusSeconds(random.nextInt(2));
      case 1 -> Instant.parse("2099-01-01T00:00:00Z").plusSeconds(random.nextInt(2));
      default -> NOW.minusSeconds(86_400L * random.nextInt(4) + random.nextInt(2));
    };
  }

  private Path pack(int number) {
    return work.resolve("pack-" + number + ".zip");
  }

  private void write(int number, Session session, Trial trial, Instant at)
      throws IOException, UserError {
    try (PackWriter writer = PackWriter.create(pack(number))) {
      writer.add("session.json", SessionJson.write(session));
      writer.add("trials/" + trial.id().name() + ".json", TrialJson.write(trial));
      writer.finish(session, at);
    }
    packs++;
  }

  private static Map<String, String> files(Path folder) throws IOException {
    Map<String, String> files = new TreeMap<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        files.put(folder.relativize(file).toString(), Files.readString(file));
      }
    }
    return files;
  }

  private void clear() throws IOException {
    try (Stream<Path> all = Files.list(work)) {
      for (Path each : all.toList()) {
        clear(each);
      }
    }
  }

  private static void clear(Path path) throws IOException {
    try (Stream<Path> all = Files.walk(path)) {
      for (Path each : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(each);
      }
    }
  }
}
