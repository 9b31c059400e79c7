package palmturn.work.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.Arrays;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.json.SessionJson;
import palmturn.json.TrialJson;
import palmturn.lab.fuzz.Mutation;
import palmturn.lab.fuzz.TextMutation;
import palmturn.store.PackWriter;
import palmturn.store.SessionFolder;
import palmturn.trial.SampleFiles;
import palmturn.trial.UserError;
import palmturn.work.pack.Unpacking;

/** Packs damaged by seed: unpacked, or refused in one line with nothing written or overwritten. */
class HostilePackTest {
  private static final int EACH = Integer.getInteger("palmturn.fuzz.packs", 60);
  private static final long SEED = 20_260_702;
  private static final String SESSION = SessionJson.write(SampleFiles.fullSession());
  private static final String TRIAL = TrialJson.write(SampleFiles.fullTrial());
  private static final String TRIAL_NAME = "trials/" + SampleFiles.RIGHT.name() + ".json";

  @TempDir Path temp;
  private Path pack;
  private Path fresh;
  private Path mine;

  @BeforeEach
  void aSessionOfMine() throws Exception {
    pack = temp.resolve("sent.zip");
    fresh = temp.resolve("fresh");
    mine = temp.resolve("mine");
    try (SessionFolder session = SessionFolder.create(mine, SampleFiles.fullSession())) {
      session.save(SampleFiles.fullTrial());
    }
  }

  private void packed(String session, String trial) throws Exception {
    try (PackWriter writer = PackWriter.create(pack)) {
      writer.add("session.json", session);
      writer.add(TRIAL_NAME, trial);
      writer.finish(SampleFiles.fullSession(), Instant.EPOCH);
    }
  }

  @Test
  void anyByteMayBeDamaged() throws Exception {
    packed(SESSION, TRIAL);
    byte[] good = Files.readAllBytes(pack);
    int taken = 0;
    for (long seed = SEED; seed < SEED + EACH; seed++) {
      byte[] bad = Mutation.of(good, new Random(seed));
      Files.write(pack, bad);
      taken += Arrays.equals(good, bad) ? 0 : unpacked(seed);
    }
    assertTrue(taken < EACH, "some are refused");
  }

  /** The list of files agrees with what is in it, as one who means harm would see to. */
  @Test
  void anyTextInItMayBeHostile() throws Exception {
    int taken = 0;
    for (long seed = SEED; seed < SEED + EACH; seed++) {
      Random random = new Random(seed);
      boolean session = random.nextBoolean();
      packed(
          session ? TextMutation.of(SESSION, random) : SESSION,
          session ? TRIAL : TextMutation.of(TRIAL, random));
      taken += unpacked(seed);
    }
    assertTrue(taken < EACH, "some are refused");
  }

  /** Returns 1 if the pack was taken as a new session, 0 if it was refused. */
  private int unpacked(long seed) throws Exception {
    Map<String, Integer> before = hashes(mine);
    int taken = unpackedInto(fresh, seed);
    if (taken == 0) {
      assertFalse(Files.exists(fresh), "seed " + seed);
    } else {
      SessionFolder.open(fresh).close();
      deleteAll(fresh);
    }
    if (unpackedInto(mine, seed) == 0) {
      assertEquals(before, hashes(mine), "seed " + seed);
    }
    try (SessionFolder session = SessionFolder.open(mine)) {
      assertTrue(
          session
              .trial(SampleFiles.RIGHT)
              .readings()
              .containsAll(SampleFiles.fullTrial().readings()),
          "one's own marks stay: seed " + seed);
    }
    try (Stream<Path> files = Files.list(temp)) {
      assertEquals(2, files.count(), "nothing is left beside them: seed " + seed);
    }
    return taken;
  }

  private int unpackedInto(Path into, long seed) {
    try {
      Unpacking.unpack(pack, into, false, Clock.systemUTC());
      return 1;
    } catch (UserError e) {
      String message = String.valueOf(e.getMessage());
      assertEquals(1, message.lines().count(), "seed " + seed + ": " + message);
      assertTrue(message.length() < 1_000, "seed " + seed + ": " + message);
      return 0;
    } catch (RuntimeException e) {
      throw new AssertionError("seed " + seed + ": " + e, e);
    }
  }

  private static Map<String, Integer> hashes(Path folder) throws IOException {
    Map<String, Integer> hashes = new TreeMap<>();
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        hashes.put(file.toString(), Arrays.hashCode(Files.readAllBytes(file)));
      }
    }
    return hashes;
  }

  private static void deleteAll(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(java.util.Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }
}
