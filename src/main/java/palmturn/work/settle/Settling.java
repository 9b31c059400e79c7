package palmturn.work.settle;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.json.SettledJson;
import palmturn.report.MarksCsv;
import palmturn.report.MarksFormatException;
import palmturn.settle.ComparedMarks;
import palmturn.settle.ReadingComparison;
import palmturn.settle.SettledTrial;
import palmturn.store.SessionFolder;
import palmturn.trial.ClipFacts;
import palmturn.trial.Decision;
import palmturn.trial.Reading;
import palmturn.trial.Settlement;
import palmturn.trial.Trial;
import palmturn.trial.UserError;

/**
 * The comparison of two readings of a trial, and decisions on their differences. Those are numbered
 * from 1, marks before stretches, worst first; a number stays while neither reading changes.
 */
public final class Settling {
  private Settling() {}

  /**
   * The two readings to compare, and the terms.
   *
   * @param first a reader; null together with the second for the two settled last, else the only
   *     two readings, else the only reading and the estimate
   * @param second another reader, or {@code estimate}
   * @param toleranceS real seconds, null for the settlement's own, by the rule at first
   * @param removeOffset whether a constant is taken off the second's times, null for the
   *     settlement's own
   */
  public record Terms(
      @Nullable String first,
      @Nullable String second,
      @Nullable Double toleranceS,
      @Nullable Boolean removeOffset) {}

  /**
   * Decisions on numbered differences.
   *
   * @param choices by number of the difference
   * @param anew rows of the marks' CSV by number of the difference: the mark made instead of both
   * @param by who decided
   * @param why in words, often empty
   */
  public record Decisions(
      Map<Integer, Decision.Choice> choices, Map<Integer, String> anew, String by, String why) {
    /** Returns every number named, with what is chosen for it. */
    Map<Integer, Decision.Choice> all() {
      Map<Integer, Decision.Choice> all = new LinkedHashMap<>(choices);
      anew.keySet().forEach(number -> all.put(number, Decision.Choice.NEITHER));
      return all;
    }
  }

  /** A settlement and what it comes to. */
  public record SettlementResult(Trial trial, Settlement settlement, SettledTrial settled) {
    /** Returns it in the fixed form of scripts, laid out to be read. */
    public String page() {
      return SettledJson.page(trial, settled);
    }

    /** Returns the same on one line, for one of many. */
    public String line() {
      return SettledJson.line(trial, settled);
    }
  }

  /**
   * Returns the trials in which there are two to compare: two readings, or one and the estimate.
   */
  public static List<Trial> comparable(SessionFolder folder, Terms terms) throws UserError {
    List<Trial> found =
        folder.trials().stream()
            .filter(trial -> names(trial, terms).stream().allMatch(name -> has(trial, name)))
            .filter(trial -> names(trial, terms).size() == 2)
            .toList();
    if (found.isEmpty()) {
      throw new UserError(
          "%s has no trial with %s"
              .formatted(
                  folder.folder().getFileName(),
                  terms.first() == null
                      ? "two readings, or a reading and an estimate, and no more: say --a and --b"
                      : "both %s and %s".formatted(terms.first(), terms.second())));
    }
    return found;
  }

  private static boolean has(Trial trial, String name) {
    return name.equals(Settlement.ESTIMATE)
        ? trial.estimate() != null
        : trial.reading(name).isPresent();
  }

  /** Returns the two to compare; fewer or more where that is not clear. */
  private static List<String> names(Trial trial, Terms terms) {
    if (terms.first() != null && terms.second() != null) {
      return List.of(terms.first(), terms.second());
    }
    List<Settlement> settlements = trial.settlements();
    if (!settlements.isEmpty()) {
      Settlement last = settlements.get(settlements.size() - 1);
      return List.of(last.first(), last.second());
    }
    List<String> names = new ArrayList<>(trial.readings().stream().map(Reading::reader).toList());
    if (names.size() == 1 && trial.estimate() != null) {
      names.add(Settlement.ESTIMATE);
    }
    return names;
  }

  /**
   * Compares two readings of a trial, with the decisions made so far.
   *
   * @throws UserError if it is not clear which two, one is missing or empty, both are the same, or
   *     the estimate is of another clip
   */
  public static SettlementResult compare(Trial trial, Terms terms) throws UserError {
    String name = trial.id().name();
    List<String> names = names(trial, terms);
    if (names.size() != 2) {
      throw new UserError(
          names.isEmpty()
              ? name + " has no reading yet: mark it in the app, or import marks"
              : names.size() == 1
                  ? "%s has only the reading by %s: a second reader or an estimate is needed"
                      .formatted(name, names.get(0))
                  : "%s has readings by %s: say which two with --a and --b"
                      .formatted(name, String.join(", ", names)));
    }
    Settlement settlement = settlement(trial, names.get(0), names.get(1));
    if (terms.toleranceS() != null || terms.removeOffset() != null) {
      settlement =
          settlement.withTerms(
              terms.toleranceS() == null ? settlement.toleranceS() : terms.toleranceS(),
              terms.removeOffset() == null ? settlement.removeOffset() : terms.removeOffset());
    }
    SettledTrial settled = SettledTrial.of(trial, settlement);
    refuseEmpty(trial, settled.comparison().a());
    refuseEmpty(trial, settled.comparison().b());
    return new SettlementResult(trial, settlement, settled);
  }

  private static Settlement settlement(Trial trial, String first, String second) throws UserError {
    Settlement known = trial.settlement(first, second).orElse(null);
    if (known == null) {
      return Settlement.begin(first, second);
    }
    if (!known.first().equals(first)) {
      throw new UserError(
          "%s is being settled with %s as the first: say --a %s --b %s"
              .formatted(trial.id().name(), known.first(), known.first(), known.second()));
    }
    return known;
  }

  private static void refuseEmpty(Trial trial, ComparedMarks marks) throws UserError {
    if (marks.slaps().isEmpty() && marks.spans().isEmpty() && !marks.finished()) {
      throw new UserError(
          "%s: %s has no marks in it yet, and is not finished"
              .formatted(trial.id().name(), marks.name()));
    }
  }

  /** Returns what a reader should know of a comparison before believing it, a line each. */
  public static List<String> notes(SessionFolder folder, SettlementResult result) {
    List<String> notes = new ArrayList<>(ofClip(folder, result));
    notes.addAll(notes(result));
    return notes;
  }

  /** Returns the same without a look at the clip. */
  public static List<String> notes(SettlementResult result) {
    List<String> notes = new ArrayList<>();
    String name = result.trial().id().name();
    ComparedMarks a = result.settled().comparison().a();
    ComparedMarks b = result.settled().comparison().b();
    for (ComparedMarks marks : List.of(a, b)) {
      if (!marks.finished()) {
        notes.add("%s: the reading by %s is still open".formatted(name, marks.name()));
      }
      if (marks.outside() > 0) {
        notes.add(
            String.format(
                Locale.ROOT,
                "%s: %d of the marks by %s lie outside the trial's stretch, and are left out",
                name,
                marks.outside(),
                marks.name()));
      }
      if (marks.slaps().isEmpty()) {
        notes.add("%s: %s has no slap in it".formatted(name, marks.name()));
      }
    }
    if (!a.slaps().isEmpty()
        && !b.slaps().isEmpty()
        && result.settled().comparison().matching().pairs().isEmpty()) {
      notes.add(
          "%s: not one mark of %s is near one of %s: are both of this clip?"
              .formatted(name, a.name(), b.name()));
    }
    if (result.settled().stale() > 0) {
      notes.add(
          String.format(
              Locale.ROOT,
              "%s: %d %s no longer fit, since a reading has changed there",
              name,
              result.settled().stale(),
              result.settled().stale() == 1 ? "decision does" : "decisions do"));
    }
    return notes;
  }

  /** Where the clip is there, its marks can be held against it. */
  private static List<String> ofClip(SessionFolder folder, SettlementResult result) {
    Trial trial = result.trial();
    ClipFacts facts;
    try {
      facts = ClipFile.open(folder.clipPath(trial)).facts();
    } catch (ClipException e) {
      return List.of();
    }
    List<String> notes = new ArrayList<>();
    if (!facts.sha256().equals(trial.clip().sha256())) {
      notes.add(
          trial.id().name() + ": the clip has changed since it was added; its marks may not fit");
    }
    double endS = facts.firstS() + facts.durationS();
    ReadingComparison comparison = result.settled().comparison();
    for (ComparedMarks marks : List.of(comparison.a(), comparison.b())) {
      long outside =
          marks.slaps().stream()
              .filter(slap -> slap.timeS() < facts.firstS() || slap.timeS() > endS)
              .count();
      if (outside > 0) {
        notes.add(
            String.format(
                Locale.ROOT,
                "%s: %d of the marks by %s lie outside the clip",
                trial.id().name(),
                outside,
                marks.name()));
      }
    }
    return notes;
  }

  /**
   * Keeps decisions on the differences of a comparison.
   *
   * @throws UserError if there is no difference of a number, or it can't be written; then nothing
   *     was kept
   */
  public static SettlementResult decide(
      SessionFolder folder, SettlementResult before, Decisions decisions, Clock clock)
      throws UserError {
    Instant at = clock.instant().truncatedTo(ChronoUnit.SECONDS);
    Settlement settlement = before.settlement();
    SettledTrial settled = before.settled();
    int marks = settled.slaps().size();
    int all = marks + settled.spans().size();
    for (Map.Entry<Integer, Decision.Choice> each : decisions.all().entrySet()) {
      int number = each.getKey();
      if (number < 1 || number > all) {
        throw new UserError(
            all == 0
                ? String.format(
                    Locale.ROOT,
                    "%s: nothing differs, so there is no number %d",
                    before.trial().id().name(),
                    number)
                : String.format(
                    Locale.ROOT,
                    "%s: there is no difference %d, only 1 to %d",
                    before.trial().id().name(),
                    number,
                    all));
      }
      MarksCsv.Marks made = made(before.trial(), number, decisions.anew().get(number));
      settlement =
          number <= marks
              ? settlement.plusSlap(
                  settled
                      .slaps()
                      .get(number - 1)
                      .decide(
                          each.getValue(),
                          decisions.by(),
                          at,
                          decisions.why(),
                          one(number, made, made.slaps(), "mark")))
              : settlement.plusSpan(
                  settled
                      .spans()
                      .get(number - 1 - marks)
                      .decide(
                          each.getValue(),
                          decisions.by(),
                          at,
                          decisions.why(),
                          one(number, made, made.spans(), "stretch")));
    }
    folder.keep(before.trial().id(), settlement);
    Trial trial = before.trial().withSettlement(settlement);
    return new SettlementResult(trial, settlement, SettledTrial.of(trial, settlement));
  }

  private static MarksCsv.Marks made(Trial trial, int number, @Nullable String row)
      throws UserError {
    if (row == null) {
      return new MarksCsv.Marks(List.of(), List.of());
    }
    try {
      return MarksCsv.row(row, trial.clip().medianFrameS());
    } catch (MarksFormatException e) {
      throw new UserError(
          String.format(Locale.ROOT, "the mark for difference %d: %s", number, e.what()), e);
    }
  }

  /** Returns the one that was made, null where none was. */
  private static <M> @Nullable M one(
      int number, MarksCsv.Marks made, List<M> ofItsKind, String kind) throws UserError {
    if (made.slaps().isEmpty() && made.spans().isEmpty()) {
      return null;
    }
    if (ofItsKind.size() != 1) {
      throw new UserError(
          String.format(Locale.ROOT, "difference %d is about a %s: give one", number, kind));
    }
    return ofItsKind.get(0);
  }
}
