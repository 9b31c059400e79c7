package palmturn.wording;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import palmturn.measure.Decimals;
import palmturn.measure.Measures;
import palmturn.measure.Phrases;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Side;
import palmturn.trial.Span;
import palmturn.trial.TimedBy;
import palmturn.trial.Zone;

/** A summary of an estimate in short lines; its warnings stand beside them. */
public final class EstimateSummary {
  private static final String CANNOT_TELL = "can’t be told";

  /** A share by which two estimates of one frequency may differ; Palmturn's choice, no source. */
  private static final double SAME_FREQUENCY = 0.03;

  private EstimateSummary() {}

  /**
   * A line.
   *
   * @param name of what was looked for, a word or two
   * @param words what was found
   */
  public record Line(String name, String words) {}

  /** Returns the lines, the slaps first. */
  public static List<Line> of(Estimate found) {
    List<Line> lines = new ArrayList<>();
    if (!found.trialFound()) {
      lines.add(new Line("trial", "none found"));
    }
    lines.add(new Line("slaps", slaps(found)));
    lines.add(new Line("sides", sides(found)));
    if (found.shape() != null) {
      lines.add(new Line("zones", zones(found)));
      lines.add(new Line("wrist", wrist(found, found.shape())));
      lines.add(new Line("turn", turn(found.shape().turnRange())));
    }
    lines.add(new Line("rate", figure(found.figures().rateSlapsPerS(), 2, "slaps/s")));
    lines.add(new Line("interval CV", cv(found)));
    lines.add(new Line("rotation", rotation(found.figures().rotation())));
    lines.add(new Line("elbow", elbow(found.elbow(), found.elbowInSpace())));
    lines.add(new Line("sources", sources(found)));
    if (!found.slaps().isEmpty()) {
      lines.add(new Line("confidence", confidence(found)));
    }
    if (found.stretches().size() > 1) {
      lines.add(new Line("stretches", stretches(found)));
    }
    return lines;
  }

  private static String slaps(Estimate found) {
    long doubles = found.slaps().stream().filter(EstimatedSlap::isDouble).count();
    long counted = found.slaps().size() - doubles;
    return doubles == 0
        ? String.valueOf(counted)
        : String.format(Locale.ROOT, "%d, and %s", counted, Figures.count(doubles, "double"));
  }

  private static String sides(Estimate found) {
    long palm = of(found, Side.PALM);
    long back = of(found, Side.BACK);
    long unknown = of(found, Side.UNKNOWN);
    if (palm + back == 0) {
      return found.slaps().isEmpty() ? CANNOT_TELL : "unknown until the side of one is named";
    }
    return String.format(
        Locale.ROOT,
        "palm %d, back %d%s",
        palm,
        back,
        unknown == 0 ? "" : String.format(Locale.ROOT, ", unknown %d", unknown));
  }

  private static long of(Estimate found, Side side) {
    return found.slaps().stream().filter(slap -> slap.side() == side).count();
  }

  private static String zones(Estimate found) {
    List<String> parts = new ArrayList<>();
    for (Zone zone : Zone.values()) {
      long slaps = found.slaps().stream().filter(slap -> slap.zone() == zone).count();
      if (slaps > 0) {
        parts.add(String.format(Locale.ROOT, "%s %d", zone.code(), slaps));
      }
    }
    return String.join(", ", parts);
  }

  private static String wrist(Estimate found, Estimate.Shape shape) {
    if (shape.wristBendDeg().timesS().isEmpty()) {
      return CANNOT_TELL;
    }
    String spans =
        found.spans().stream()
            .filter(span -> span.kind() == Span.SpanKind.BENT_WRIST)
            .map(span -> stretch(span.startS(), span.endS()))
            .collect(Collectors.joining(", "));
    return spans.isEmpty() ? "not bent for long" : "bent " + spans;
  }

  private static String turn(Estimate.@Nullable TurnRange range) {
    if (range == null) {
      return CANNOT_TELL;
    }
    String usual = "about %s° from side to side".formatted(Decimals.fixed(range.medianDeg(), 0));
    Estimate.TurnChange change = range.change();
    return change == null
        ? usual
        : usual
            + "; last third − first %s° (95 %% interval %s to %s)"
                .formatted(
                    Decimals.signed(change.deg(), 0),
                    Decimals.signed(change.lowDeg(), 0),
                    Decimals.signed(change.highDeg(), 0));
  }

  private static String cv(Estimate found) {
    Double cv = found.figures().intervalCvPct();
    Double floor = found.figures().timingFloorPct();
    if (cv == null) {
      return CANNOT_TELL;
    }
    String figure = Measures.INTERVAL_CV.text(cv) + " %";
    // Below twice its floor a CV is no more than the coarseness of the marks allows to say.
    return floor == null
        ? figure
        : "%s%s; timing floor %s %%"
            .formatted(cv < 2 * floor ? "at most " : "", figure, Measures.TIMING_FLOOR.text(floor));
  }

  private static String rotation(Estimate.Rotation rotation) {
    Double hz = rotation.frequencyHz();
    if (hz == null) {
      return CANNOT_TELL;
    }
    List<String> checks = new ArrayList<>();
    boolean differ = false;
    if (rotation.spectrumHz() != null) {
      checks.add("periodogram " + Decimals.fixed(rotation.spectrumHz(), 2));
      differ = Math.abs(rotation.spectrumHz() / hz - 1) > SAME_FREQUENCY;
    }
    if (rotation.autocorrelationHz() != null) {
      checks.add("autocorrelation " + Decimals.fixed(rotation.autocorrelationHz(), 2));
      differ |= Math.abs(rotation.autocorrelationHz() / hz - 1) > SAME_FREQUENCY;
    }
    return figure(hz, 2, "Hz, turns there and back")
        + (checks.isEmpty()
            ? ""
            : "; as a check, " + Phrases.list(checks) + (differ ? ": they disagree" : ""));
  }

  private static String elbow(@Nullable ElbowPath path, Estimate.@Nullable ElbowInSpace space) {
    if (path == null) {
      return "not followed";
    }
    List<String> parts = new ArrayList<>();
    if (path.maxCm() != null) {
      parts.add(figure(path.maxCm(), 1, "cm"));
    }
    if (path.maxForearms() != null) {
      parts.add(figure(path.maxForearms(), 2, "forearm lengths"));
    }
    int gaps = path.gaps().size();
    return "%s from its place in the picture (scale: %s)%s%s%s"
        .formatted(
            parts.isEmpty() ? "without a scale" : "up to " + String.join(", ", parts),
            path.pictureScale().source(),
            space == null
                ? ""
                : "; in space about %s cm (%s to %s, one SD)"
                    .formatted(
                        Decimals.fixed(space.maxCm(), 1),
                        Decimals.fixed(space.lowCm(), 1),
                        Decimals.fixed(space.highCm(), 1)),
            gaps == 0 ? "" : "; lost " + Figures.times(gaps),
            unseen(path));
  }

  private static String unseen(ElbowPath path) {
    ElbowPath.GapEstimate farthest = path.farthestGapEstimate();
    ElbowPath.Unit unit = path.unit();
    return farthest == null || unit == null
        ? ""
        : ", then up to about %s %s away (SD %s)"
            .formatted(unit.of(farthest.distancePx()), unit.name(), unit.of(farthest.sdPx()));
  }

  private static String sources(Estimate found) {
    if (found.sources().isEmpty()) {
      return "nothing that could be used";
    }
    String names =
        Phrases.list(
            Arrays.stream(Estimate.Source.values())
                .filter(found.sources()::contains)
                .map(Estimate.Source::code)
                .toList());
    long heard = found.slaps().stream().filter(s -> s.timedBy() == TimedBy.SOUND).count();
    String timed =
        found.slaps().isEmpty()
            ? ""
            : String.format(
                Locale.ROOT, "; %d of %d slaps timed by sound", heard, found.slaps().size());
    Double offsetS = found.soundOffsetS();
    return names
        + timed
        + (offsetS == null
            ? ""
            : ", which is %s ms %s the picture"
                .formatted(Figures.ms(Math.abs(offsetS)), offsetS < 0 ? "before" : "after"));
  }

  private static String confidence(Estimate found) {
    double[] sorted =
        found.slaps().stream().mapToDouble(EstimatedSlap::confidence).sorted().toArray();
    double median = (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
    return "median %s, lowest %s, on a scale from 0 to 1"
        .formatted(Decimals.fixed(median, 2), Decimals.fixed(sorted[0], 2));
  }

  private static String stretches(Estimate found) {
    return found.stretches().stream()
        .map(burst -> stretch(burst.startS(), burst.endS()))
        .collect(Collectors.joining(", "));
  }

  private static String stretch(double startS, double endS) {
    return "%s to %s s".formatted(Decimals.fixed(startS, 2), Decimals.fixed(endS, 2));
  }

  private static String figure(@Nullable Double value, int decimals, String unit) {
    return value == null ? CANNOT_TELL : Decimals.fixed(value, decimals) + " " + unit;
  }
}
