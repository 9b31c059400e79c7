package palmturn.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.chart.EstimateOverlay;
import palmturn.measure.Limits;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Trial;

/** Says what the program found by itself in a trial, what that rests on, and how sure it is. */
final class EstimateParts {
  /** Two ways to a frequency that differ by more than this share disagree. */
  private static final double SAME_FREQUENCY = 0.03;

  private EstimateParts() {}

  /** Returns the part of a trial's estimate, null where it has none. */
  static Page.@Nullable EstimatePart of(
      Trial trial, @Nullable Reading reading, double windowS, Limits limits) {
    Estimate estimate = trial.estimate();
    if (estimate == null) {
      return null;
    }
    List<String> sentences = new ArrayList<>();
    sentences.add(counts(estimate, reading));
    if (!estimate.slaps().isEmpty()) {
      sentences.add(rests(estimate));
      sentences.add(confidence(estimate));
    }
    if (reading != null && !estimate.slaps().isEmpty()) {
      sentences.add(
          "The strip shows it hollow, but not where a mark of the reader lies within %s and says the same."
              .formatted(Figures.withUnit(Figures.number(EstimateOverlay.SAME_S * 1000, 0), "ms")));
    }
    String sides = sides(estimate, reading);
    if (!sides.isEmpty()) {
      sentences.add(sides);
    }
    String rotation = rotation(estimate.figures().rotation());
    if (!rotation.isEmpty()) {
      sentences.add(rotation);
    }
    Estimate.Shape shape = estimate.shape();
    if (shape != null && shape.turnRange() != null) {
      sentences.add(turn(shape.turnRange()));
    }
    ElbowPath elbow = estimate.elbow();
    sentences.add(
        elbow == null
            ? "The elbow was not followed, so its drift can’t be told."
            : elbow(
                elbow,
                estimate.elbowInSpace(),
                trial.timeScale().known() ? trial.timeScale().realBetween(0, 1) : 1));
    String name = trial.id().name();
    return new Page.EstimatePart(
        sentences,
        estimate.warnings().stream().map(EstimateParts::sentence).toList(),
        elbow == null || elbow.samples().isEmpty()
            ? null
            : Charts.elbow(
                "elbow-" + name,
                "Way of the elbow in the " + Words.trial(trial.id()),
                trial,
                reading,
                elbow,
                windowS,
                limits.elbowCm().value()));
  }

  private static String counts(Estimate estimate, @Nullable Reading reading) {
    long doubles = estimate.slaps().stream().filter(EstimatedSlap::isDouble).count();
    String found =
        !estimate.trialFound() && estimate.slaps().isEmpty()
            ? "The estimate found no trial in this stretch"
            : "The estimate found %s"
                .formatted(counted(estimate.slaps().size() - doubles, doubles));
    if (reading == null) {
      return found + "; nobody has read this trial yet.";
    }
    if (!reading.independent()) {
      return found + "; the reading was not made independently of it.";
    }
    long read = reading.slaps().stream().filter(Slap::counts).count();
    long readDoubles =
        reading.slaps().stream().filter(slap -> slap.kind() == Slap.Kind.DOUBLE).count();
    return "%s, the reading has %s. Equal counts do not yet mean the same slaps."
        .formatted(found, counted(read, readDoubles));
  }

  private static String counted(long slaps, long doubles) {
    return Figures.count(slaps, "slap", "slaps")
        + (doubles == 0 ? "" : " and " + Figures.count(doubles, "double", "doubles"));
  }

  private static String rests(Estimate estimate) {
    List<String> sources =
        Arrays.stream(Estimate.Source.values())
            .filter(estimate.sources()::contains)
            .map(
                source ->
                    switch (source) {
                      case SOUND -> "the sound";
                      case MOTION -> "the motion in the picture";
                      case SHAPE -> "the shape of the hand";
                    })
            .toList();
    String on = "It rests on " + (sources.isEmpty() ? "nothing named" : Words.list(sources));
    Double offsetS = estimate.soundOffsetS();
    String sound =
        offsetS == null
            ? estimate.sources().contains(Estimate.Source.SOUND)
                ? "; the sound’s offset is not known"
                : "; the sound was not used"
            : "; the sound is %s %s against the picture, which is taken out"
                .formatted(
                    Figures.withUnit(Figures.number(Math.abs(offsetS) * 1000, 0), "ms"),
                    offsetS < 0 ? "early" : "late");
    Double floor = estimate.figures().timingFloorPct();
    return on
        + sound
        + (floor == null
            ? "."
            : "; its timing alone would give an interval CV of %s."
                .formatted(Figures.pct(floor, 1)));
  }

  private static String confidence(Estimate estimate) {
    double[] sorted =
        estimate.slaps().stream().mapToDouble(EstimatedSlap::confidence).sorted().toArray();
    double median = (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
    long unheard = estimate.slaps().stream().filter(slap -> slap.soundS() == null).count();
    String heard =
        estimate.sources().contains(Estimate.Source.SOUND) && unheard > 0
            ? "; %s seen and not heard"
                .formatted(Figures.count(unheard, "contact was", "contacts were"))
            : "";
    return "Its confidence in a contact, on its own scale from 0 to 1, is %s in the middle and %s at the least%s."
        .formatted(Figures.number(median, 2), Figures.number(sorted[0], 2), heard);
  }

  private static String sides(Estimate estimate, @Nullable Reading reading) {
    long unknown = estimate.slaps().stream().filter(slap -> slap.side() == Side.UNKNOWN).count();
    if (unknown == 0) {
      return "";
    }
    if (unknown < estimate.slaps().size()) {
      return "The side of %s it can’t tell."
          .formatted(Figures.count(unknown, "contact", "contacts"));
    }
    boolean named =
        reading != null && reading.slaps().stream().anyMatch(slap -> slap.side() != Side.UNKNOWN);
    return named
        ? "Which contacts are by the palm it can’t tell by itself; the marks of the reader name them"
            + " in the strip."
        : "Which contacts are by the palm it can’t tell until one of them is named.";
  }

  private static String rotation(Estimate.Rotation rotation) {
    Double hz = rotation.frequencyHz();
    if (hz == null) {
      return "";
    }
    List<String> checks = new ArrayList<>();
    boolean differ = false;
    Double spectrum = rotation.spectrumHz();
    if (spectrum != null) {
      checks.add("a periodogram says " + Figures.number(spectrum, 2));
      differ |= Math.abs(spectrum / hz - 1) > SAME_FREQUENCY;
    }
    Double lag = rotation.autocorrelationHz();
    if (lag != null) {
      checks.add("the autocorrelation " + Figures.number(lag, 2));
      differ |= Math.abs(lag / hz - 1) > SAME_FREQUENCY;
    }
    String by =
        checks.isEmpty()
            ? ""
            : "; as a check, " + Words.list(checks) + (differ ? ", which differs" : "");
    return "The hand turned there and back %s times a second%s."
        .formatted(Figures.number(hz, 2), by);
  }

  private static String turn(Estimate.TurnRange range) {
    Estimate.TurnChange change = range.change();
    String later =
        change == null
            ? ""
            : "; the last third against the first: %s (95 %% interval %s to %s)"
                .formatted(
                    Figures.signed(change.deg(), 0) + "°",
                    Figures.signed(change.lowDeg(), 0),
                    Figures.signed(change.highDeg(), 0));
    return "From side to side the hand turned by about %s, by its shape%s."
        .formatted(Figures.number(range.medianDeg(), 0) + "°", later);
  }

  private static String elbow(
      ElbowPath elbow, Estimate.@Nullable ElbowInSpace space, double realPerMediaS) {
    Double cm = elbow.maxCm();
    Double forearms = elbow.maxForearms();
    String far =
        cm != null
            ? Figures.withUnit(Figures.number(cm, 1), "cm")
            : forearms != null ? Figures.number(forearms, 2) + " forearm lengths" : null;
    double lostS = elbow.gaps().stream().mapToDouble(gap -> gap.endS() - gap.startS()).sum();
    String lost =
        lostS <= 0
            ? ""
            : "; it was out of sight of the tracking for %s"
                    .formatted(Figures.withUnit(Figures.number(lostS * realPerMediaS, 1), "s"))
                + unseen(elbow);
    return far == null
        ? "The elbow was followed, but without a scale its drift has no unit" + lost + "."
        : "The elbow strayed %s at the most, in the plane of the picture (scale: %s)%s."
                .formatted(far, elbow.pictureScale().source(), lost)
            + (space == null ? "" : " " + inSpace(space));
  }

  private static String unseen(ElbowPath elbow) {
    ElbowPath.GapEstimate farthest = elbow.farthestGapEstimate();
    ElbowPath.Unit unit = elbow.unit();
    if (farthest == null || unit == null) {
      return "";
    }
    String far = Figures.number(farthest.distancePx() * unit.perPixel(), unit.decimals());
    return ", in which it is taken to have been up to about %s away (dashed; %s one SD)"
        .formatted(
            Figures.withUnit(far, unit.name()),
            Figures.number(farthest.sdPx() * unit.perPixel(), unit.decimals()));
  }

  private static String inSpace(Estimate.ElbowInSpace space) {
    return "In space that is about %s (%s to %s, one SD), if the hand stayed on the target."
        .formatted(
            Figures.withUnit(Figures.number(space.maxCm(), 1), "cm"),
            Figures.number(space.lowCm(), 1),
            Figures.number(space.highCm(), 1));
  }

  private static String sentence(String warning) {
    String text = Words.capital(warning);
    return text.endsWith(".") ? text : text + ".";
  }
}
