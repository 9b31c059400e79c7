package palmturn.app.board;

import java.util.List;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import palmturn.app.look.Follow;
import palmturn.app.look.Look;
import palmturn.trial.Block;
import palmturn.trial.Hand;
import palmturn.trial.TrialId;

/** Shows the board; a click chooses, the arrow keys move while it has the focus. */
public final class BoardView extends VBox {
  private static final double GAP = 6;

  private final Board board;
  private final Look look;
  private final VBox content = new VBox();

  /** Builds the pane, 240 wide. */
  public BoardView(Board board, Look look, Follow follow) {
    this.board = board;
    this.look = look;
    getStyleClass().setAll("pane", "board");
    setId("board");
    setFocusTraversable(true);
    setAccessibleText("Trial board");
    Label title = new Label("Trial board");
    title.getStyleClass().add("title");
    HBox titleRow = new HBox(title);
    titleRow.getStyleClass().add("title-row");
    ScrollPane scroll = new ScrollPane(content);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.setFitToWidth(true);
    scroll.setFocusTraversable(false);
    VBox.setVgrow(scroll, Priority.ALWAYS);
    getChildren().setAll(titleRow, scroll);
    setOnMousePressed(event -> requestFocus());
    follow.changes(board.cellsProperty(), this::show);
    follow.changes(board.chosenProperty(), this::show);
    show();
  }

  private void show() {
    content.getChildren().clear();
    content.getChildren().add(hands());
    List<Cell> cells = board.cellsProperty().get();
    cells.stream()
        .map(cell -> cell.id().block())
        .distinct()
        .forEach(block -> content.getChildren().add(block(block, cells)));
    if (cells.isEmpty()) {
      Label help =
          new Label("Three with each hand,\nfive seconds each. After\na drill, the same again.");
      help.getStyleClass().add("second");
      content.getChildren().add(help);
    }
  }

  private HBox hands() {
    HBox row = new HBox(look.px(GAP));
    row.getStyleClass().add("hands");
    TrialId chosen = board.chosenProperty().get();
    for (Hand hand : Hand.values()) {
      Label label = new Label(hand == Hand.LEFT ? "Left hand" : "Right hand");
      label.setMinWidth(look.px(CellView.WIDTH));
      label.getStyleClass().add(chosen != null && chosen.hand() == hand ? "strong" : "second");
      row.getChildren().add(label);
    }
    return row;
  }

  private VBox block(String name, List<Cell> cells) {
    Label label =
        new Label(name.equals(Block.BASELINE) ? "Baseline" : "After drill " + Block.order(name));
    label.getStyleClass().add("second");
    Region space = new Region();
    HBox.setHgrow(space, Priority.ALWAYS);
    Label unit = new Label("slaps/s");
    unit.getStyleClass().add("small");
    HBox head = new HBox(label, space, unit);
    GridPane grid = new GridPane();
    grid.setHgap(look.px(GAP));
    grid.setVgap(look.px(GAP));
    int at = 0;
    for (Cell cell : cells) {
      if (cell.id().block().equals(name)) {
        CellView view = new CellView(cell, look, cell.id().equals(board.chosenProperty().get()));
        view.setOnAction(
            event -> {
              view.setSelected(true);
              board.choose(cell.id());
            });
        grid.add(view, at % 2, at / 2);
        at++;
      }
    }
    VBox whole = new VBox(look.px(8), head, grid);
    whole.getStyleClass().add("block");
    return whole;
  }
}
