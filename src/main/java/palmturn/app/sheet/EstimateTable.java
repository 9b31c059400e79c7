package palmturn.app.sheet;

import javafx.geometry.VPos;
import javafx.scene.control.Label;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import palmturn.app.look.Look;
import palmturn.trial.Estimate;
import palmturn.work.EstimateWords;

/** What an estimate found beside what it looked for, and under it what it warns of. */
final class EstimateTable extends VBox {
  private static final double WIDTH = 640;
  private static final double NAMES = 110;

  EstimateTable(Estimate estimate, Look look) {
    super(look.px(14));
    setId("estimate-says");
    GridPane lines = new GridPane(look.px(16), look.px(6));
    int row = 0;
    for (EstimateWords.Line line : EstimateWords.of(estimate)) {
      Label name = new Label(line.name());
      name.getStyleClass().add("second");
      name.setMinWidth(look.px(NAMES));
      GridPane.setValignment(name, VPos.TOP);
      lines.addRow(row++, name, words(line.words(), look.px(WIDTH - NAMES - 16)));
    }
    VBox warnings = new VBox(look.px(6));
    for (String warning : estimate.warnings()) {
      Label label = words("▲ " + warning, look.px(WIDTH));
      label.getStyleClass().addAll("small", "warning");
      warnings.getChildren().add(label);
    }
    getChildren().addAll(lines, warnings);
  }

  private static Label words(String text, double width) {
    Label label = new Label(text);
    label.setWrapText(true);
    label.setPrefWidth(width);
    label.setMinHeight(Region.USE_PREF_SIZE);
    return label;
  }
}
