package palmturn.app.tally;

import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.measure.LimitVerdict;

/** The tally as a pane: a block 90 high for each quality. */
public final class TallyView extends VBox {
  private final Tally tally;
  private final Look look;
  private final Label count = Nodes.named("tally-count", "second");
  private final VBox blocks = new VBox();

  /** Builds the pane, 311 wide. */
  public TallyView(Tally tally, Look look, Listeners listeners) {
    this.tally = tally;
    this.look = look;
    getStyleClass().setAll("pane", "tally");
    setId("tally");
    count.textProperty().bind(tally.countProperty());
    HBox head = new HBox(Nodes.label("Tally", "title"), Nodes.space(), count);
    head.getStyleClass().add("title-row");
    blocks.getStyleClass().add("blocks");
    ScrollPane scroll = new ScrollPane(blocks);
    Nodes.scrollVertically(scroll);
    VBox.setVgrow(scroll, Priority.ALWAYS);
    getChildren().setAll(head, scroll);
    listeners.onChange(tally.rowsProperty(), this::show);
    show();
  }

  private void show() {
    List<TallyRow> lines = tally.rowsProperty().get();
    blocks.getChildren().clear();
    for (TallyRow line : lines) {
      blocks.getChildren().add(block(line));
    }
    if (lines.isEmpty()) {
      Label none = Nodes.label("Choose a filmed trial on the board.", "second");
      none.getStyleClass().add("none");
      none.setWrapText(true);
      blocks.getChildren().add(none);
    }
  }

  private VBox block(TallyRow line) {
    Label name = Nodes.label(line.name(), "name");
    HBox top = new HBox(name, Nodes.space());
    if (!line.verdictWords().isEmpty()) {
      top.getChildren().add(verdict(line));
    }
    // Where the pane scrolls it is narrower: the gauge gives way, never the figure.
    Label figure = Nodes.whole(line.figure(), "figure");
    figure.setId("figure-" + line.name().toLowerCase(java.util.Locale.ROOT));
    Label unit = Nodes.whole(line.unit(), "unit");
    HBox middle = new HBox(look.px(8), figure, unit, Nodes.space());
    middle.getStyleClass().add("figure-row");
    middle.setAlignment(Pos.BASELINE_LEFT);
    Node gauge = line.gauge() == null ? new Region() : GaugeDrawing.of(line.gauge(), look);
    HBox.setHgrow(middle, Priority.ALWAYS);
    VBox block = new VBox(top, Nodes.row(0, middle, gauge), Nodes.label(line.note(), "small"));
    block.getStyleClass().add("tally-block");
    Nodes.setHeight(block, look.px(90));
    return block;
  }

  private HBox verdict(TallyRow line) {
    boolean over = line.verdict() == LimitVerdict.OVER;
    Label words = Nodes.label(line.verdictWords(), over ? "over" : "verdict");
    HBox box = new HBox(look.px(6), VerdictShape.of(line.verdict(), look), words);
    box.setAlignment(Pos.CENTER_RIGHT);
    return box;
  }
}
