package palmturn.app.board;

import java.util.List;
import javafx.beans.value.ObservableBooleanValue;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.scene.shape.Polygon;
import org.jspecify.annotations.Nullable;
import palmturn.advise.Heed;
import palmturn.app.look.Look;
import palmturn.app.look.Theme;
import palmturn.app.look.Tooltips;

/** What there is to say about the chosen place, and to heed of the athlete, under the board. */
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
      List<Heed> heed) {
    getChildren().clear();
    setVisible(cell != null);
    if (cell == null) {
      return;
    }
    getChildren().add(words(CellWords.name(cell.id(), block), "name"));
    CellWords.describe(cell, filmed, next).forEach(line -> getChildren().add(words(line, "small")));
    if (filmed != null) {
      filmed.warnings().forEach(warning -> getChildren().add(warning(warning)));
    }
    heeded.getChildren().setAll(heed.stream().map(this::heed).toList());
    getChildren().add(heeded);
  }

  /** One line, so that the board keeps its room; what is cut off stands in the sheet it opens. */
  private HBox heed(Heed heed) {
    Label label = words(heed.brief(), "small");
    label.setWrapText(false);
    label.setTooltip(Tooltips.of(heed.sentence(), look));
    HBox row = warning(label);
    row.getStyleClass().add("to-click");
    row.setOnMouseClicked(event -> athlete.run());
    return row;
  }

  private HBox warning(String words) {
    return warning(words(words, "small"));
  }

  private HBox warning(Label label) {
    Polygon triangle = new Polygon(0, 10, 6, 0, 12, 10);
    triangle.setFill(Theme.fx(look.theme().palette().clay()));
    triangle.setTranslateY(look.px(4));
    label.getStyleClass().add("warning");
    return new HBox(look.px(6), triangle, label);
  }

  private Label words(String text, String style) {
    Label label = new Label(text);
    label.getStyleClass().add(style);
    label.setWrapText(true);
    label.setMinHeight(Region.USE_PREF_SIZE);
    return label;
  }
}
