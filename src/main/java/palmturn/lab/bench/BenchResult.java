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

/**
 * The result of a bench.
 *
 * @param figures the figures to reach
 * @param clips each clip that could be measured
 * @param failed a line for each that could not
 */
public record BenchResult(
    List<BenchFigure> figures, List<ClipMeasurement> clips, List<String> failed) {
  public BenchResult {
    figures = List.copyOf(figures);
    clips = List.copyOf(clips);
    failed = List.copyOf(failed);
  }

  /** Returns this result with figures of something else after its own. */
  public BenchResult withFigures(List<BenchFigure> others) {
    List<BenchFigure> more = new ArrayList<>(figures);
    more.addAll(others);
    return new BenchResult(more, clips, failed);
  }

  /** Returns all of it as JSON; null where a figure can't be told. */
  public String json() {
    Map<String, @Nullable Object> root = new LinkedHashMap<>();
    root.put("rows", figures.stream().map(BenchResult::map).toList());
    root.put("clips", worstFirst().stream().map(BenchResult::map).toList());
    root.put("failed", failed);
    return JsonText.page(JsonText.tree(root));
  }

  static Map<String, @Nullable Object> map(BenchFigure row) {
    Map<String, @Nullable Object> map = new LinkedHashMap<>();
    map.put("id", row.id());
    map.put("what", row.description());
    map.put("unit", row.unit());
    map.put("n", row.n());
    map.put("value", row.value());
    map.put("goal", row.goal());
    map.put("higherIsBetter", row.higherIsBetter());
    map.put("reached", row.reached());
    map.put("worstClip", row.worstClip());
    map.put("worst", row.worstValue());
    return map;
  }

  private static Map<String, @Nullable Object> map(ClipMeasurement clip) {
    Map<String, @Nullable Object> map = new LinkedHashMap<>();
    map.put("clip", clip.name());
    map.put("width", clip.width());
    map.put("height", clip.height());
    map.put("fps", clip.fps());
    map.put("durationS", clip.durationS());
    map.put("sound", clip.hasSound());
    map.put("rateSlapsPerS", clip.trueRateSlapsPerS());
    map.put("all", map(clip.allSources()));
    map.put("pictureOnly", map(clip.pictureOnly()));
    ElbowComparison elbow = clip.elbow();
    map.put("elbowFrames", elbow == null ? null : elbow.frames());
    map.put("elbowWithin", elbow == null ? null : elbow.within());
    map.put("elbowP95Cm", elbow == null ? null : elbow.p95Cm());
    map.put("estimateS", clip.estimateS());
    map.put("decodeS", clip.decodeS());
    map.put("warnings", clip.warnings());
    return map;
  }

  private static Map<String, @Nullable Object> map(EstimateComparison each) {
    Map<String, @Nullable Object> map = new LinkedHashMap<>();
    map.put("slaps", each.truth());
    map.put("found", each.found());
    map.put("matched", each.matched());
    map.put("f", each.f());
    map.put("offsetS", each.offsetS());
    map.put("meanErrorS", mean(each.errorSumS(), each.matched()));
    map.put("meanErrorAfterOffsetS", mean(each.errorSumAfterOffsetS(), each.matched()));
    map.put("sidesRight", each.sidesRight());
    map.put("doubles", each.trueDoubles());
    map.put("doublesFound", each.doublesFound());
    map.put("doublesMatched", each.doublesMatched());
    map.put("rateErrorPct", each.rateErrorPct());
    map.put("cvErrorPoints", each.cvErrorPoints());
    map.put("frequencyErrorPct", each.frequencyErrorPct());
    return map;
  }

  private static @Nullable Double mean(double sum, int n) {
    return n == 0 ? null : sum / n;
  }

  /** Returns two tables for a document: the figures, and the clips, worst first. */
  public String markdown() {
    List<String> lines = table(figures);
    lines.add("");
    lines.add(
        "| clip | frames/s | slaps | F | error ms | F picture | error ms | sides % | doubles"
            + " found/false/there | rate % | CV points | turning % | elbow 95 % cm | time/length |");
    lines.add("| --- |" + " --- |".repeat(13));
    worstFirst().forEach(clip -> lines.add(line(clip)));
    failed.forEach(each -> lines.add("\nNot measured: " + each));
    return String.join("\n", lines) + "\n";
  }

  /** Returns the lines of a table of figures. */
  static List<String> table(List<BenchFigure> rows) {
    List<String> lines = new ArrayList<>();
    lines.add("| what | n | measured | to reach | reached | worst clip |");
    lines.add("| --- | --- | --- | --- | --- | --- |");
    for (BenchFigure row : rows) {
      String unit = row.unit().isEmpty() ? "" : " " + row.unit();
      Boolean reached = row.reached();
      lines.add(
          String.format(
              Locale.ROOT,
              "| %s | %d | %s%s | %s | %s | %s |",
              row.description(),
              row.n(),
              row.format(row.value()),
              row.value() == null ? "" : unit,
              row.goal() == null
                  ? ""
                  : (row.higherIsBetter() ? "≥ " : "≤ ") + row.format(row.goal()),
              reached == null ? "" : reached ? "yes" : "**no**",
              row.worstClip() == null
                  ? ""
                  : "%s, %s".formatted(row.worstClip(), row.format(row.worstValue()))));
    }
    return lines;
  }

  /** By the poorer F, then by the larger error of time, so that trouble is read first. */
  private List<ClipMeasurement> worstFirst() {
    return clips.stream()
        .sorted(
            Comparator.comparingDouble(BenchResult::poorerF)
                .thenComparing(clip -> -Objects.requireNonNullElse(pictureErrorMs(clip), 0.0))
                .thenComparing(ClipMeasurement::name))
        .toList();
  }

  /** A clip without a trial is right when nothing was reported in it. */
  private static double poorerF(ClipMeasurement clip) {
    Double all = clip.allSources().f();
    Double picture = clip.pictureOnly().f();
    return Math.min(all == null ? 1 : all, picture == null ? 1 : picture);
  }

  private static @Nullable Double pictureErrorMs(ClipMeasurement clip) {
    return milliseconds(clip.pictureOnly().errorSumS(), clip.pictureOnly().matched());
  }

  private static @Nullable Double milliseconds(double sumS, int n) {
    return n == 0 ? null : 1000 * sumS / n;
  }

  private static String line(ClipMeasurement clip) {
    EstimateComparison all = clip.allSources();
    String cells =
        String.join(
            " | ",
            clip.name() + (clip.hasSound() ? "" : " (silent)"),
            number(clip.fps(), 0),
            String.valueOf(all.truth()),
            number(all.f(), 3),
            number(milliseconds(all.errorSumAfterOffsetS(), all.matched()), 1),
            number(clip.pictureOnly().f(), 3),
            number(pictureErrorMs(clip), 1),
            number(all.matched() == 0 ? null : 100.0 * all.sidesRight() / all.matched(), 0),
            String.format(
                Locale.ROOT,
                "%d/%d/%d",
                all.doublesMatched(),
                all.doublesFound() - all.doublesMatched(),
                all.trueDoubles()),
            number(all.rateErrorPct(), 2),
            number(all.cvErrorPoints(), 2),
            number(all.frequencyErrorPct(), 2),
            number(clip.elbow() == null ? null : clip.elbow().p95Cm(), 2),
            number(clip.timeOverLength(), 2));
    return "| " + cells + " |";
  }

  static String number(@Nullable Double value, int digits) {
    // No sign on a value that rounds to zero.
    return value == null
        ? "–"
        : String.format(Locale.ROOT, "%." + digits + "f", value)
            .replaceFirst("^-(0(\\.0+)?)$", "$1");
  }
}
