package palmturn.work.pack;

import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipHash;
import palmturn.json.TrialJson;
import palmturn.trial.PackOrigin;
import palmturn.trial.Reading;
import palmturn.trial.Received;

/**
 * The readings of a trial and those of the same trial in packs. None takes another's place: what
 * differs under the same initials is kept beside, named by its pack. The result is the same in
 * whatever order packs arrive.
 */
final class MergedReadings {
  private static final int CODE_DIGITS = 6;

  private final Arrival arrival;
  private final List<Reading> own = new ArrayList<>();

  /** Under their makers' names. */
  private final List<Reading> received = new ArrayList<>();

  private final Map<String, String> keysHere = new HashMap<>();
  private final Map<String, String> keysInPack = new HashMap<>();
  private final List<String> newKeys = new ArrayList<>();
  private final List<String> refused = new ArrayList<>();

  private MergedReadings(Arrival arrival) {
    this.arrival = arrival;
  }

  static MergedReadings of(List<Reading> here, List<Reading> packed, Arrival arrival) {
    MergedReadings merged = new MergedReadings(arrival);
    here.forEach(merged::addHere);
    for (int place = 0; place < packed.size(); place++) {
      merged.addPacked(packed.get(place), place);
    }
    return merged;
  }

  private void addHere(Reading reading) {
    if (isOwn(reading)) {
      own.add(reading);
      keysHere.put(reading.reader(), ownKey(reading));
    } else {
      Reading made = reading.by(Arrival.maker(reading));
      received.add(made);
      keysHere.put(reading.reader(), key(made));
    }
  }

  private void addPacked(Reading packed, int place) {
    String maker = isOwn(packed) ? packed.reader() : Arrival.maker(packed);
    if (!Arrival.isPersons(maker)) {
      refused.add(packed.reader());
      return;
    }
    Reading made = packed.by(maker);
    String sha256 = sha256(made);
    Reading fresh = made.withReceived(new Received(maker, arrival.origin(place), sha256, false));
    keysInPack.put(packed.reader(), add(fresh, sha256));
  }

  /** Adds a reading unless it is here, and returns the key under which it is found. */
  private String add(Reading fresh, String sha256) {
    for (Reading mine : own) {
      Received came = mine.received();
      // What was sent from here, or has been worked on since it came, comes back as it was.
      boolean known = came != null && came.sha256().equals(sha256);
      if (mine.reader().equals(fresh.reader()) && (known || sha256(mine).equals(sha256))) {
        return ownKey(mine);
      }
    }
    for (int i = 0; i < received.size(); i++) {
      Reading known = received.get(i);
      if (key(known).equals(key(fresh))) {
        received.set(i, known.withReceived(earlier(known, fresh)));
        return key(fresh);
      }
    }
    received.add(fresh);
    newKeys.add(key(fresh));
    return key(fresh);
  }

  private static @Nullable Received earlier(Reading known, Reading fresh) {
    Received came = known.received();
    return came == null
        ? fresh.received()
        : new Received(
            came.reader(), Arrival.earlier(came.pack(), origin(fresh)), came.sha256(), false);
  }

  /** Returns all: those made here first, then the others by their packs. */
  List<Reading> all() {
    Map<String, String> names = names();
    Comparator<Reading> order =
        Comparator.comparing(MergedReadings::origin, arrival.order())
            .thenComparing(MergedReadings::key);
    return Stream.concat(
            own.stream(),
            received.stream()
                .sorted(order)
                .map(reading -> reading.by(String.valueOf(names.get(key(reading))))))
        .toList();
  }

  /** Returns the name here of each reading that was here before. */
  Map<String, String> namesOfHere() {
    return renamed(keysHere);
  }

  /** Returns the name here of each of the pack's readings that was not left out. */
  Map<String, String> namesOfPacked() {
    return renamed(keysInPack);
  }

  /** Returns the names of readings that were not here before. */
  List<String> brought() {
    Map<String, String> names = names();
    return newKeys.stream().map(names::get).toList();
  }

  /** Returns the names of readings that no person can have made. */
  List<String> refused() {
    return refused;
  }

  private Map<String, String> renamed(Map<String, String> keys) {
    Map<String, String> names = names();
    Map<String, String> renamed = new HashMap<>();
    keys.forEach((name, key) -> renamed.put(name, String.valueOf(names.get(key))));
    return renamed;
  }

  /** Returns the name of each key: the maker's where nobody else here could be meant by it. */
  private Map<String, String> names() {
    Map<String, Integer> makers = new HashMap<>();
    Stream.concat(own.stream(), received.stream())
        .forEach(reading -> makers.merge(looks(reading.reader()), 1, Integer::sum));
    Map<String, String> names = new HashMap<>();
    own.forEach(reading -> names.put(ownKey(reading), reading.reader()));
    Map<String, Integer> used = new HashMap<>();
    names.values().forEach(name -> used.merge(name, 1, Integer::sum));
    for (Reading reading : received) {
      boolean alone = makers.getOrDefault(looks(reading.reader()), 0) == 1;
      String name = alone ? reading.reader() : arrival.name(reading.reader(), origin(reading));
      names.put(key(reading), name);
      used.merge(name, 1, Integer::sum);
    }
    for (Reading reading : received) {
      String name = String.valueOf(names.get(key(reading)));
      if (used.getOrDefault(name, 0) > 1) {
        String sha256 = reading.received() == null ? "" : reading.received().sha256();
        String coded = "%s (%s)".formatted(name, sha256.substring(0, CODE_DIGITS));
        boolean taken = used.merge(coded, 1, Integer::sum) > 1;
        names.put(key(reading), taken ? "%s (%s)".formatted(name, sha256) : coded);
      }
    }
    return names;
  }

  /** Returns a name as the eye takes it: A, a, a full-width A and a Cyrillic А are one. */
  private static String looks(String name) {
    String plain = Normalizer.normalize(name, Normalizer.Form.NFKD);
    StringBuilder seen = new StringBuilder();
    plain
        .toUpperCase(Locale.ROOT)
        .codePoints()
        .filter(Character::isLetterOrDigit)
        .map(
            c ->
                "АВЕКМНОРСТХІЈЅΑΒΕΖΗΙΚΜΝΟΡΤΥΧ".indexOf(c) < 0
                    ? c
                    : "ABEKMHOPCTXIJSABEZHIKMNOPTYX"
                        .charAt("АВЕКМНОРСТХІЈЅΑΒΕΖΗΙΚΜΝΟΡΤΥΧ".indexOf(c)))
        .forEach(seen::appendCodePoint);
    return seen.isEmpty() ? name : seen.toString();
  }

  private static @Nullable PackOrigin origin(Reading reading) {
    return reading.received() == null ? null : reading.received().pack();
  }

  /** Returns whether it was made here, or came with a pack and was worked on here. */
  private static boolean isOwn(Reading reading) {
    Received came = reading.received();
    return came == null
        || came.changed()
        || !sha256(reading.by(came.reader())).equals(came.sha256());
  }

  private static String ownKey(Reading reading) {
    return "own " + reading.reader();
  }

  private static String key(Reading made) {
    Received came = made.received();
    return "%s %s".formatted(made.reader(), came == null ? "" : came.sha256());
  }

  private static String sha256(Reading reading) {
    return HexFormat.of()
        .formatHex(
            ClipHash.digest().digest(TrialJson.line(reading).getBytes(StandardCharsets.UTF_8)));
  }
}
