package palmturn.lab.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Zone;

/** Pools what was measured with and without the shape of the hands. */
final class ShapeRows {
  /** Zones that a slap truly has. */
  static final List<Zone> ZONES = List.of(Zone.CENTRE, Zone.FINGERS, Zone.WRIST, Zone.EDGE);

  /** A clip and one way of estimating it. */
  private record Each(String name, ShapeComparison of) {}

  private final List<Row> rows = new ArrayList<>();

  private ShapeRows() {}

  static List<Row> of(List<ShapeMeasured> clips, boolean installed) {
    ShapeRows rows = new ShapeRows();
    if (installed) {
      List<Each> with = new ArrayList<>();
      for (ShapeMeasured clip : clips) {
        if (clip.with() != null) {
          with.add(new Each(clip.name(), clip.with()));
        }
      }
      rows.sides("shape", "nothing named, with shape", with);
      rows.zones(with);
      rows.bent(with);
      rows.turns(with);
      rows.notUsed(with);
      rows.noTrial(with);
      rows.time(clips);
    }
    List<Each> without = clips.stream().map(clip -> new Each(clip.name(), clip.without())).toList();
    rows.sides("motion", "one named, without shape", without);
    rows.unknown("motion", "without shape", without);
    return List.copyOf(rows.rows);
  }

  private void sides(String id, String how, List<Each> clips) {
    ToIntFunction<ShapeComparison> all = each -> each.pairs().size();
    share(
        id + "FoundPct",
        "slaps found, " + how,
        "%",
        clips,
        s -> 100 * all.applyAsInt(s),
        ShapeComparison::contacts,
        true);
    share(
        id + "SidesPct",
        "side of matched slaps right, " + how,
        "%",
        clips,
        s -> 100 * s.sidesRight(),
        all,
        true);
    share(
        id + "SidesUnknownPct",
        "side of matched slaps unknown, " + how,
        "%",
        clips,
        s -> 100 * s.sidesUnknown(),
        all,
        false);
  }

  private void zones(List<Each> clips) {
    for (Zone zone : ZONES) {
      ToIntFunction<ShapeComparison> truly =
          each -> told(each, zone) + each.zones(zone, Zone.UNKNOWN) + each.missed(zone);
      ToIntFunction<ShapeComparison> said =
          each ->
              ZONES.stream().mapToInt(truth -> each.zones(truth, zone)).sum() + each.invented(zone);
      share(
          zone.code() + "Recall",
          "slaps on the " + zone.code() + " told as that",
          "",
          clips,
          each -> each.zones(zone, zone),
          truly,
          true);
      share(
          zone.code() + "Precision",
          "slaps told as on the " + zone.code() + " that are",
          "",
          clips,
          each -> each.zones(zone, zone),
          said,
          true);
    }
    unknown("shape", "with shape", clips);
  }

  private static int told(ShapeComparison each, Zone truth) {
    return ZONES.stream().mapToInt(found -> each.zones(truth, found)).sum();
  }

  private void unknown(String id, String how, List<Each> clips) {
    ToIntFunction<ShapeComparison> unknown =
        each -> ZONES.stream().mapToInt(truth -> each.zones(truth, Zone.UNKNOWN)).sum();
    share(
        id + "ZonesUnknownPct",
        "zone of matched slaps unknown, " + how,
        "%",
        clips,
        each -> 100 * unknown.applyAsInt(each),
        each ->
            ZONES.stream().mapToInt(truth -> told(each, truth)).sum() + unknown.applyAsInt(each),
        false);
  }

  private void bent(List<Each> clips) {
    rows.add(
        Pooled.row(
            "bentWristIou",
            "time with a bent wrist, in both truth and estimate/in either, clips with any",
            "",
            clips.stream()
                .map(
                    each ->
                        new Pooled.Part(
                            each.name(), each.of().bent().bothS(), each.of().bent().eitherS(), 1))
                .toList(),
            null,
            true));
  }

  private void turns(List<Each> clips) {
    List<Each> known = clips.stream().filter(each -> each.of().turn().trueDeg() != null).toList();
    errors("turn", "turn from side to side", known, TurnComparison::errorDeg);
    errors(
        "turnChange",
        "turn in the last third less that in the first",
        known,
        TurnComparison::changeErrorDeg);
  }

  private void errors(
      String id, String what, List<Each> clips, Function<TurnComparison, @Nullable Double> error) {
    List<ErrorRows.Error> errors =
        clips.stream()
            .map(each -> new ErrorRows.Error(each.name(), error.apply(each.of().turn())))
            .toList();
    rows.addAll(ErrorRows.of(id, what, "°", errors, null));
  }

  private void notUsed(List<Each> clips) {
    List<Each> trials = clips.stream().filter(each -> each.of().contacts() > 0).toList();
    List<Each> not = trials.stream().filter(each -> !each.of().shapeUsed()).toList();
    rows.add(
        new Row(
            "shapeNotUsed",
            "clips with a trial in which shape was not used",
            "clips",
            trials.size(),
            (double) not.size(),
            null,
            false,
            not.isEmpty() ? null : not.get(0).name(),
            null));
  }

  private void noTrial(List<Each> clips) {
    List<Each> none = clips.stream().filter(each -> each.of().contacts() == 0).toList();
    Each worst = none.stream().max(Comparator.comparingInt(each -> each.of().found())).orElse(null);
    rows.add(
        new Row(
            "shapeNoTrialSlaps",
            "slaps reported in clips without a trial, with shape, clips",
            "slaps",
            none.size(),
            none.isEmpty()
                ? null
                : (double) none.stream().mapToInt(each -> each.of().found()).sum(),
            0.0,
            false,
            worst == null ? null : worst.name(),
            worst == null ? null : (double) worst.of().found()));
  }

  private void time(List<ShapeMeasured> clips) {
    List<Pooled.Part> parts =
        clips.stream()
            .filter(clip -> clip.hasTrial() && clip.estimateS() != null)
            .map(
                clip ->
                    new Pooled.Part(
                        clip.name(), Objects.requireNonNull(clip.estimateS()), clip.durationS(), 1))
            .toList();
    rows.add(
        Pooled.row(
            "shapeTimeOfLength",
            "time of an estimate with shape/length of the clip, clips with a trial",
            "",
            parts,
            null,
            false));
  }

  private void share(
      String id,
      String what,
      String unit,
      List<Each> clips,
      ToDoubleFunction<ShapeComparison> part,
      ToIntFunction<ShapeComparison> whole,
      boolean higherIsBetter) {
    List<Pooled.Part> parts =
        clips.stream()
            .map(
                each ->
                    new Pooled.Part(
                        each.name(),
                        part.applyAsDouble(each.of()),
                        whole.applyAsInt(each.of()),
                        whole.applyAsInt(each.of())))
            .toList();
    rows.add(Pooled.row(id, what, unit, parts, null, higherIsBetter));
  }
}
