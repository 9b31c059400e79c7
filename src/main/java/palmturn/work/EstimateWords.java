package palmturn.work;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Side;
import palmturn.trial.Span;
import palmturn.trial.TimedBy;
import palmturn.trial.Zone;

/** What an estimate found, as short lines of plain text; its warnings stand beside them. */
public final class EstimateWords {
  private static final String CANNOT_TELL = "can't be told";

  private EstimateWords() {}

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
    lines.add(
        new Line(
            "rotation",
            figure(found.figures().rotation().frequencyHz(), 2, "turns there and back/s")));
    lines.add(new Line("elbow", elbow(found.elbow(), found.elbowInSpace())));
    lines.add(new Line("made from", sources(found)));
    if (found.stretches().size() > 1) {
      lines.add(new Line("stretches", bursts(found)));
    }
    return lines;
  }

  private static String slaps(Estimate found) {
    long doubles = found.slaps().stream().filter(EstimatedSlap::isDouble).count();
    long counted = found.slaps().size() - doubles;
    return doubles == 0
        ? String.valueOf(counted)
        : "%d, and %d double tap%s".formatted(counted, doubles, doubles == 1 ? "" : "s");
  }

  private static String sides(Estimate found) {
    long palm = of(found, Side.PALM);
    long back = of(found, Side.BACK);
    long unknown = of(found, Side.UNKNOWN);
    if (palm + back == 0) {
      return found.slaps().isEmpty() ? CANNOT_TELL : "unknown until the side of one is named";
    }
    return "palm %d, back %d%s"
        .formatted(palm, back, unknown == 0 ? "" : ", unknown %d".formatted(unknown));
  }

  private static long of(Estimate found, Side side) {
    return found.slaps().stream().filter(slap -> slap.side() == side).count();
  }

  private static String zones(Estimate found) {
    List<String> parts = new ArrayList<>();
    for (Zone zone : Zone.values()) {
      long slaps = found.slaps().stream().filter(slap -> slap.zone() == zone).count();
      if (slaps > 0) {
        parts.add("%s %d".formatted(zone.code(), slaps));
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
            .filter(span -> span.kind() == Span.Kind.BENT_WRIST)
            .map(span -> String.format(Locale.ROOT, "%.2f to %.2f s", span.startS(), span.endS()))
            .collect(Collectors.joining(", "));
    return spans.isEmpty() ? "not bent for long" : "bent " + spans;
  }

  private static String turn(Estimate.@Nullable TurnRange range) {
    if (range == null) {
      return CANNOT_TELL;
    }
    String usual = String.format(Locale.ROOT, "about %.0f° from side to side", range.medianDeg());
    Estimate.TurnChange change = range.change();
    return change == null
        ? usual
        : usual
            + String.format(
                    Locale.ROOT,
                    "; last third less first %+.0f° (95 %% interval %+.0f to %+.0f)",
                    change.deg(),
                    change.lowDeg(),
                    change.highDeg())
                .replace('-', '−');
  }

  private static String cv(Estimate found) {
    Double cv = found.figures().intervalCvPct();
    Double floor = found.figures().timingFloorPct();
    if (cv == null) {
      return CANNOT_TELL;
    }
    if (floor == null) {
      return figure(cv, 1, "%");
    }
    // Below twice its floor a CV is no more than the coarseness of the marks allows to say.
    return "%s%s; the timing alone gives %s"
        .formatted(cv < 2 * floor ? "at most " : "", figure(cv, 1, "%"), figure(floor, 1, "%"));
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
    String far = parts.isEmpty() ? "without a scale" : "up to " + String.join(", ", parts);
    String inSpace =
        space == null
            ? ""
            : String.format(
                Locale.ROOT,
                "; in space about %.1f cm (%.1f to %.1f, one SD)",
                space.maxCm(),
                space.lowCm(),
                space.highCm());
    int gaps = path.gaps().size();
    String lost = gaps == 0 ? "" : gaps == 1 ? "; lost once" : "; lost %d times".formatted(gaps);
    return "%s from its place in the picture (scale: %s)%s%s%s"
        .formatted(far, path.pictureScale().source(), inSpace, lost, unseen(path));
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
    Set<Estimate.Source> ordered = EnumSet.copyOf(found.sources());
    String names = ordered.stream().map(Estimate.Source::code).collect(Collectors.joining(", "));
    long heard = found.slaps().stream().filter(s -> s.timedBy() == TimedBy.SOUND).count();
    String timed =
        found.slaps().isEmpty()
            ? ""
            : "; %d of %d slaps timed by sound".formatted(heard, found.slaps().size());
    Double offset = found.soundOffsetS();
    return names
        + timed
        + (offset == null
            ? ""
            : String.format(
                Locale.ROOT,
                ", which is %.1f ms %s the picture",
                Math.abs(1000 * offset),
                offset < 0 ? "before" : "after"));
  }

  private static String bursts(Estimate found) {
    return found.stretches().stream()
        .map(burst -> String.format(Locale.ROOT, "%.2f to %.2f s", burst.startS(), burst.endS()))
        .collect(Collectors.joining(", "));
  }

  private static String figure(@Nullable Double value, int digits, String unit) {
    return value == null
        ? CANNOT_TELL
        : String.format(Locale.ROOT, "%." + digits + "f %s", value, unit);
  }
}
