package palmturn.report;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import palmturn.measure.FaultKind;
import palmturn.measure.Quality;
import palmturn.trial.Block;
import palmturn.trial.Hand;
import palmturn.trial.Reading;
import palmturn.trial.Session;
import palmturn.trial.StartedFrom;
import palmturn.trial.TrialId;

/** The names of things where the report speaks of them. */
final class Words {
  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.UK);

  private Words() {}

  static String date(Instant moment) {
    return date(LocalDate.ofInstant(moment, ZoneOffset.UTC));
  }

  static String date(LocalDate date) {
    return DATE.format(date);
  }

  /** Returns a trial's name as a phrase: right hand, baseline, repeat 1. */
  static String trial(TrialId id) {
    return "%s hand, %s, repeat %d".formatted(id.hand().code(), block(id.block()), id.repeat());
  }

  static String hand(Hand hand) {
    return hand == Hand.LEFT ? "Left hand" : "Right hand";
  }

  /** Returns a block's name as a phrase: baseline, after 1. */
  static String block(String name) {
    return name.replace('-', ' ');
  }

  /** Returns a block's heading: with the drill that came before it. */
  static String heading(Session session, String blockName) {
    String name = capital(block(blockName));
    return session
        .block(blockName)
        .map(Block::drill)
        .map(
            drill ->
                switch (drill.hand()) {
                  case LEFT, RIGHT ->
                      "%s: %s, %s hand".formatted(name, drill.code(), drill.hand().code());
                  case BOTH -> "%s: %s, both hands".formatted(name, drill.code());
                  case NONE -> "%s: %s".formatted(name, drill.code());
                })
        .orElse(name);
  }

  static String quality(Quality quality) {
    return switch (quality) {
      case SPEED -> "Speed";
      case ACCURACY -> "Accuracy";
      case RHYTHM -> "Rhythm";
      case ENDURANCE -> "Endurance";
      case DRIFT -> "Elbow";
    };
  }

  /** Returns how a reading came about: by whom, whether finished, from what. */
  static String reading(Reading reading) {
    return reading.reader() + ", " + how(reading);
  }

  /** Returns whether a reading is finished, and from what it was made. */
  static String how(Reading reading) {
    boolean seen =
        reading.estimateSeen() && reading.startedFrom().source() == StartedFrom.Source.NOTHING;
    int times = reading.reopenedAt().size();
    String again =
        times == 0 ? "" : times == 1 ? ", opened again once" : ", opened again " + times + " times";
    return "%s%s, %s%s"
        .formatted(
            reading.finished() ? "finished" : "open",
            again,
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

  static String fault(FaultKind kind) {
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

  /** Returns a list as a phrase: a, b and c. */
  static String list(List<String> parts) {
    if (parts.size() < 2) {
      return String.join("", parts);
    }
    return String.join(", ", parts.subList(0, parts.size() - 1))
        + " and "
        + parts.get(parts.size() - 1);
  }

  static String capital(String text) {
    return text.isEmpty()
        ? text
        : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }
}
