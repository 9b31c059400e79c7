package palmturn.work.pack;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import palmturn.measure.ReadingChoice;
import palmturn.trial.Estimate;
import palmturn.trial.PlacedPoints;
import palmturn.trial.Reading;
import palmturn.trial.Trial;
import palmturn.work.score.Scoring;

/**
 * A trial here and the same trial from a pack, made one. What is here stays as it is, and what the
 * pack has is put beside it.
 *
 * @param trial with all that either has
 * @param brought a line for each thing that was not here
 * @param left a line for each thing that was left out or that does not count, and why
 */
record MergedTrial(Trial trial, List<String> brought, List<String> left) {

  /** Returns the two as one; the clip and its stretch stay those that are here. */
  static MergedTrial of(Trial here, Trial packed, Arrival arrival) {
    String name = here.id().name();
    if (!here.clip().sameFilm(packed.clip())) {
      return new MergedTrial(here, List.of(), List.of(name + ": the pack's is of another clip"));
    }
    List<String> brought = new ArrayList<>();
    List<String> left = new ArrayList<>();
    MergedReadings readings = MergedReadings.of(here.readings(), packed.readings(), arrival);
    readings
        .brought()
        .forEach(reader -> brought.add("%s: the reading by %s".formatted(name, reader)));
    readings
        .refused()
        .forEach(
            reader ->
                left.add(
                    "%s: a reading by \"%s\", as no person is called".formatted(name, reader)));
    MergedSettlements settlements =
        MergedSettlements.of(here.settlements(), packed.settlements(), readings, arrival);
    count(brought, name, settlements.brought(), "decisions between readings");
    count(left, name, settlements.opposed(), "decisions where yours stand; they are kept beside");
    count(left, name, settlements.leftOut(), "decisions on readings that are not here");
    Trial merged = here.withReadings(readings.all()).withSettlements(settlements.all());
    Estimate estimate = packed.estimate();
    if (here.estimate() == null && estimate != null) {
      merged = merged.withEstimate(estimate.forClip(here.clip().sha256()));
      brought.add(name + ": the estimate");
    }
    if (here.places().equals(PlacedPoints.NONE) && !packed.places().equals(PlacedPoints.NONE)) {
      merged = merged.withPlaces(packed.places());
      brought.add(name + ": the places pointed at");
    }
    if (!sameTerms(here, packed)) {
      left.add(name + ": its stretch, mirroring, pace or time scale, which differ from those here");
    }
    String before = scored(here);
    String after = scored(merged);
    if (!here.readings().isEmpty() && !before.equals(after)) {
      left.add(
          "%s: was scored by %s, and is now by %s: say whose to score with --reading"
              .formatted(name, before, after));
    }
    return new MergedTrial(merged, brought, left);
  }

  /** Returns a trial that is not here yet, its readings marked as received. */
  static MergedTrial received(Trial packed, Arrival arrival) {
    MergedTrial merged =
        of(packed.withReadings(List.of()).withSettlements(List.of()), packed, arrival);
    List<String> brought = new ArrayList<>(List.of(packed.id().name() + ": the trial"));
    brought.addAll(merged.brought());
    return new MergedTrial(merged.trial(), brought, merged.left());
  }

  private static boolean sameTerms(Trial here, Trial packed) {
    return Objects.equals(here.fromS(), packed.fromS())
        && Objects.equals(here.toS(), packed.toS())
        && here.mirrored() == packed.mirrored()
        && Objects.equals(here.captureFps(), packed.captureFps())
        && here.timeScale().equals(packed.timeScale())
        && Objects.equals(here.paceSlapsPerS(), packed.paceSlapsPerS());
  }

  private static String scored(Trial trial) {
    ReadingChoice choice = Scoring.choice(null);
    Reading reading = choice.of(trial);
    return reading == null ? "nobody" : reading.reader();
  }

  private static void count(List<String> lines, String trial, int count, String what) {
    if (count > 0) {
      lines.add(String.format(Locale.ROOT, "%s: %d %s", trial, count, what));
    }
  }
}
