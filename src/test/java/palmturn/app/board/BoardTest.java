package palmturn.app.board;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import palmturn.app.estimate.MadeEstimates;
import palmturn.trial.Block;
import palmturn.trial.ClipRef;
import palmturn.trial.Drill;
import palmturn.trial.DrillHand;
import palmturn.trial.Extra;
import palmturn.trial.Mirrored;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.StartedFrom;
import palmturn.trial.TimeScale;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.trial.Zone;

class BoardTest {
  private static final Block BASELINE = new Block("baseline", null, Extra.NONE);
  private static final Block AFTER =
      new Block(
          "after-1",
          new Drill("wrist-circles", DrillHand.LEFT, "", null, null, Extra.NONE),
          Extra.NONE);

  private final Board board = new Board();

  @Test
  void placesStillToBeFilmedFillUpEachBlock() {
    board.setTrials(List.of(BASELINE), List.of(filmed("left-baseline-2")));

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
    board.setTrials(List.of(AFTER, BASELINE), List.of(filmed("left-baseline-3")));
    board.move(1, 0);
    assertEquals("right-baseline-3", board.chosenProperty().get().name());
    board.move(1, 0);
    assertEquals("right-baseline-3", board.chosenProperty().get().name());
    board.move(0, 1);
    assertEquals("right-after-1-1", board.chosenProperty().get().name());
  }

  @Test
  void fourthRepeatHasItsPlace() {
    board.setTrials(List.of(BASELINE), List.of(filmed("right-baseline-4")));

    assertEquals(8, board.cellsProperty().get().size());
  }

  @Test
  void stateFollowsTheReading() {
    Trial trial = trial("left-baseline-1");
    Reading empty = Reading.begin("AK", StartedFrom.NOTHING);
    Reading marked = empty.plus(Slap.onFrame(Slap.Kind.SLAP, 1, 0.02, Side.PALM, Zone.CENTRE));
    Trial estimated = trial.withEstimate(MadeEstimates.fourSlaps());

    assertEquals(Cell.State.FILMED, Cell.of(trial, empty, null).state());
    assertEquals(Cell.State.ESTIMATED, Cell.of(estimated, null, null).state());
    assertEquals(Cell.State.OPEN, Cell.of(estimated, marked, null).state());
    assertEquals(Cell.State.READ, Cell.of(trial, marked.withFinished(true), null).state());
  }

  @Test
  void whatToFilmNextGoesRightLeftRightLeft() {
    board.setTrials(List.of(BASELINE), List.of());
    assertEquals("right-baseline-1", board.nextToFilm().name());
    assertEquals("right-baseline-1", board.chosenProperty().get().name());
    board.setTrials(List.of(BASELINE), List.of(filmed("right-baseline-1")));
    assertEquals("left-baseline-1", board.nextToFilm().name());
    board.setTrials(
        List.of(BASELINE), List.of(filmed("right-baseline-1"), filmed("left-baseline-1")));
    assertEquals("right-baseline-2", board.nextToFilm().name());
  }

  @Test
  void whatToFilmNextIsInTheBlockFilmedLastAndThenInTheOneAfter() {
    List<Cell> baseline =
        FilmingOrder.trialsOf("baseline").stream().map(id -> filmed(id.name())).toList();
    board.setTrials(List.of(BASELINE, AFTER), baseline);
    assertEquals("right-after-1-1", board.nextToFilm().name());
    board.setTrials(List.of(BASELINE), baseline);
    assertNull(board.nextToFilm());
    board.setTrials(List.of(BASELINE, AFTER), List.of(filmed("left-after-1-1")));
    assertEquals("right-after-1-1", board.nextToFilm().name());
  }

  @Test
  void blocksAreHeadedByTheirDrills() {
    board.setTrials(List.of(BASELINE, AFTER), List.of());
    assertEquals("Baseline", board.heading("baseline"));
    assertEquals("After wrist circles", board.heading("after-1"));
  }

  @Test
  void wordsTellLengthRateAndShortcomingsOfTheClip() {
    Cell cell = filmed("right-baseline-2");
    ClipPreview clip = new ClipPreview(5.84, 59.94, List.of("no sound"), null);

    assertEquals("Right hand 2, baseline", CellWords.name(cell.id(), "Baseline"));
    assertEquals(List.of("filmed, 5.8 s, 60 frames/s"), CellWords.describe(cell, clip, false));
    assertTrue(CellWords.fullText(cell, "Baseline", clip, false).endsWith("\nno sound"));
  }

  @Test
  void wordsOfAGapSayWhetherItIsNext() {
    board.setTrials(List.of(BASELINE), List.of());
    Cell right = board.cellsProperty().get().get(1);
    assertEquals("film next", CellWords.stateWord(right, true));
    assertTrue(CellWords.describe(right, null, true).get(0).startsWith("Film this trial next"));
    assertEquals("Not filmed yet.", CellWords.describe(right, null, false).get(0));
  }

  private static Cell filmed(String name) {
    return Cell.of(trial(name), null, null);
  }

  private static Trial trial(String name) {
    return new Trial(
        TrialId.parse(name),
        new ClipRef("clips/a.mp4", "0".repeat(64), 1 / 60.0, Extra.NONE),
        null,
        null,
        Mirrored.UNKNOWN,
        null,
        TimeScale.REAL,
        null,
        null,
        List.of(),
        null,
        Extra.NONE);
  }
}
