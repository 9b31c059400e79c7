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
final class ShapeFigures {
  /** Zones that a slap truly has. */
  static final List<Zone> ZONES = List.of(Zone.CENTRE, Zone.FINGERS, Zone.WRIST, Zone.EDGE);

  /** A clip and one comparison of its estimate. */
  private record NamedComparison(String name, ShapeComparison comparison) {}

  private final List<BenchFigure> figures = new ArrayList<>();

  private ShapeFigures() {}

  static List<BenchFigure> of(List<ShapeMeasurement> clips, boolean installed) {
    ShapeFigures rows = new ShapeFigures();
    if (installed) {
      List<NamedComparison> with = new ArrayList<>();
      for (ShapeMeasurement clip : clips) {
        if (clip.withShape() != null) {
          with.add(new NamedComparison(clip.name(), clip.withShape()));
        }
      }
      rows.addSides("shape", "nothing named, with shape", with);
      rows.addZones(with);
      rows.addBentWrist(with);
      rows.addTurns(with);
      rows.addNotUsed(with);
      rows.addNoTrial(with);
      rows.addTime(clips);
    }
    List<NamedComparison> without =
        clips.stream().map(clip -> new NamedComparison(clip.name(), clip.withoutShape())).toList();
    rows.addSides("motion", "one named, without shape", without);
    rows.addUnknownZones("motion", "without shape", without);
    return List.copyOf(rows.figures);
  }

  private void addSides(String id, String how, List<NamedComparison> clips) {
    ToIntFunction<ShapeComparison> all = each -> each.pairs().size();
    addShare(
        id + "FoundPct",
        "slaps found, " + how,
        "%",
        clips,
        s -> 100 * all.applyAsInt(s),
        ShapeComparison::contacts,
        true);
    addShare(
        id + "SidesPct",
        "side of matched slaps right, " + how,
        "%",
        clips,
        s -> 100 * s.sidesRight(),
        all,
        true);
    addShare(
        id + "SidesUnknownPct",
        "side of matched slaps unknown, " + how,
        "%",
        clips,
        s -> 100 * s.sidesUnknown(),
        all,
        false);
  }

  private void addZones(List<NamedComparison> clips) {
    for (Zone zone : ZONES) {
      ToIntFunction<ShapeComparison> truly =
          each -> countDetected(each, zone) + each.zones(zone, Zone.UNKNOWN) + each.missed(zone);
      ToIntFunction<ShapeComparison> said =
          each ->
              ZONES.stream().mapToInt(truth -> each.zones(truth, zone)).sum() + each.invented(zone);
      addShare(
          zone.code() + "Recall",
          "slaps on the " + zone.code() + " told as that",
          "",
          clips,
          each -> each.zones(zone, zone),
          truly,
          true);
      addShare(
          zone.code() + "Precision",
          "slaps told as on the " + zone.code() + " that are",
          "",
          clips,
          each -> each.zones(zone, zone),
          said,
          true);
    }
    addUnknownZones("shape", "with shape", clips);
  }

  private static int countDetected(ShapeComparison each, Zone truth) {
    return ZONES.stream().mapToInt(found -> each.zones(truth, found)).sum();
  }

  private void addUnknownZones(String id, String how, List<NamedComparison> clips) {
    ToIntFunction<ShapeComparison> unknown =
        each -> ZONES.stream().mapToInt(truth -> each.zones(truth, Zone.UNKNOWN)).sum();
    addShare(
        id + "ZonesUnknownPct",
        "zone of matched slaps unknown, " + how,
        "%",
        clips,
        each -> 100 * unknown.applyAsInt(each),
        each ->
            ZONES.stream().mapToInt(truth -> countDetected(each, truth)).sum()
                + unknown.applyAsInt(each),
        false);
  }

  private void addBentWrist(List<NamedComparison> clips) {
    figures.add(
        PooledRatio.figure(
            "bentWristIou",
            "time with a bent wrist, in both truth and estimate/in either, clips with any",
            "",
            clips.stream()
                .map(
                    each ->
                        new PooledRatio.ClipRatio(
                            each.name(),
                            each.comparison().bentWrist().overlapS(),
                            each.comparison().bentWrist().unionS(),
                            1))
                .toList(),
            null,
            true));
  }

  private void addTurns(List<NamedComparison> clips) {
    List<NamedComparison> known =
        clips.stream().filter(each -> each.comparison().turn().trueDeg() != null).toList();
    addTurnErrors("turn", "turn from side to side", known, TurnComparison::errorDeg);
    addTurnErrors(
        "turnChange",
        "turn in the last third less that in the first",
        known,
        TurnComparison::changeErrorDeg);
  }

  private void addTurnErrors(
      String id,
      String what,
      List<NamedComparison> clips,
      Function<TurnComparison, @Nullable Double> error) {
    List<ErrorFigures.ClipError> errors =
        clips.stream()
            .map(
                each ->
                    new ErrorFigures.ClipError(each.name(), error.apply(each.comparison().turn())))
            .toList();
    figures.addAll(ErrorFigures.of(id, what, "°", errors, null));
  }

  private void addNotUsed(List<NamedComparison> clips) {
    List<NamedComparison> trials =
        clips.stream().filter(each -> each.comparison().contacts() > 0).toList();
    List<NamedComparison> not =
        trials.stream().filter(each -> !each.comparison().shapeUsed()).toList();
    figures.add(
        new BenchFigure(
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

  private void addNoTrial(List<NamedComparison> clips) {
    List<NamedComparison> none =
        clips.stream().filter(each -> each.comparison().contacts() == 0).toList();
    NamedComparison worst =
        none.stream().max(Comparator.comparingInt(each -> each.comparison().found())).orElse(null);
    figures.add(
        new BenchFigure(
            "shapeNoTrialSlaps",
            "slaps reported in clips without a trial, with shape, clips",
            "slaps",
            none.size(),
            none.isEmpty()
                ? null
                : (double) none.stream().mapToInt(each -> each.comparison().found()).sum(),
            0.0,
            false,
            worst == null ? null : worst.name(),
            worst == null ? null : (double) worst.comparison().found()));
  }

  private void addTime(List<ShapeMeasurement> clips) {
    List<PooledRatio.ClipRatio> parts =
        clips.stream()
            .filter(clip -> clip.hasTrial() && clip.estimateS() != null)
            .map(
                clip ->
                    new PooledRatio.ClipRatio(
                        clip.name(), Objects.requireNonNull(clip.estimateS()), clip.durationS(), 1))
            .toList();
    figures.add(
        PooledRatio.figure(
            "shapeTimeOfLength",
            "time of an estimate with shape/length of the clip, clips with a trial",
            "",
            parts,
            null,
            false));
  }

  private void addShare(
      String id,
      String what,
      String unit,
      List<NamedComparison> clips,
      ToDoubleFunction<ShapeComparison> part,
      ToIntFunction<ShapeComparison> whole,
      boolean higherIsBetter) {
    List<PooledRatio.ClipRatio> parts =
        clips.stream()
            .map(
                each ->
                    new PooledRatio.ClipRatio(
                        each.name(),
                        part.applyAsDouble(each.comparison()),
                        whole.applyAsInt(each.comparison()),
                        whole.applyAsInt(each.comparison())))
            .toList();
    figures.add(PooledRatio.figure(id, what, unit, parts, null, higherIsBetter));
  }
}
