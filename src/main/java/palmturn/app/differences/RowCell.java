package palmturn.app.differences;

import javafx.geometry.Pos;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.scene.shape.Polyline;
import org.jspecify.annotations.Nullable;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.app.look.Theme;
import palmturn.app.strip.StripGraphics;
import palmturn.chart.StavesPainter;
import palmturn.trial.Decision;
import palmturn.wording.Names;

/** A row of the list: both marks in small, the difference, its time and the decision. */
final class RowCell extends ListCell<ListPane.Row> {
  private static final double ICON_WIDTH = 34;
  private static final double ICON_HEIGHT = 54;

  private final DifferenceReview differences;
  private final Look look;

  RowCell(DifferenceReview differences, Look look) {
    this.differences = differences;
    this.look = look;
    getStyleClass().setAll("difference-row");
    // As wide as the list, so that long words are cut and the times stay in sight.
    setPrefWidth(0);
    setOnMouseClicked(
        event -> {
          if (getItem() instanceof ListPane.Row.Item of) {
            differences.goTo(of.item());
          }
        });
  }

  @Override
  protected void updateItem(ListPane.@Nullable Row row, boolean empty) {
    super.updateItem(row, empty);
    getStyleClass().setAll("difference-row");
    setText(null);
    setGraphic(null);
    DifferenceWords wording = StavesLayout.wording(differences);
    if (row instanceof ListPane.Row.Heading heading) {
      getStyleClass().add("heading-row");
      setGraphic(Nodes.label(heading.words(), "title"));
    } else if (row instanceof ListPane.Row.Item of && wording != null) {
      if (of.item().equals(differences.current())) {
        getStyleClass().add("current-row");
      }
      setGraphic(line(of.item(), wording));
    }
  }

  private HBox line(ReviewItem item, DifferenceWords wording) {
    Decision<?> decision = item.decision();
    Label title = Nodes.label(wording.title(item), "plain-title");
    title.setMinWidth(0);
    HBox second = Nodes.row(look.px(6));
    if (decision != null && !item.open()) {
      Polyline tick = new Polyline(0, 5, 3.5, 8.5, 10, 1);
      tick.setStroke(Theme.fx(look.theme().palette().ink2()));
      tick.setStrokeWidth(1.75);
      second
          .getChildren()
          .setAll(
              tick,
              Nodes.label(
                  wording.decisionBrief(decision) + ", " + Names.decider(decision), "second"));
    } else {
      String left = decision == null ? "" : "left open; ";
      Label detail = Nodes.label(left + wording.detail(item), "second");
      detail.setMinWidth(0);
      second.getChildren().setAll(detail);
    }
    VBox words = new VBox(look.px(2), title, second);
    words.setAlignment(Pos.CENTER_LEFT);
    words.setMinWidth(0);
    HBox.setHgrow(words, Priority.ALWAYS);
    Label when = Nodes.whole(wording.time(item.fromS()), "second");
    return Nodes.row(look.px(14), icon(item, wording), words, when);
  }

  private Canvas icon(ReviewItem item, DifferenceWords wording) {
    Canvas canvas = new Canvas(look.px(ICON_WIDTH), look.px(ICON_HEIGHT));
    GraphicsContext g = canvas.getGraphicsContext2D();
    double scale = look.scaleProperty().get();
    g.scale(scale, scale);
    StavesPainter.icon(
        new StripGraphics(g),
        StavesLayout.focus(item),
        wording.isEstimate(true),
        look.theme().palette(),
        ICON_WIDTH);
    return canvas;
  }
}
