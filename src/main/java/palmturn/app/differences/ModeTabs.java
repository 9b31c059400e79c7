package palmturn.app.differences;

import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import palmturn.app.keys.Action;
import palmturn.app.keys.KeyBindings;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.settle.SettledTrial;

/** The header's tabs for marking and for differences; hidden if there is nothing to compare. */
public final class ModeTabs extends HBox {
  private final DifferenceReview differences;
  private final ReadOnlyBooleanProperty offered;
  private final HBox mark;
  private final HBox settle;
  private final Label open = new Label();
  private final Label key = new Label();

  /**
   * Builds both tabs.
   *
   * @param offered whether there is anything to compare
   * @param press is told which key was clicked
   */
  public ModeTabs(
      DifferenceReview differences,
      ReadOnlyBooleanProperty offered,
      KeyBindings keys,
      Look look,
      Consumer<String> press,
      Listeners listeners) {
    super(look.px(24));
    this.differences = differences;
    this.offered = offered;
    setMinWidth(Region.USE_PREF_SIZE);
    key.getStyleClass().add("key");
    key.textProperty().bind(keys.mapProperty().map(map -> map.of(Action.COMPARE)));
    mark = tab("tab-mark", look, Nodes.label("Mark", "tab-name"));
    settle = tab("tab-differences", look, Nodes.label("Differences", "tab-name"), open, key);
    mark.setOnMouseClicked(
        event -> {
          if (differences.isOpen()) {
            press.accept(keys.of(Action.LEAVE));
          }
        });
    settle.setOnMouseClicked(
        event -> {
          if (!differences.isOpen()) {
            press.accept(keys.of(Action.COMPARE));
          }
        });
    getChildren().setAll(mark, settle);
    listeners.onChange(differences.trialProperty(), this::show);
    listeners.onChange(differences.settledProperty(), this::show);
    listeners.onChange(offered, this::show);
    show();
  }

  private static HBox tab(String id, Look look, Label... parts) {
    HBox tab = new HBox(look.px(6), parts);
    tab.setId(id);
    tab.setAlignment(Pos.CENTER);
    return tab;
  }

  private void show() {
    boolean here = differences.isOpen();
    SettledTrial settled = differences.settledProperty().get();
    Nodes.setShown(this, here || offered.get());
    mark.getStyleClass().setAll("tab", here ? "other-tab" : "chosen-tab");
    settle.getStyleClass().setAll("tab", here ? "chosen-tab" : "other-tab");
    Nodes.setShown(key, !here);
    open.setText(settled == null ? "" : settled.open() + " open");
    open.setManaged(settled != null);
  }
}
