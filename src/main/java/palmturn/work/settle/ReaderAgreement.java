package palmturn.work.settle;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import palmturn.json.AgreementJson;
import palmturn.measure.Measures;
import palmturn.measure.ReadingChoice;
import palmturn.measure.Scores;
import palmturn.settle.Agreement;
import palmturn.settle.PooledAgreement;
import palmturn.settle.ReadingComparison;
import palmturn.settle.SettleException;
import palmturn.settle.TrialAgreement;
import palmturn.store.SessionFolder;
import palmturn.trial.Reading;
import palmturn.trial.Session;
import palmturn.trial.Settlement;
import palmturn.trial.Trial;
import palmturn.trial.UserError;
import palmturn.work.score.LimitsInForce;
import palmturn.work.score.Scoring;
import palmturn.work.session.Sessions;

/** The agreement of two readers over the trials of one session or several. */
public final class ReaderAgreement {
  private ReaderAgreement() {}

  /**
   * The two readers compared, and the terms.
   *
   * @param first a reader
   * @param second another, or {@code estimate}
   * @param toleranceS real seconds, null for the rule's own
   * @param removeOffset whether a constant is taken off the second's times
   */
  public record AgreementRequest(
      String first, String second, @Nullable Double toleranceS, boolean removeOffset) {}

  /**
   * The agreement found.
   *
   * @param request what was asked
   * @param over the figures
   * @param leftOut why a trial is not in them, by session and trial
   * @param notices of the sessions, a line each
   */
  public record AgreementResult(
      AgreementRequest request,
      PooledAgreement over,
      Map<String, String> leftOut,
      List<String> notices) {
    /** Returns it in the fixed form of scripts. */
    public String json() {
      return AgreementJson.write(request.first, request.second, over, leftOut);
    }
  }

  /**
   * Compares two readers on all trials that both have finished.
   *
   * @throws UserError if a session can't be read or is named twice, both readers are the same, or
   *     there is no such trial
   */
  public static AgreementResult of(List<Path> sessions, AgreementRequest request) throws UserError {
    if (request.first.equals(request.second)) {
      throw new UserError(
          "%s can't be compared with itself: name two readers".formatted(request.first));
    }
    refuseTwice(sessions);
    List<TrialAgreement> trials = new ArrayList<>();
    Map<String, String> leftOut = new LinkedHashMap<>();
    List<String> notices = new ArrayList<>();
    for (Path path : sessions) {
      try (SessionFolder folder = Sessions.openReadOnly(path)) {
        notices.addAll(folder.notices());
        String name = String.valueOf(folder.folder().getFileName());
        for (Trial trial : folder.trials()) {
          String why = missing(trial, request);
          if (why.isEmpty()) {
            trials.add(compared(name, folder.session(), trial, request));
          } else {
            leftOut.put(name + "/" + trial.id().name(), why);
          }
        }
      }
    }
    if (trials.isEmpty()) {
      throw new UserError(
          "no trial has both %s and %s finished: %s"
              .formatted(request.first, request.second, reasons(leftOut.values())));
    }
    return new AgreementResult(
        request, PooledAgreement.of(Measures.RATE.id(), trials), leftOut, notices);
  }

  /** Counts the trials of each reason. */
  private static String reasons(Collection<String> whys) {
    if (whys.isEmpty()) {
      return "there is no trial";
    }
    Map<String, Long> counted =
        whys.stream()
            .collect(
                Collectors.groupingBy(
                    Function.identity(), LinkedHashMap::new, Collectors.counting()));
    return counted.entrySet().stream()
        .map(each -> each.getKey() + (whys.size() == 1 ? "" : " (" + each.getValue() + ")"))
        .collect(Collectors.joining(", "));
  }

  private static void refuseTwice(List<Path> sessions) throws UserError {
    List<Path> seen = new ArrayList<>();
    for (Path session : sessions) {
      Path whole = session.toAbsolutePath().normalize();
      if (seen.contains(whole)) {
        throw new UserError(session + " is named twice; its trials would count twice");
      }
      seen.add(whole);
    }
  }

  private static String missing(Trial trial, AgreementRequest request) {
    for (String name : List.of(request.first, request.second)) {
      if (name.equals(Settlement.ESTIMATE)) {
        if (trial.estimate() == null) {
          return "no estimate: run estimate first";
        }
        continue;
      }
      Reading reading = trial.reading(name).orElse(null);
      if (reading == null) {
        return "no reading by " + name;
      }
      if (!reading.finished()) {
        return "the reading by %s is still open".formatted(name);
      }
    }
    return "";
  }

  private static TrialAgreement compared(
      String name, Session session, Trial trial, AgreementRequest request) throws UserError {
    Settlement terms =
        Settlement.begin(request.first, request.second)
            .withTerms(request.toleranceS, request.removeOffset);
    try {
      ReadingComparison comparison = ReadingComparison.of(trial, terms);
      return new TrialAgreement(
          name,
          trial.id(),
          comparison,
          Agreement.of(comparison),
          rate(session, trial, request.first),
          rate(session, trial, request.second));
    } catch (SettleException e) {
      throw new UserError("%s: %s".formatted(name, e.getMessage()), e);
    }
  }

  private static @Nullable Double rate(Session session, Trial trial, String name) {
    ReadingChoice choice = Scoring.choice(name);
    Reading reading = choice.of(trial);
    return reading == null
        ? null
        : Scores.trial(trial, reading, session.windowS(), LimitsInForce.STANDARD.limits())
            .speed()
            .rateSlapsPerS();
  }
}
