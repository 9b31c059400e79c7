package palmturn.app.desk;

import java.time.format.DateTimeFormatter;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import palmturn.app.board.Cell;
import palmturn.measure.Limits;
import palmturn.measure.Scores;
import palmturn.measure.TrialScore;
import palmturn.settle.SettledTrial;
import palmturn.trial.Reading;
import palmturn.trial.Session;
import palmturn.trial.StartedFrom;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.work.score.LastSettled;
import palmturn.work.score.LimitsInForce;

/** The open session's trials as they are by now, and their figures. */
final class ScoredTrials {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);

  private Limits limits = LimitsInForce.STANDARD.limits();
  private final Map<TrialId, Trial> trials = new LinkedHashMap<>();
  private double windowS = Session.DEFAULT_WINDOW_S;

  /** Takes the trials of a session in place of those before. */
  void open(Session session, List<Trial> all, Limits itsLimits) {
    limits = itsLimits;
    windowS = session.windowS();
    trials.clear();
    all.forEach(each -> trials.put(each.id(), each));
  }

  Limits limits() {
    return limits;
  }

  Collection<Trial> all() {
    return trials.values();
  }

  @Nullable Trial get(@Nullable TrialId id) {
    return id == null ? null : trials.get(id);
  }

  void put(Trial changed) {
    trials.put(changed.id(), changed);
  }

  TrialScore score(Trial of, Reading reading) {
    return Scores.trial(of, reading, windowS, limits);
  }

  /** Returns the figures of the other hand's trial of the same repeat, if it is read. */
  @Nullable TrialScore other(TrialId id, Function<Trial, @Nullable Reading> shown) {
    Trial other = trials.get(new TrialId(id.hand().other(), id.block(), id.repeat()));
    Reading reading = other == null ? null : shown.apply(other);
    return other == null || reading == null ? null : score(other, reading);
  }

  /** Returns the athlete and the day of a session. */
  static String heading(Session session) {
    return session.athlete() + ", " + DAY.format(session.date());
  }

  /** Returns a reading's reader, its start and whether it is finished, in words. */
  static String describe(@Nullable Reading reading) {
    return reading == null
        ? ""
        : "Reading "
            + reading.reader()
            + (reading.startedFrom().equals(StartedFrom.ESTIMATE) ? " from the estimate" : "")
            + (reading.finished() ? ", finished" : ", open");
  }

  /** Returns a trial's place on the board; what is settled counts, as in the report. */
  Cell cell(Trial of, @Nullable Reading reading) {
    SettledTrial last = LastSettled.of(of);
    if (last != null && last.open() == 0) {
      return Cell.settled(of, last.reading(), score(of, last.reading()));
    }
    return Cell.of(of, reading, reading == null ? null : score(of, reading));
  }
}
