package palmturn.app.board;

import java.util.List;
import javafx.beans.value.ObservableBooleanValue;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.scene.shape.Polygon;
import org.jspecify.annotations.Nullable;
import palmturn.advise.AthleteNotice;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.app.look.Theme;
import palmturn.app.look.Tooltips;

/** The lines under the board: the chosen trial, and cautions about the athlete. */
final class BoardFoot extends VBox {
  private final Look look;
  private final Runnable athlete;
  private final VBox heeded = new VBox();

  /**
   * Shows nothing yet.
   *
   * @param athlete brings what is known of the athlete into sight
   * @param room whether there is any for what is to be heeded of the athlete
   */
  BoardFoot(Look look, Runnable athlete, ObservableBooleanValue room) {
    this.look = look;
    this.athlete = athlete;
    heeded.managedProperty().bind(room);
    heeded.visibleProperty().bind(room);
    setId("board-foot");
    getStyleClass().setAll("board-foot");
    setMinHeight(Region.USE_PREF_SIZE);
  }

  void show(
      @Nullable Cell cell,
      String block,
      @Nullable ClipPreview filmed,
      boolean next,
      List<AthleteNotice> heed) {
    getChildren().clear();
    setVisible(cell != null);
    if (cell == null) {
      return;
    }
    getChildren().add(Nodes.wrapped(CellWords.name(cell.id(), block), "name"));
    CellWords.describe(cell, filmed, next)
        .forEach(line -> getChildren().add(Nodes.wrapped(line, "small")));
    if (filmed != null) {
      filmed.warnings().forEach(warning -> getChildren().add(warning(warning)));
    }
    heeded.getChildren().setAll(heed.stream().map(this::heed).toList());
    getChildren().add(heeded);
  }

  /** A single line, to keep the board's height; a click opens the sheet with the full sentence. */
  private HBox heed(AthleteNotice heed) {
    Label label = Nodes.wrapped(heed.brief(), "small");
    label.setWrapText(false);
    label.setTooltip(Tooltips.of(heed.sentence(), look));
    HBox row = warning(label);
    row.getStyleClass().add("to-click");
    row.setOnMouseClicked(event -> athlete.run());
    return row;
  }

  private HBox warning(String words) {
    return warning(Nodes.wrapped(words, "small"));
  }

  private HBox warning(Label label) {
    Polygon triangle = new Polygon(0, 10, 6, 0, 12, 10);
    triangle.setFill(Theme.fx(look.theme().palette().clay()));
    triangle.setTranslateY(look.px(4));
    label.getStyleClass().add("warning");
    return new HBox(look.px(6), triangle, label);
  }
}
