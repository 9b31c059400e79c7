package palmturn.report;

import java.util.ArrayList;
import java.util.Base64;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import palmturn.chart.BeatStrip;
import palmturn.measure.FaultCount;
import palmturn.measure.FaultKind;
import palmturn.measure.Measure;
import palmturn.measure.Measures;
import palmturn.measure.Phrases;
import palmturn.measure.Quality;
import palmturn.measure.TrialScore;
import palmturn.numbers.Range;
import palmturn.settle.SettledTrial;
import palmturn.trial.Reading;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.Trial;
import palmturn.wording.Figures;
import palmturn.wording.MarkNames;
import palmturn.wording.MeasureSentences;
import palmturn.wording.Names;
import palmturn.wording.VerdictLabel;

/** The part of each trial that has marks: strip, intervals, measures, estimate, faults. */
final class TrialParts {
  private static final int MOST_PICTURES = 6;

  private final ReportInput input;

  TrialParts(ReportInput input) {
    this.input = input;
  }

  List<Page.TrialPart> parts() {
    List<Page.TrialPart> parts = new ArrayList<>();
    for (ReportInput.Filmed filmed : input.trials()) {
      Reading reading = filmed.reading();
      TrialScore score = score(filmed.trial());
      if (reading != null && score != null) {
        parts.add(part(filmed, reading, score));
      } else if (filmed.trial().estimate() != null) {
        parts.add(estimateOnly(filmed.trial()));
      }
    }
    return parts;
  }

  private @Nullable TrialScore score(Trial trial) {
    return input.score().trials().stream()
        .filter(score -> score.trial().equals(trial.id()))
        .findFirst()
        .orElse(null);
  }

  private Page.TrialPart part(ReportInput.Filmed filmed, Reading reading, TrialScore score) {
    Trial trial = filmed.trial();
    String name = trial.id().name();
    String words = Names.trial(trial.id());
    double windowS = input.session().windowS();
    List<Fault> faults = faults(trial, reading);
    List<Page.FaultPicture> pictures = pictures(trial, words, faults);
    return new Page.TrialPart(
        name,
        Phrases.capital(words),
        read(filmed, reading),
        ReportCharts.strip(
            "strip-" + name,
            "Marks of the " + words + ": " + counts(score),
            trial,
            reading,
            windowS),
        ReportCharts.intervals(
            "intervals-" + name, "Intervals of the " + words + " against time", score, windowS),
        groups(score),
        summary(score),
        source(filmed, reading),
        ReadingParts.of(filmed, input),
        EstimateParts.of(trial, reading, windowS, input.limits()),
        pictures,
        pictures.size() < faults.size()
            ? String.format(
                Locale.ROOT,
                "%d of %s shown as a picture.",
                pictures.size(),
                Figures.count(faults.size(), "fault"))
            : "");
  }

  /** A trial that nobody has read yet has no figures, but what was found in it can be seen. */
  private Page.TrialPart estimateOnly(Trial trial) {
    String name = trial.id().name();
    String words = Names.trial(trial.id());
    double windowS = input.session().windowS();
    return new Page.TrialPart(
        name,
        Phrases.capital(words),
        "Not read yet.",
        ReportCharts.strip("strip-" + name, "Estimate of the " + words, trial, null, windowS),
        null,
        List.of(),
        "",
        "",
        null,
        EstimateParts.of(trial, null, windowS, input.limits()),
        List.of(),
        "");
  }

  private static String read(ReportInput.Filmed filmed, Reading reading) {
    SettledTrial settled = filmed.settled();
    return settled != null && reading.reader().equals(SettledTrial.READER)
        ? "Settled between %s and %s, %s."
            .formatted(
                settled.comparison().a().name(),
                settled.comparison().b().name(),
                settled.open() == 0 ? "finished" : "open")
        : "Read by " + Names.reading(reading) + ".";
  }

  private static String source(ReportInput.Filmed filmed, Reading reading) {
    return (reading.reader().equals(SettledTrial.READER)
            ? "Every figure in this table comes from the settled reading"
            : "Every figure in this table comes from the marks of " + reading.reader())
        + (filmed.trial().estimate() != null && filmed.trial().estimate().elbow() != null
            ? "; the elbow’s from the estimate."
            : ".");
  }

  static String counts(TrialScore score) {
    return Figures.slaps(score.accuracy().slaps(), score.accuracy().doubles());
  }

  private List<Page.MeasureGroup> groups(TrialScore score) {
    List<Page.MeasureGroup> groups = new ArrayList<>();
    for (Quality quality : Quality.values()) {
      List<Measure> measures =
          Measures.ALL.stream().filter(measure -> measure.quality() == quality).toList();
      // The elbow is told once below the page's figures, not in three empty rows a trial.
      boolean untracked =
          quality == Quality.DRIFT && measures.stream().allMatch(m -> m.value(score) == null);
      if (!untracked) {
        groups.add(
            new Page.MeasureGroup(
                quality.shownName(), measures.stream().map(m -> row(m, score)).toList()));
      }
    }
    return groups;
  }

  private Page.MeasureRow row(Measure measure, TrialScore score) {
    Double value = measure.value(score);
    Range range = measure.interval95(score);
    boolean headline = Measures.headline(measure.quality()).equals(measure);
    return new Page.MeasureRow(
        measure.name(),
        Figures.withUnit(Figures.of(measure, score), value == null ? "" : measure.unit()),
        range == null ? "" : measure.text(range),
        headline
            ? VerdictLabel.of(
                measure.quality(), score.verdicts().get(measure.quality()), input.limits())
            : null,
        MeasureSentences.of(measure, score));
  }

  private static String summary(TrialScore score) {
    List<String> parts = new ArrayList<>();
    for (Map.Entry<FaultKind, FaultCount> each : score.accuracy().faults().entrySet()) {
      FaultCount count = each.getValue();
      if (count.all() > 0) {
        parts.add(
            String.format(
                Locale.ROOT, "%d %s (%s)", count.all(), Names.fault(each.getKey()), sides(count)));
      }
    }
    return parts.isEmpty()
        ? "No fault was marked in the window."
        : "In the window: " + String.join(", ", parts) + ".";
  }

  private static String sides(FaultCount count) {
    List<String> sides = new ArrayList<>();
    if (count.palm() > 0) {
      sides.add(count.palm() + " palm");
    }
    if (count.back() > 0) {
      sides.add(count.back() + " back");
    }
    if (count.unknown() > 0) {
      sides.add(count.unknown() + " side unknown");
    }
    return String.join(", ", sides);
  }

  private record Fault(double timeS, String word, String note) {}

  private List<Fault> faults(Trial trial, Reading reading) {
    BeatStrip.Window window = BeatStrip.Window.of(trial, reading, input.session().windowS());
    if (window == null) {
      return List.of();
    }
    List<Fault> faults = new ArrayList<>();
    for (Slap slap : reading.slaps()) {
      if (slap.faulty() && window.contains(slap.timeS())) {
        faults.add(new Fault(slap.timeS(), word(slap), slap.note()));
      }
    }
    for (Span span : reading.spans()) {
      double middleS = (span.startS() + span.endS()) / 2;
      if (span.kind().spoils() && window.contains(middleS)) {
        faults.add(new Fault(middleS, MarkNames.fault(span.kind()), span.note()));
      }
    }
    faults.sort(Comparator.comparingDouble(Fault::timeS));
    return faults;
  }

  private static String word(Slap slap) {
    return switch (slap.side()) {
      case PALM, BACK -> MarkNames.fault(slap) + ", " + slap.side().code();
      case UNKNOWN -> MarkNames.fault(slap);
    };
  }

  /** One of each kind first, then the earliest others, as far as there is room. */
  private List<Page.FaultPicture> pictures(Trial trial, String words, List<Fault> faults) {
    Set<String> kinds = new HashSet<>();
    List<Fault> wanted = new ArrayList<>();
    List<Fault> others = new ArrayList<>();
    for (Fault fault : faults) {
      (kinds.add(fault.word()) ? wanted : others).add(fault);
    }
    wanted.addAll(others);
    List<Page.FaultPicture> pictures = new ArrayList<>();
    for (Fault fault :
        wanted.stream()
            .limit(MOST_PICTURES)
            .sorted(Comparator.comparingDouble(Fault::timeS))
            .toList()) {
      byte[] jpeg = input.stills().jpeg(trial.id(), fault.timeS());
      if (jpeg != null) {
        String at = Figures.seconds(fault.timeS(), 2);
        pictures.add(
            new Page.FaultPicture(
                "data:image/jpeg;base64," + Base64.getEncoder().encodeToString(jpeg),
                "%s at %s in the clip: %s".formatted(Phrases.capital(words), at, fault.word()),
                "%s at %s%s"
                    .formatted(
                        Phrases.capital(fault.word()),
                        at,
                        fault.note().isBlank() ? "" : ": " + fault.note())));
      }
    }
    return pictures;
  }
}
