package palmturn.report;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.advise.Training;
import palmturn.measure.Limits;
import palmturn.measure.ProgressScore;
import palmturn.measure.SessionScore;
import palmturn.settle.SettledTrial;
import palmturn.trial.ClipFacts;
import palmturn.trial.Reading;
import palmturn.trial.Session;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

/**
 * Everything a report is made from.
 *
 * @param session whose report it is
 * @param trials all that were filmed, in the order to show them in
 * @param score the figures of the same trials and readings
 * @param limits what the figures were held against
 * @param training what the figures advise
 * @param progress the athlete over several sessions, this one among them; null for this one alone
 * @param stills takes pictures out of the clips
 * @param madeAt when the report was asked for
 */
public record ReportInput(
    Session session,
    List<Filmed> trials,
    SessionScore score,
    Limits limits,
    Training training,
    @Nullable ProgressScore progress,
    Stills stills,
    Instant madeAt) {

  /**
   * One trial.
   *
   * @param trial as it is on file
   * @param reading the one its figures come from; null where nobody has marked it
   * @param clip the facts of its clip; null where the clip can't be opened
   * @param settled two readings of it beside each other, and what was decided; null where there are
   *     no two to compare
   */
  public record Filmed(
      Trial trial,
      @Nullable Reading reading,
      @Nullable ClipFacts clip,
      @Nullable SettledTrial settled) {
    Filmed(Trial trial, @Nullable Reading reading, @Nullable ClipFacts clip) {
      this(trial, reading, clip, null);
    }
  }

  /** Takes pictures out of the clips. */
  @FunctionalInterface
  public interface Stills {
    /**
     * Returns the picture that a trial's clip shows at a moment as JPEG, null if there is none.
     *
     * @param timeS media seconds
     */
    byte @Nullable [] jpeg(TrialId trial, double timeS);
  }

  public ReportInput {
    trials = List.copyOf(trials);
  }
}
