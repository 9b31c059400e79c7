package palmturn.report;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import palmturn.advise.AthleteNotice;
import palmturn.advise.Caution;
import palmturn.measure.Decimals;
import palmturn.measure.Limit;
import palmturn.measure.Limits;
import palmturn.measure.Measures;
import palmturn.measure.Phrases;
import palmturn.measure.ProgressScore;
import palmturn.measure.Quality;
import palmturn.settle.SettledTrial;
import palmturn.trial.Block;
import palmturn.trial.ClipFacts;
import palmturn.trial.Hand;
import palmturn.trial.Message;
import palmturn.trial.Reading;
import palmturn.trial.Session;
import palmturn.trial.Trial;
import palmturn.wording.CourseSentences;
import palmturn.wording.Figures;
import palmturn.wording.Names;
import palmturn.wording.VerdictLabel;

/**
 * The report of a session, laid out once and written as one HTML page that fetches nothing, or as
 * PDF. The same input gives the same text.
 */
public final class Report {
  static final TemplateEngine TEMPLATES =
      TemplateEngine.createPrecompiled(
          null, ContentType.Html, Report.class.getClassLoader(), "palmturn.report.pages");
  private static final DateTimeFormatter MADE =
      DateTimeFormatter.ofPattern("d MMMM uuuu, HH:mm 'UTC'", Locale.UK).withZone(ZoneOffset.UTC);

  private final Page page;
  private final Instant madeAt;

  private Report(Page page, Instant madeAt) {
    this.page = page;
    this.madeAt = madeAt;
  }

  /** Lays a report out; pictures are taken out of the clips here. */
  public static Report of(ReportInput input) {
    return new Report(page(input), input.madeAt());
  }

  /** Returns the report as HTML. */
  public String html() {
    return render(Style.screen(), Chart::svg, FirstPage.WHOLE, true);
  }

  /**
   * Returns the report as PDF, its charts as vectors and its fonts inside. The first page is
   * shortened until it is one page.
   */
  public byte[] pdf(Paper paper) {
    String css = Style.paper(paper);
    Pdf pdf = new Pdf();
    return pdf.of(render(css, pdf, fitting(css), true), page.title(), madeAt);
  }

  private FirstPage fitting(String css) {
    for (FirstPage first : FirstPage.SHORTER) {
      Pdf pdf = new Pdf();
      if (pdf.pages(render(css, pdf, first, false)) == 1) {
        return first;
      }
    }
    return FirstPage.SHORTER.get(FirstPage.SHORTER.size() - 1);
  }

  private String render(String css, Chart.Markup charts, FirstPage first, boolean details) {
    StringOutput out = new StringOutput();
    TEMPLATES.render(
        "report.jte",
        Map.of("page", page, "css", css, "charts", charts, "first", first, "details", details),
        out);
    return XmlText.replaceInvalid(out.toString());
  }

  static Page page(ReportInput input) {
    Session session = input.session();
    Caveats notShown = new Caveats(input);
    BlockParts blocks = new BlockParts(input);
    String lead = blocks.lead();
    return new Page(
        title(input),
        "%s, filmed %s".formatted(session.athlete(), Names.date(session.date())),
        intro(input),
        notShown.open(),
        lead == null ? null : blocks.part(lead),
        input.score().hands().isEmpty() ? null : TrainPart.of(input.training()),
        CoachMessage.of(session, input.madeAt()),
        Caution.all(),
        new ChangeParts(input).parts(),
        progress(input),
        blocks.blocks().stream().filter(block -> !block.equals(lead)).map(blocks::part).toList(),
        GlanceRows.of(input),
        CeilingSentences.of(input),
        new AgreementParts(input).parts(),
        notShown.limits(),
        new TrialParts(input).parts(),
        input.trials().stream().map(Report::filmed).toList(),
        limits(input.limits()),
        session.messages().stream().map(Report::message).toList(),
        "Made by Palmturn on " + MADE.format(input.madeAt()) + ".");
  }

  private static Page.@Nullable ProgressPart progress(ReportInput input) {
    ProgressScore score = input.progress();
    return score == null || score.sessions() < 2
        ? null
        : new Page.ProgressPart(
            ProgressReport.intro(score),
            ProgressReport.parts(score, input.limits()),
            CourseSentences.KEY);
  }

  private static String title(ReportInput input) {
    List<Trial> trials = input.trials().stream().map(ReportInput.Filmed::trial).toList();
    List<Hand> hands = trials.stream().map(trial -> trial.id().hand()).distinct().toList();
    List<String> parts = new ArrayList<>();
    parts.add(input.session().athlete());
    if (hands.size() == 1) {
      parts.add(Names.hand(hands.get(0)));
    } else if (hands.size() == 2) {
      parts.add("both hands");
    }
    List<String> blocks =
        trials.stream()
            .map(trial -> trial.id().block())
            .distinct()
            .sorted(Comparator.comparingInt(Block::order))
            .map(Names::block)
            .toList();
    if (!blocks.isEmpty()) {
      parts.add(Phrases.list(blocks));
    }
    return String.join(", ", parts);
  }

  private static List<String> intro(ReportInput input) {
    Session session = input.session();
    List<String> intro = new ArrayList<>();
    if (session.facts().club() != null) {
      intro.add(session.facts().club() + ".");
    }
    intro.add(
        "Filmed %s: %s, scored over %s from the first slap."
            .formatted(
                Names.date(session.date()),
                Figures.count(input.trials().size(), "trial"),
                Figures.withUnit(Decimals.plain(session.windowS()), "s")));
    if (session.facts().racketHand() != null) {
      intro.add("Racket hand: " + session.facts().racketHand().code() + ".");
    }
    AthleteNotice pain = AthleteNotice.pain(session.facts());
    if (pain != null) {
      intro.add(pain.sentence());
    }
    List<String> readers =
        input.trials().stream()
            .map(ReportInput.Filmed::reading)
            .filter(Objects::nonNull)
            .map(Reading::reader)
            .distinct()
            .toList();
    if (readers.size() == 1) {
      intro.add(
          readers.get(0).equals(SettledTrial.READER)
              ? "Every figure comes from the settled reading."
              : "Every figure comes from the marks of " + readers.get(0) + ".");
    } else if (readers.size() > 1) {
      intro.add(
          "Figures come from the readings by %s; each trial says whose."
              .formatted(Phrases.list(readers)));
    }
    if (input.score().trials().stream().anyMatch(score -> score.drift().elbowMaxCm() != null)) {
      intro.add("The elbow’s come from the estimate.");
    }
    return intro;
  }

  private static Page.FilmedRow filmed(ReportInput.Filmed filmed) {
    Trial trial = filmed.trial();
    ClipFacts clip = filmed.clip();
    Reading reading = filmed.reading();
    String path = trial.clip().path();
    String pace =
        trial.paceSlapsPerS() == null
            ? ""
            : ", to a click at %s slaps/s".formatted(Decimals.plain(trial.paceSlapsPerS()));
    return new Page.FilmedRow(
        Phrases.capital(Names.trial(trial.id())) + pace,
        path.substring(path.lastIndexOf('/') + 1),
        clip == null ? "–" : Figures.withUnit(Figures.number(clip.durationS(), 1), "s"),
        clip == null ? "–" : frames(clip),
        clip == null ? "–" : clip.sound() != null ? "yes" : "none",
        reading == null ? "not marked" : reading.reader() + (reading.finished() ? "" : ", open"),
        clip == null ? List.of("The clip could not be opened.") : clip.warnings());
  }

  private static String frames(ClipFacts clip) {
    String text =
        String.format(
            Locale.ROOT,
            "%s a second%s, %d × %d",
            Figures.number(clip.meanFps(), 1),
            clip.variableRate() ? " (varies)" : "",
            clip.width(),
            clip.height());
    return clip.captureFps() == null
        ? text
        : text + ", captured at " + Decimals.plain(clip.captureFps());
  }

  private static List<String> limits(Limits limits) {
    List<String> lines = new ArrayList<>();
    for (Quality quality : Quality.values()) {
      Limit limit = limits.of(quality);
      if (limit != null) {
        lines.add(
            "%s: %s %s (%s)"
                .formatted(
                    Phrases.capital(Measures.headline(quality).name()),
                    quality.limitIsLeast() ? "at least" : "at most",
                    VerdictLabel.limit(quality, limit),
                    limit.source()));
      }
    }
    Limits.Margins margins = limits.margins();
    lines.add(margin("speed", margins.speedPct(), Quality.SPEED));
    lines.add(margin("clean share", margins.cleanSharePoints(), Quality.ACCURACY));
    lines.add(margin("steady CV", margins.steadyCvPoints(), Quality.RHYTHM));
    lines.add(margin("slow-down", margins.slowDownPctPerS(), Quality.ENDURANCE));
    return lines;
  }

  private static String margin(String what, Limit margin, Quality quality) {
    return "A difference in %s matters from %s (%s)"
        .formatted(
            what,
            Figures.withUnit(Decimals.plain(margin.value()), quality.marginUnit()),
            margin.source());
  }

  private static Page.MessageRow message(Message message) {
    List<String> about = new ArrayList<>();
    about.add(MADE.format(message.at()));
    if (message.trial() != null) {
      about.add(Names.trial(message.trial()));
    }
    if (message.timeS() != null) {
      about.add("at " + Figures.withUnit(Figures.number(message.timeS(), 2), "s") + " in the clip");
    }
    return new Page.MessageRow(message.from(), String.join(", ", about), message.text());
  }
}
