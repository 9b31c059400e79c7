package palmturn.app.board;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import palmturn.trial.Hand;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.StartedFrom;
import palmturn.trial.TrialId;
import palmturn.trial.Zone;

class BoardTest {
  private final Board board = new Board();

  @Test
  void placesStillToBeFilmedFillUpEachBlock() {
    board.show(List.of("baseline"), List.of(filmed("left-baseline-2")));

    assertEquals(6, board.cellsProperty().get().size());
    assertEquals(
        1,
        board.cellsProperty().get().stream()
            .filter(cell -> cell.state() == Cell.State.FILMED)
            .count());
    assertEquals("left-baseline-2", board.chosenProperty().get().name());
  }

  @Test
  void arrowsMoveAcrossHandsAndDownIntoTheNextBlock() {
    board.show(List.of("after-1", "baseline"), List.of(filmed("left-baseline-3")));
    board.move(1, 0);
    assertEquals("right-baseline-3", board.chosenProperty().get().name());
    board.move(1, 0);
    assertEquals("right-baseline-3", board.chosenProperty().get().name());
    board.move(0, 1);
    assertEquals("right-after-1-1", board.chosenProperty().get().name());
  }

  @Test
  void fourthRepeatHasItsPlace() {
    board.show(List.of("baseline"), List.of(filmed("right-baseline-4")));

    assertEquals(8, board.cellsProperty().get().size());
  }

  @Test
  void stateFollowsTheReading() {
    TrialId id = new TrialId(Hand.LEFT, "baseline", 1);
    Reading empty = Reading.begin("AK", StartedFrom.NOTHING);
    Reading marked = empty.plus(Slap.onFrame(Slap.Kind.SLAP, 1, 0.02, Side.PALM, Zone.CENTRE));

    assertEquals(Cell.State.FILMED, Cell.of(id, empty, null).state());
    assertEquals(Cell.State.OPEN, Cell.of(id, marked, null).state());
    assertEquals(Cell.State.READ, Cell.of(id, marked.withFinished(true), null).state());
  }

  private static Cell filmed(String name) {
    return Cell.of(TrialId.parse(name), null, null);
  }
}
