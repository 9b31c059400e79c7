package palmturn.report;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import palmturn.advise.Advice;
import palmturn.advise.Caution;
import palmturn.advise.LibraryDrill;
import palmturn.advise.Plan;
import palmturn.advise.StartingPace;
import palmturn.advise.Training;
import palmturn.measure.Phrases;
import palmturn.measure.Quality;
import palmturn.wording.Figures;

/**
 * The report's part on what to train: the advice, the coming weeks, and each drill with its
 * cautions beside it.
 *
 * @param headline which hand, and for what, in a few words
 * @param advice by rule
 * @param weeks the plan
 * @param note what holds before and after the weeks
 * @param before cautions that hold for every drill
 * @param drills each that is named above
 */
public record TrainPart(
    String headline,
    List<AdviceRow> advice,
    List<WeekRow> weeks,
    String note,
    List<String> before,
    List<DrillRow> drills) {

  /** One thing to do, with its figures. */
  public record AdviceRow(String head, String why, String action, List<Link> drills) {}

  /** A drill by its name, and where it is told in full. */
  public record Link(String anchor, String name) {}

  /** One week of the plan. */
  public record WeekRow(String head, Link drill, String rest, String control) {}

  /** One drill in full. */
  public record DrillRow(
      String anchor,
      String name,
      String how,
      String dose,
      String harder,
      String retest,
      String stop,
      List<String> cautions,
      String source) {}

  static TrainPart of(Training training) {
    Set<Caution> general = new LinkedHashSet<>(List.of(Caution.URGENT, Caution.PAIN));
    return new TrainPart(
        headline(training),
        training.advice().stream().map(advice -> row(advice, training)).toList(),
        training.plan().weeks().stream().map(TrainPart::row).toList(),
        typeset(training.plan().note()),
        training.drills().isEmpty() ? List.of() : general.stream().map(Caution::text).toList(),
        training.drills().stream().map(drill -> row(drill, general)).toList());
  }

  private static String headline(Training training) {
    if (!training.plan().weeks().isEmpty()) {
      return training.plan().weeks().get(0).aim();
    }
    return training.advice().isEmpty()
        ? "nothing yet"
        : head(training.advice().get(0)).toLowerCase(Locale.ROOT);
  }

  private static AdviceRow row(Advice advice, Training training) {
    List<Link> links = new ArrayList<>();
    for (String code : advice.drills()) {
      training.drills().stream()
          .filter(drill -> drill.code().equals(code))
          .map(TrainPart::link)
          .forEach(links::add);
    }
    return new AdviceRow(head(advice), typeset(advice.why()), typeset(advice.action()), links);
  }

  private static String head(Advice advice) {
    Quality quality = advice.quality();
    return switch (advice.rule()) {
      case Advice.FILM_AGAIN -> "Film or mark again";
      case Advice.NOTHING -> "Keep";
      default -> quality == null ? "Both hands" : quality.shownName();
    };
  }

  private static WeekRow row(Plan.Week week) {
    StartingPace pace = week.pace();
    return new WeekRow(
        String.format(Locale.ROOT, "Week %d, %s", week.number(), week.aim()),
        link(week.drill()),
        typeset(
            ". "
                + week.drill().dose()
                + (pace == null
                    ? ""
                    : " Start the click at %s: %s."
                        .formatted(
                            Figures.withUnit(Figures.number(pace.slapsPerS(), 1), "slaps/s"),
                            pace.words()))),
        typeset(week.control()));
  }

  private static DrillRow row(LibraryDrill drill, Set<Caution> general) {
    return new DrillRow(
        anchor(drill),
        Phrases.capital(drill.name()),
        typeset(drill.how()),
        typeset(drill.dose()),
        typeset(drill.harderWhen()),
        typeset(drill.retest()),
        typeset(drill.stop()),
        drill.cautions().stream()
            .filter(caution -> !general.contains(caution))
            .map(Caution::text)
            .toList(),
        drill.source());
  }

  private static Link link(LibraryDrill drill) {
    return new Link(anchor(drill), drill.name());
  }

  private static String anchor(LibraryDrill drill) {
    return "drill-" + drill.code();
  }

  /** Sets a text as the report does: a space that does not break before %, and ’. */
  static String typeset(String text) {
    return text.replace(" %", "\u00A0%").replace('\'', '’');
  }
}
