package palmturn.app.board;

import org.jspecify.annotations.Nullable;
import palmturn.measure.TrialScore;
import palmturn.trial.Reading;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

/**
 * One trial on the board.
 *
 * @param id which trial
 * @param state its progress
 * @param reading its marks, for the miniature; null when nobody has marked it
 * @param score its figures; null when nobody has marked it
 * @param paceSlapsPerS the click track it was filmed to; null for an ordinary trial
 */
public record Cell(
    TrialId id,
    State state,
    @Nullable Reading reading,
    @Nullable TrialScore score,
    @Nullable Double paceSlapsPerS) {

  /** A trial's progress. */
  public enum State {
    NOT_FILMED("not filmed"),
    FILMED("filmed"),
    ESTIMATED("estimated"),
    OPEN("open"),
    READ("read"),
    SETTLED("settled");

    private final String words;

    State(String words) {
      this.words = words;
    }

    /** Returns the word beside the icon. */
    public String words() {
      return words;
    }
  }

  static Cell notFilmed(TrialId id) {
    return new Cell(id, State.NOT_FILMED, null, null, null);
  }

  /** Returns the cell of a filmed trial; an estimate shows as long as nothing is marked. */
  public static Cell of(Trial trial, @Nullable Reading reading, @Nullable TrialScore score) {
    if (reading == null || (reading.slaps().isEmpty() && reading.spans().isEmpty())) {
      State state = trial.estimate() == null ? State.FILMED : State.ESTIMATED;
      return new Cell(trial.id(), state, null, null, trial.paceSlapsPerS());
    }
    State state = reading.finished() ? State.READ : State.OPEN;
    return new Cell(trial.id(), state, reading, score, trial.paceSlapsPerS());
  }

  /**
   * Returns the cell of a trial of which nothing is open between two readings.
   *
   * @param settled what the two and the decisions come to
   */
  public static Cell settled(Trial trial, Reading settled, TrialScore score) {
    return new Cell(trial.id(), State.SETTLED, settled, score, trial.paceSlapsPerS());
  }

  /** Returns its rate, null when it can't be told. */
  @Nullable Double slapsPerS() {
    return score == null ? null : score.speed().rateSlapsPerS();
  }
}
