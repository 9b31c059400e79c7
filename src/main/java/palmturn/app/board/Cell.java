package palmturn.app.board;

import org.jspecify.annotations.Nullable;
import palmturn.trial.Reading;
import palmturn.trial.TrialId;

/**
 * One place of the board.
 *
 * @param id which trial
 * @param state how far it is
 * @param reading its marks, for the miniature; null when nobody has marked it
 * @param slapsPerS its rate; null when it can't be told
 */
public record Cell(TrialId id, State state, @Nullable Reading reading, @Nullable Double slapsPerS) {

  /** How far a trial is. */
  public enum State {
    NOT_FILMED("not filmed"),
    FILMED("filmed"),
    OPEN("open"),
    READ("read");

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
    return new Cell(id, State.NOT_FILMED, null, null);
  }

  /** Returns the cell of a filmed trial. */
  public static Cell of(TrialId id, @Nullable Reading reading, @Nullable Double slapsPerS) {
    if (reading == null || (reading.slaps().isEmpty() && reading.spans().isEmpty())) {
      return new Cell(id, State.FILMED, reading, null);
    }
    return new Cell(id, reading.finished() ? State.READ : State.OPEN, reading, slapsPerS);
  }
}
