package palmturn.app.sheet;

import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.trial.Estimate;
import palmturn.wording.EstimateSummary;

/** The details of an estimate, with its warnings below. */
final class EstimateTable {
  private static final double WIDTH = 640;
  private static final double NAMES = 110;

  private EstimateTable() {}

  static Node of(Estimate estimate, Look look) {
    GridPane lines = new GridPane(look.px(16), look.px(6));
    int row = 0;
    for (EstimateSummary.Line line : EstimateSummary.of(estimate)) {
      Label name = Nodes.label(line.name(), "second");
      name.setMinWidth(look.px(NAMES));
      GridPane.setValignment(name, VPos.TOP);
      Label words = wide(Nodes.wrapped(line.words(), "label"));
      GridPane.setHgrow(words, Priority.ALWAYS);
      lines.addRow(row++, name, words);
    }
    VBox warnings = new VBox(look.px(6));
    for (String warning : estimate.warnings()) {
      Label label = wide(Nodes.wrapped("▲ " + warning, "small"));
      label.getStyleClass().add("warning");
      warnings.getChildren().add(label);
    }
    VBox all = new VBox(look.px(14), lines, warnings);
    all.setId("estimate-says");
    return new SheetScrollPane(all, WIDTH, look);
  }

  private static Label wide(Label label) {
    label.setMinWidth(0);
    label.setMaxWidth(Double.MAX_VALUE);
    return label;
  }
}
