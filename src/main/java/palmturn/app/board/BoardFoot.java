package palmturn.app.board;

import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.scene.shape.Polygon;
import org.jspecify.annotations.Nullable;
import palmturn.app.look.Look;
import palmturn.app.look.Theme;

/** What there is to say about the chosen place, under the board. */
final class BoardFoot extends VBox {
  private final Look look;

  BoardFoot(Look look) {
    this.look = look;
    setId("board-foot");
    getStyleClass().setAll("board-foot");
    setMinHeight(Region.USE_PREF_SIZE);
  }

  void show(@Nullable Cell cell, String block, @Nullable Filmed filmed, boolean next) {
    getChildren().clear();
    setVisible(cell != null);
    if (cell == null) {
      return;
    }
    getChildren().add(words(CellWords.name(cell.id(), block), "name"));
    CellWords.about(cell, filmed, next).forEach(line -> getChildren().add(words(line, "small")));
    if (filmed != null) {
      filmed.warnings().forEach(warning -> getChildren().add(warning(warning)));
    }
  }

  private HBox warning(String words) {
    Polygon triangle = new Polygon(0, 10, 6, 0, 12, 10);
    triangle.setFill(Theme.fx(look.theme().palette().clay()));
    triangle.setTranslateY(look.px(4));
    Label label = words(words, "small");
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
