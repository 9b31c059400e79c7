package palmturn.report;

import java.util.ArrayList;
import java.util.Base64;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import palmturn.chart.BeatStrip;
import palmturn.chart.MarkWords;
import palmturn.measure.FaultCount;
import palmturn.measure.FaultKind;
import palmturn.measure.Limit;
import palmturn.measure.Measure;
import palmturn.measure.Measures;
import palmturn.measure.Quality;
import palmturn.measure.TrialScore;
import palmturn.numbers.Range;
import palmturn.settle.SettledTrial;
import palmturn.trial.Reading;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.Trial;

/** Builds the part of each trial that has marks: strip, intervals, measures, estimate, faults. */
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
    String words = Words.trial(trial.id());
    double windowS = input.session().windowS();
    List<Fault> faults = faults(trial, reading);
    List<Page.FaultPicture> pictures = pictures(trial, words, faults);
    return new Page.TrialPart(
        name,
        Words.capital(words),
        read(filmed, reading),
        Charts.strip(
            "strip-" + name,
            "Marks of the " + words + ": " + counts(score),
            trial,
            reading,
            windowS),
        Charts.intervals(
            "intervals-" + name, "Intervals of the " + words + " against time", score, windowS),
        groups(score),
        summary(score),
        source(filmed, reading),
        ReadingParts.of(filmed, input),
        EstimateParts.of(trial, reading, windowS, input.limits()),
        pictures,
        pictures.size() < faults.size()
            ? "%d of %s shown as a picture."
                .formatted(pictures.size(), Figures.count(faults.size(), "fault", "faults"))
            : "");
  }

  /** A trial that nobody has read yet has no figures, but what was found in it can be seen. */
  private Page.TrialPart estimateOnly(Trial trial) {
    String name = trial.id().name();
    String words = Words.trial(trial.id());
    double windowS = input.session().windowS();
    return new Page.TrialPart(
        name,
        Words.capital(words),
        "Not read yet.",
        Charts.strip("strip-" + name, "Estimate of the " + words, trial, null, windowS),
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
        : "Read by " + Words.reading(reading) + ".";
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
    int doubles = score.accuracy().doubles();
    return Figures.count(score.accuracy().slaps(), "slap", "slaps")
        + (doubles == 0 ? "" : ", " + Figures.count(doubles, "double", "doubles"));
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
                Words.quality(quality), measures.stream().map(m -> row(m, score)).toList()));
      }
    }
    return groups;
  }

  private Page.MeasureRow row(Measure measure, TrialScore score) {
    Double value = measure.value(score);
    Range range = Figures.interval(measure, score);
    boolean headline = Measures.headline(measure.quality()).id().equals(measure.id());
    Limit limit = headline ? Verdict.limit(measure.quality(), input.limits()) : null;
    return new Page.MeasureRow(
        measure.name(),
        value == null
            ? "–"
            : MeasureSentences.atMost(measure, score)
                + Figures.withUnit(Figures.of(measure, value), measure.unit()),
        range == null ? "" : Figures.of(measure, range),
        limit == null
            ? ""
            : (Verdict.least(measure.quality()) ? "≥\u00A0" : "≤\u00A0")
                + Figures.plain(limit.value()),
        headline
            ? Verdict.of(measure.quality(), score.verdicts().get(measure.quality()), input.limits())
            : null,
        MeasureSentences.of(measure, score));
  }

  private static String summary(TrialScore score) {
    List<String> parts = new ArrayList<>();
    for (Map.Entry<FaultKind, FaultCount> each : score.accuracy().faults().entrySet()) {
      FaultCount count = each.getValue();
      if (count.all() > 0) {
        parts.add("%d %s (%s)".formatted(count.all(), Words.fault(each.getKey()), sides(count)));
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
        faults.add(new Fault(middleS, MarkWords.fault(span.kind()), span.note()));
      }
    }
    faults.sort(Comparator.comparingDouble(Fault::timeS));
    return faults;
  }

  private static String word(Slap slap) {
    return switch (slap.side()) {
      case PALM, BACK -> MarkWords.fault(slap) + ", " + slap.side().code();
      case UNKNOWN -> MarkWords.fault(slap);
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
        String at = Figures.withUnit(Figures.number(fault.timeS(), 2), "s");
        pictures.add(
            new Page.FaultPicture(
                "data:image/jpeg;base64," + Base64.getEncoder().encodeToString(jpeg),
                "%s at %s in the clip: %s".formatted(Words.capital(words), at, fault.word()),
                "%s at %s%s"
                    .formatted(
                        Words.capital(fault.word()),
                        at,
                        fault.note().isBlank() ? "" : ": " + fault.note())));
      }
    }
    return pictures;
  }
}
