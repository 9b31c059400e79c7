package palmturn.work.pack;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipHash;
import palmturn.json.TrialJson;
import palmturn.trial.Decision;
import palmturn.trial.Estimate;
import palmturn.trial.PlacedPoints;
import palmturn.trial.Reading;
import palmturn.trial.Settlement;
import palmturn.trial.Trial;

/**
 * A trial here and the same trial from a pack, made one. Nobody's marks are lost: a reading that
 * has changed on both sides is kept twice.
 *
 * @param trial with all that either has
 * @param notes a line for each thing that a person should know
 */
record MergedTrial(Trial trial, List<String> notes) {

  /** Returns the two as one; the clip and its stretch stay those that are here. */
  static MergedTrial of(Trial here, Trial packed) {
    String name = here.id().name();
    if (!here.clip().sameFilm(packed.clip())) {
      return new MergedTrial(
          here, List.of(name + ": the pack's is of another clip, and was left out"));
    }
    List<String> notes = new ArrayList<>();
    Trial merged = here;
    for (Reading reading : packed.readings()) {
      merged = withReading(merged, reading, notes);
    }
    Estimate estimate = packed.estimate();
    if (merged.estimate() == null && estimate != null) {
      merged = merged.withEstimate(estimate.forClip(here.clip().sha256()));
    }
    for (Settlement settlement : packed.settlements()) {
      merged = withSettlement(merged, settlement, notes);
    }
    if (merged.places().equals(PlacedPoints.NONE)) {
      merged = merged.withPlaces(packed.places());
    }
    return new MergedTrial(merged, notes);
  }

  /** Returns a trial that is not here yet, its readings marked as received. */
  static Trial received(Trial packed) {
    Trial received = packed;
    for (Reading reading : packed.readings()) {
      received = received.withReading(reading.received(sha256(reading)));
    }
    return received;
  }

  private static Trial withReading(Trial trial, Reading packed, List<String> notes) {
    Reading here = trial.reading(packed.reader()).orElse(null);
    String sha256 = sha256(packed);
    if (here == null || unchanged(here)) {
      return trial.withReading(packed.received(sha256));
    }
    if (sha256(here).equals(sha256)) {
      return trial;
    }
    // What was sent from here comes back as it was, unless somebody there has worked on it.
    if (sha256.equals(here.receivedSha256())) {
      return trial;
    }
    for (int number = 2; ; number++) {
      Reading twin = packed.by(packed.reader() + "-" + number);
      Reading known = trial.reading(twin.reader()).orElse(null);
      if (known != null && sha256(known).equals(sha256(twin))) {
        return trial;
      }
      if (known == null || unchanged(known)) {
        notes.add(
            "%s: the reading by %s differs here and in the pack; the pack's is kept as %s"
                .formatted(trial.id().name(), packed.reader(), twin.reader()));
        return trial.withReading(twin.received(sha256(twin)));
      }
    }
  }

  /** Returns whether a reading came with a pack and nobody has worked on it here. */
  private static boolean unchanged(Reading here) {
    return sha256(here).equals(here.receivedSha256());
  }

  private static String sha256(Reading reading) {
    return HexFormat.of()
        .formatHex(
            ClipHash.digest().digest(TrialJson.line(reading).getBytes(StandardCharsets.UTF_8)));
  }

  private static Trial withSettlement(Trial trial, Settlement packed, List<String> notes) {
    @Nullable Settlement here = trial.settlement(packed.first(), packed.second()).orElse(null);
    if (here == null) {
      return trial.withSettlement(packed);
    }
    if (!here.first().equals(packed.first())) {
      notes.add(
          "%s: here %s and %s were settled the other way round; the pack's decisions were left out"
              .formatted(trial.id().name(), here.first(), here.second()));
      return trial;
    }
    return trial.withSettlement(
        new Settlement(
            here.first(),
            here.second(),
            here.toleranceS(),
            here.removeOffset(),
            both(here.slaps(), packed.slaps()),
            both(here.spans(), packed.spans()),
            here.extra()));
  }

  private static <M> List<Decision<M>> both(List<Decision<M>> here, List<Decision<M>> packed) {
    Set<Decision<M>> all = new LinkedHashSet<>(here);
    all.addAll(packed);
    return all.stream().sorted(Comparator.comparing(Decision::at)).toList();
  }
}
