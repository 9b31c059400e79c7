package palmturn.report;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.chart.EstimateOverlay;
import palmturn.measure.Decimals;
import palmturn.measure.Limits;
import palmturn.measure.Phrases;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Reading;
import palmturn.trial.Slap;
import palmturn.trial.Trial;
import palmturn.wording.EstimateSummary;
import palmturn.wording.Figures;
import palmturn.wording.Names;

/** The estimate of a trial, beside what its reader has marked. */
final class EstimateParts {
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
    if (reading != null && !estimate.slaps().isEmpty()) {
      sentences.add(
          ("The strip shows it in outline, except where a mark of the reader lies within %s and"
                  + " says the same.")
              .formatted(Figures.withUnit(Decimals.fixed(EstimateOverlay.SAME_S * 1000, 0), "ms")));
    }
    ElbowPath elbow = estimate.elbow();
    if (elbow != null && !elbow.gaps().isEmpty()) {
      double real = trial.timeScale().known() ? trial.timeScale().realBetween(0, 1) : 1;
      double lostS = elbow.gaps().stream().mapToDouble(gap -> gap.endS() - gap.startS()).sum();
      sentences.add(
          "The elbow was lost for %s; the dashed line is where it may have been."
              .formatted(Figures.seconds(lostS * real, 1)));
    }
    String name = trial.id().name();
    return new Page.EstimatePart(
        EstimateSummary.of(estimate),
        sentences,
        estimate.warnings().stream().map(EstimateParts::sentence).toList(),
        elbow == null || elbow.samples().isEmpty()
            ? null
            : ReportCharts.elbow(
                "elbow-" + name,
                "Displacement of the elbow in the " + Names.trial(trial.id()),
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
                .formatted(Figures.slaps(estimate.slaps().size() - doubles, doubles));
    if (reading == null) {
      return found + "; nobody has read this trial yet.";
    }
    if (!reading.independent()) {
      return found + "; the reading was not made independently of it.";
    }
    long read = reading.slaps().stream().filter(Slap::counts).count();
    long readDoubles =
        reading.slaps().stream().filter(slap -> slap.kind() == Slap.Kind.DOUBLE).count();
    return "%s, the reading has %s. Equal counts need not be the same slaps."
        .formatted(found, Figures.slaps(read, readDoubles));
  }

  private static String sentence(String warning) {
    String text = Phrases.capital(warning);
    return text.endsWith(".") ? text : text + ".";
  }
}
