package palmturn.app.board;

import java.io.File;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javafx.application.Platform;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.TransferMode;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import palmturn.advise.AthleteNotice;
import palmturn.app.keys.Action;
import palmturn.app.keys.KeyMap;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.app.look.Tooltips;
import palmturn.trial.Hand;
import palmturn.trial.TrialId;

/**
 * The board as a pane: a click or the arrow keys choose a trial, and clips can be dropped on one.
 */
public final class BoardView extends VBox {
  private static final double GAP = 6;

  /** A lower board keeps its room for the trials. */
  private static final double LOW = 240;

  private final Board board;
  private final Look look;
  private final BiConsumer<TrialId, List<Path>> dropped;
  private final ImageCache pictures = new ImageCache();
  private final VBox content = new VBox();
  private final ScrollPane scroll = new ScrollPane(content);
  private final BoardFoot foot;

  /** The cards that are shown; one is made again only when what it shows has changed. */
  private final Map<TrialId, Card> cards = new HashMap<>();

  private List<String> layout = List.of();

  /** A trial's view, with what it shows. */
  private record Card(CellContent content, CellView view) {}

  /**
   * Builds the pane, 240 wide.
   *
   * @param dropped receives the files dropped on a trial
   * @param press is told which key a click stands for
   */
  public BoardView(
      Board board,
      KeyMap keys,
      BiConsumer<TrialId, List<Path>> dropped,
      Look look,
      Consumer<String> press,
      Listeners listeners) {
    this.board = board;
    this.dropped = dropped;
    this.look = look;
    Runnable athlete = () -> press.accept(keys.of(Action.ATHLETE));
    foot = new BoardFoot(look, athlete, heightProperty().greaterThan(look.px(LOW)));
    getStyleClass().setAll("pane", "board");
    setId("board");
    setFocusTraversable(true);
    setAccessibleText("Trial board");
    Label title = Nodes.label("Trial board", "title");
    Region bar = new Region();
    bar.getStyleClass().setAll("focus-bar");
    bar.setMinSize(4, look.px(20));
    bar.setMaxSize(4, look.px(20));
    bar.setManaged(false);
    bar.resizeRelocate(-look.px(24), 0, 4, look.px(20));
    bar.visibleProperty().bind(focusedProperty());
    Label whose = Nodes.named("board-athlete", "second");
    whose.setOnMouseClicked(event -> athlete.run());
    whose.visibleProperty().bind(board.cellsProperty().map(cells -> !cells.isEmpty()));
    listeners.onValue(board.heedProperty(), heed -> showAthlete(whose, heed, keys));
    HBox titleRow = new HBox(title, bar, Nodes.space(), whose);
    titleRow.setAlignment(Pos.BASELINE_LEFT);
    titleRow.getStyleClass().add("title-row");
    Nodes.scrollVertically(scroll);
    VBox.setVgrow(scroll, Priority.ALWAYS);
    getChildren().setAll(titleRow, scroll, foot);
    setOnMousePressed(event -> requestFocus());
    listeners.onChange(board.cellsProperty(), this::show);
    listeners.onChange(board.previewsProperty(), this::show);
    listeners.onChange(board.chosenProperty(), this::show);
    listeners.onChange(board.heedProperty(), this::show);
    show();
  }

  private void showAthlete(Label whose, List<AthleteNotice> heed, KeyMap keys) {
    whose.setText(heed.isEmpty() ? "Athlete" : "▲ Athlete");
    whose.getStyleClass().setAll("label", "second", "to-click", "link");
    Nodes.setStyle(whose, "warning", !heed.isEmpty());
    String what = "Athlete details: " + keys.of(Action.ATHLETE);
    Stream<String> sentences = heed.stream().map(AthleteNotice::sentence);
    String tip = Stream.concat(sentences, Stream.of(what)).collect(Collectors.joining("\n"));
    whose.setTooltip(Tooltips.of(tip, look));
  }

  private void show() {
    List<Cell> cells = board.cellsProperty().get();
    TrialId next = board.nextToFilm();
    List<String> wanted =
        cells.stream()
            .map(cell -> cell.id().name() + " " + board.heading(cell.id().block()))
            .toList();
    if (content.getChildren().isEmpty() || !wanted.equals(layout)) {
      layout = wanted;
      cards.clear();
      content.getChildren().setAll(handHeadings());
      cells.stream()
          .map(cell -> cell.id().block())
          .distinct()
          .forEach(block -> content.getChildren().add(blockGrid(block, cells, next)));
    } else {
      content.getChildren().set(0, handHeadings());
      cells.forEach(cell -> update(contentOf(cell, next)));
    }
    board
        .chosenCell()
        .ifPresentOrElse(this::showFoot, () -> foot.show(null, "", null, false, List.of()));
    if (cells.isEmpty() && content.getChildren().size() == 1) {
      content
          .getChildren()
          .add(
              Nodes.label(
                  "Three trials a hand,\nfive seconds each; the\nsame again after a drill.",
                  "second"));
    }
  }

  private void showFoot(Cell cell) {
    foot.show(
        cell,
        board.heading(cell.id().block()),
        board.previewsProperty().get().get(cell.id()),
        cell.id().equals(board.nextToFilm()),
        board.heedProperty().get());
    Node place = content.lookup("#" + cell.id().name());
    if (place != null) {
      Platform.runLater(() -> Nodes.scrollTo(scroll, place));
    }
  }

  private HBox handHeadings() {
    HBox row = new HBox(look.px(GAP));
    row.getStyleClass().add("hands");
    TrialId chosen = board.chosenProperty().get();
    for (Hand hand : Hand.values()) {
      Label label =
          Nodes.label(
              hand == Hand.LEFT ? "Left hand" : "Right hand",
              chosen != null && chosen.hand() == hand ? "strong" : "second");
      label.setMinWidth(look.px(CellView.WIDTH));
      row.getChildren().add(label);
    }
    return row;
  }

  private CellContent contentOf(Cell cell, @Nullable TrialId next) {
    return new CellContent(
        cell,
        board.heading(cell.id().block()),
        board.previewsProperty().get().get(cell.id()),
        cell.id().equals(next));
  }

  /** Puts another view in a trial's place where it shows something else by now. */
  private void update(CellContent now) {
    TrialId id = now.cell().id();
    Card before = Objects.requireNonNull(cards.get(id));
    if (before.content().equals(now)) {
      before.view().setSelected(id.equals(board.chosenProperty().get()));
      return;
    }
    GridPane grid = (GridPane) before.view().getParent();
    int at = grid.getChildren().indexOf(before.view());
    CellView view = cellView(now);
    GridPane.setConstraints(
        view, GridPane.getColumnIndex(before.view()), GridPane.getRowIndex(before.view()));
    grid.getChildren().set(at, view);
  }

  private VBox blockGrid(String name, List<Cell> cells, @Nullable TrialId next) {
    HBox head =
        new HBox(
            Nodes.label(board.heading(name), "second"),
            Nodes.space(),
            Nodes.label("slaps/s", "small"));
    GridPane grid = new GridPane();
    grid.setHgap(look.px(GAP));
    grid.setVgap(look.px(GAP));
    int at = 0;
    for (Cell cell : cells) {
      if (cell.id().block().equals(name)) {
        grid.add(cellView(contentOf(cell, next)), at % 2, at / 2);
        at++;
      }
    }
    VBox whole = new VBox(look.px(8), head, grid);
    whole.getStyleClass().add("block");
    return whole;
  }

  private CellView cellView(CellContent shown) {
    TrialId id = shown.cell().id();
    CellView view = new CellView(shown, id.equals(board.chosenProperty().get()), pictures, look);
    cards.put(id, new Card(shown, view));
    view.setOnAction(
        event -> {
          view.setSelected(true);
          board.choose(id);
        });
    view.setOnDragOver(
        event -> {
          if (event.getDragboard().hasFiles()) {
            event.acceptTransferModes(TransferMode.COPY);
            view.setSelected(true);
          }
          event.consume();
        });
    view.setOnDragExited(event -> view.setSelected(id.equals(board.chosenProperty().get())));
    view.setOnDragDropped(
        event -> {
          dropped.accept(id, event.getDragboard().getFiles().stream().map(File::toPath).toList());
          event.setDropCompleted(true);
          event.consume();
        });
    return view;
  }
}
