package palmturn.lab.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import palmturn.json.JsonText;
import palmturn.numbers.Range;
import palmturn.trial.Zone;

/**
 * The result of a bench on sides, zones and bent wrists, without and with the shape of the hands.
 *
 * @param networksInstalled whether the landmark networks are
 * @param clips each clip that could be measured
 * @param failed a line for each that could not
 */
public record ShapeResult(
    boolean networksInstalled, List<ShapeMeasurement> clips, List<String> failed) {
  /** The line printed where the networks are not installed. */
  public static final String NOT_INSTALLED = "shape: not installed";

  public ShapeResult {
    clips = List.copyOf(clips);
    failed = List.copyOf(failed);
  }

  /** Returns the figures pooled over all clips; those with shape only where it is installed. */
  public List<BenchFigure> figures() {
    return ShapeFigures.of(clips, networksInstalled);
  }

  /** Returns all of it as JSON; null where a figure can't be told. */
  public String json() {
    Map<String, @Nullable Object> root = new LinkedHashMap<>();
    root.put("shapeInstalled", networksInstalled);
    root.put("rows", figures().stream().map(BenchResult::map).toList());
    root.put("zones", confusion());
    root.put("sideCalibration", calibration(Calibration.sides(withShape())));
    root.put("zoneCalibration", calibration(Calibration.zones(withShape())));
    root.put("clips", worstFirst().stream().map(ShapeResult::map).toList());
    root.put("failed", failed);
    return JsonText.page(JsonText.tree(root));
  }

  private List<ShapeComparison> withShape() {
    return clips.stream().map(ShapeMeasurement::withShape).filter(Objects::nonNull).toList();
  }

  private Map<String, @Nullable Object> confusion() {
    Map<String, @Nullable Object> rows = new LinkedHashMap<>();
    for (Zone truth : ShapeFigures.ZONES) {
      Map<String, @Nullable Object> row = new LinkedHashMap<>();
      for (Zone found : Zone.values()) {
        row.put(found.code(), sum(truth, found));
      }
      row.put("notFound", withShape().stream().mapToInt(each -> each.missed(truth)).sum());
      rows.put(truth.code(), row);
    }
    return rows;
  }

  private int sum(Zone truth, Zone found) {
    return withShape().stream().mapToInt(each -> each.zones(truth, found)).sum();
  }

  private static List<Map<String, @Nullable Object>> calibration(List<Calibration.Statement> said) {
    List<Map<String, @Nullable Object>> bins = new ArrayList<>();
    for (Calibration.Bin bin : Calibration.bins(said)) {
      Map<String, @Nullable Object> map = new LinkedHashMap<>();
      map.put("from", bin.from());
      map.put("said", bin.count());
      map.put("right", bin.right());
      map.put("meanStated", bin.meanStated());
      bins.add(map);
    }
    return bins;
  }

  private static Map<String, @Nullable Object> map(ShapeMeasurement clip) {
    Map<String, @Nullable Object> map = new LinkedHashMap<>();
    map.put("clip", clip.name());
    map.put("fps", clip.fps());
    map.put("durationS", clip.durationS());
    map.put("withoutShape", map(clip.withoutShape()));
    map.put("withShape", clip.withShape() == null ? null : map(clip.withShape()));
    map.put("estimateS", clip.estimateS());
    map.put("warnings", clip.warnings());
    return map;
  }

  private static Map<String, @Nullable Object> map(ShapeComparison each) {
    Map<String, @Nullable Object> map = new LinkedHashMap<>();
    map.put("shapeUsed", each.shapeUsed());
    map.put("slaps", each.contacts());
    map.put("found", each.found());
    map.put("matched", each.pairs().size());
    map.put("sidesRight", each.sidesRight());
    map.put("sidesUnknown", each.sidesUnknown());
    map.put(
        "wrong", each.pairs().stream().filter(ShapeResult::wrong).map(ShapeResult::map).toList());
    map.put("bentTrueS", each.bentWrist().trueS());
    map.put("bentFoundS", each.bentWrist().foundS());
    map.put("bentBothS", each.bentWrist().overlapS());
    map.put("bentMostDeg", each.bentWrist().largestDeg());
    TurnComparison turn = each.turn();
    map.put("turnTrueDeg", turn.trueDeg());
    map.put("turnDeg", turn.estimated() == null ? null : turn.estimated().medianDeg());
    map.put("turnChangeTrueDeg", turn.trueChangeDeg());
    map.put("turnChangeDeg", turn.change() == null ? null : turn.change().deg());
    map.put("turnChangeLowDeg", turn.change() == null ? null : turn.change().lowDeg());
    map.put("turnChangeHighDeg", turn.change() == null ? null : turn.change().highDeg());
    return map;
  }

  private static boolean wrong(ShapeComparison.MatchedContact pair) {
    return pair.slap().side() != pair.truth().side() || pair.slap().zone() != pair.truth().zone();
  }

  private static Map<String, @Nullable Object> map(ShapeComparison.MatchedContact pair) {
    Map<String, @Nullable Object> map = new LinkedHashMap<>();
    map.put("timeS", pair.truth().timeS());
    map.put("side", pair.slap().side().code());
    map.put("trueSide", pair.truth().side().code());
    map.put("sideConfidence", pair.slap().sideConfidence());
    map.put("zone", pair.slap().zone().code());
    map.put("trueZone", pair.truth().zone().code());
    map.put("zoneConfidence", pair.slap().zoneConfidence());
    return map;
  }

  /** Returns tables for a document: figures, clips, and with shape zones and confidences. */
  public String markdown() {
    List<String> lines = new ArrayList<>();
    if (!networksInstalled) {
      lines.add(NOT_INSTALLED);
      lines.add("");
    }
    lines.addAll(BenchResult.table(figures()));
    lines.add("");
    lines.add(
        "| clip | frames/s | slaps | F | sides % | unknown | without shape, one named: sides % |"
            + " zones right/wrong/unknown | bent s | up to ° | said s | IoU | turn ° | said |"
            + " change ° | said | time/length |");
    lines.add("| --- |" + " --- |".repeat(16));
    worstFirst().forEach(clip -> lines.add(line(clip)));
    if (networksInstalled) {
      zones(lines);
      confidences(lines);
    }
    failed.forEach(each -> lines.add("\nNot measured: " + each));
    return String.join("\n", lines) + "\n";
  }

  private void zones(List<String> lines) {
    lines.add("");
    lines.add("| truly | centre | fingers | wrist | edge | unknown | not found |");
    lines.add("| --- |" + " --- |".repeat(6));
    for (Zone truth : ShapeFigures.ZONES) {
      lines.add(
          String.format(
              Locale.ROOT,
              "| %s | %d | %d | %d | %d | %d | %d |",
              truth.code(),
              sum(truth, Zone.CENTRE),
              sum(truth, Zone.FINGERS),
              sum(truth, Zone.WRIST),
              sum(truth, Zone.EDGE),
              sum(truth, Zone.UNKNOWN),
              withShape().stream().mapToInt(each -> each.missed(truth)).sum()));
    }
  }

  private void confidences(List<String> lines) {
    List<Calibration.Bin> sides = Calibration.bins(Calibration.sides(withShape()));
    List<Calibration.Bin> zones = Calibration.bins(Calibration.zones(withShape()));
    lines.add("");
    lines.add(
        "| confidence | sides | mean stated | right | 95 % | zones | mean stated | right | 95 % |");
    lines.add("| --- |" + " --- |".repeat(8));
    for (int i = 0; i < sides.size(); i++) {
      Calibration.Bin bin = sides.get(i);
      String range =
          bin.below() > 1
              ? "from %s".formatted(BenchResult.number(bin.from(), 2))
              : "%s to %s"
                  .formatted(BenchResult.number(bin.from(), 2), BenchResult.number(bin.below(), 2));
      lines.add("| %s | %s | %s |".formatted(range, cells(bin), cells(zones.get(i))));
    }
  }

  private static String cells(Calibration.Bin bin) {
    Range interval = bin.interval();
    return String.format(
        Locale.ROOT,
        "%d | %s | %s | %s",
        bin.count(),
        BenchResult.number(bin.meanStated(), 3),
        BenchResult.number(bin.shareRight(), 3),
        interval == null
            ? "–"
            : String.format(Locale.ROOT, "%.2f to %.2f", interval.low(), interval.high()));
  }

  /** By the poorer share of sides, then by the name. */
  private List<ShapeMeasurement> worstFirst() {
    return clips.stream()
        .sorted(
            Comparator.comparingDouble(ShapeResult::poorerSides)
                .thenComparing(clip -> !clip.hasTrial())
                .thenComparing(ShapeMeasurement::name))
        .toList();
  }

  private static double poorerSides(ShapeMeasurement clip) {
    Double without = sides(clip.withoutShape());
    Double with = clip.withShape() == null ? null : sides(clip.withShape());
    return Math.min(without == null ? 100 : without, with == null ? 100 : with);
  }

  private static @Nullable Double sides(ShapeComparison each) {
    return each.pairs().isEmpty() ? null : 100.0 * each.sidesRight() / each.pairs().size();
  }

  private static String line(ShapeMeasurement clip) {
    ShapeComparison best = clip.withShape() == null ? clip.withoutShape() : clip.withShape();
    Double with = clip.withShape() == null ? null : sides(clip.withShape());
    ShapeComparison.BentWristTime bent = best.bentWrist();
    TurnComparison turn = best.turn();
    Double estimateS = clip.estimateS();
    String cells =
        String.join(
            " | ",
            clip.name(),
            BenchResult.number(clip.fps(), 0),
            String.valueOf(best.contacts()),
            BenchResult.number(best.f(), 3),
            BenchResult.number(with, 0),
            clip.withShape() == null ? "–" : String.valueOf(clip.withShape().sidesUnknown()),
            BenchResult.number(sides(clip.withoutShape()), 0),
            zones(best),
            BenchResult.number(bent.trueS(), 2),
            BenchResult.number(bent.largestDeg(), 0),
            BenchResult.number(bent.foundS(), 2),
            BenchResult.number(bent.intersectionOverUnion(), 2),
            BenchResult.number(turn.trueDeg(), 0),
            BenchResult.number(turn.estimated() == null ? null : turn.estimated().medianDeg(), 0),
            BenchResult.number(turn.trueChangeDeg(), 0),
            BenchResult.number(turn.change() == null ? null : turn.change().deg(), 0),
            BenchResult.number(estimateS == null ? null : estimateS / clip.durationS(), 2));
    return "| " + cells + " |";
  }

  private static String zones(ShapeComparison each) {
    int right = ShapeFigures.ZONES.stream().mapToInt(zone -> each.zones(zone, zone)).sum();
    int unknown =
        ShapeFigures.ZONES.stream().mapToInt(zone -> each.zones(zone, Zone.UNKNOWN)).sum();
    int all =
        ShapeFigures.ZONES.stream()
            .mapToInt(
                zone -> List.of(Zone.values()).stream().mapToInt(f -> each.zones(zone, f)).sum())
            .sum();
    return String.format(Locale.ROOT, "%d/%d/%d", right, all - right - unknown, unknown);
  }
}
