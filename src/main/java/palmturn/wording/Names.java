package palmturn.wording;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import palmturn.measure.FaultKind;
import palmturn.measure.Measure;
import palmturn.measure.Measures;
import palmturn.measure.Phrases;
import palmturn.measure.Quality;
import palmturn.trial.Block;
import palmturn.trial.Decision;
import palmturn.trial.Drill;
import palmturn.trial.DrillHand;
import palmturn.trial.Hand;
import palmturn.trial.Reading;
import palmturn.trial.Session;
import palmturn.trial.StartedFrom;
import palmturn.trial.TrialId;

/**
 * The names of things in running text, in lower case where {@link Phrases#capital} can raise them.
 */
public final class Names {
  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.UK);

  private Names() {}

  /** Returns the date of a moment in UTC, such as 3 May 2026. */
  public static String date(Instant moment) {
    return date(LocalDate.ofInstant(moment, ZoneOffset.UTC));
  }

  /** Returns a date, such as 3 May 2026. */
  public static String date(LocalDate date) {
    return DATE.format(date);
  }

  /** Returns a trial's name as a phrase: right hand, baseline, repeat 1. */
  public static String trial(TrialId id) {
    return String.format(
        Locale.ROOT, "%s, %s, repeat %d", hand(id.hand()), block(id.block()), id.repeat());
  }

  /** Returns "left hand" or "right hand". */
  public static String hand(Hand hand) {
    return hand.code() + " hand";
  }

  /** Returns ", left hand", ", right hand", ", both hands" or nothing, to stand after a drill. */
  public static String afterDrill(DrillHand hand) {
    return switch (hand) {
      case LEFT, RIGHT -> ", " + hand.code() + " hand";
      case BOTH -> ", both hands";
      case NONE -> "";
    };
  }

  /** Returns a block's name as a phrase: baseline, after 1. */
  public static String block(String name) {
    return name.replace('-', ' ');
  }

  /** Returns a block's heading, with the drill that came before it: After 1: paced flips, … */
  public static String heading(Session session, String blockName) {
    String name = Phrases.capital(block(blockName));
    return session
        .block(blockName)
        .map(Block::drill)
        .map(drill -> name + ": " + drill(drill))
        .orElse(name);
  }

  /** Returns a drill and the hand that it trained. */
  public static String drill(Drill drill) {
    return drill.code().replace('-', ' ') + afterDrill(drill.hand());
  }

  /** Returns a measure with its unit: clean share, %. */
  public static String measure(Measure measure) {
    return measure.unit().isEmpty() ? measure.name() : measure.name() + ", " + measure.unit();
  }

  /** Returns a quality as a word in a sentence. */
  public static String quality(Quality quality) {
    return quality.shownName().toLowerCase(Locale.ROOT);
  }

  /** Returns what a quality's headline figure is in, beside its name: slaps/s; clean share, %. */
  public static String headline(Quality quality) {
    Measure measure = Measures.headline(quality);
    return quality == Quality.SPEED ? measure.unit() : measure(measure);
  }

  /** Returns a quality and what its headline figure is in: speed, slaps/s. */
  public static String qualityWithUnit(Quality quality) {
    return quality(quality) + ", " + headline(quality);
  }

  /** Returns who decided, and the pack that brought it where one did. */
  public static String decider(Decision<?> decision) {
    return decision.packedAt() == null
        ? decision.by()
        : decision.by() + ", from the pack of " + date(decision.packedAt());
  }

  /** Returns a reading by its reader, its state and its origin. */
  public static String reading(Reading reading) {
    return reading.reader() + ", " + provenance(reading);
  }

  /** Returns whether a reading is finished, and from what it was made. */
  public static String provenance(Reading reading) {
    boolean seen =
        reading.estimateSeen() && reading.startedFrom().source() == StartedFrom.Origin.NOTHING;
    int times = reading.reopenedAt().size();
    return "%s%s, %s%s"
        .formatted(
            reading.finished() ? "finished" : "open",
            times == 0 ? "" : ", opened again " + Figures.times(times),
            startedFrom(reading.startedFrom()),
            seen ? " with the estimate in sight, so not independent" : "");
  }

  private static String startedFrom(StartedFrom from) {
    return switch (from.source()) {
      case NOTHING -> "marked from nothing";
      case ESTIMATE -> "started from the estimate, so not independent";
      case READER -> "started from the marks of " + from.reader() + ", so not independent";
    };
  }

  /** Returns a fault as it is counted in a table. */
  public static String fault(FaultKind kind) {
    return switch (kind) {
      case FINGERS -> "on the fingers";
      case WRIST -> "at the wrist";
      case EDGE -> "with the edge";
      case DOUBLE -> "double";
      case PART_TURN -> "part turn";
      case MISSED -> "missed";
      case OTHER -> "other";
      case BENT_WRIST -> "with a bent wrist";
      case ELBOW_OUT -> "with the elbow out";
      case TARGET_MOVED -> "on a moved target";
    };
  }
}
