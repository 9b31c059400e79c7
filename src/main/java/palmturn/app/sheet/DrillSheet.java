package palmturn.app.sheet;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import javafx.beans.property.StringProperty;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import palmturn.advise.Caution;
import palmturn.advise.LibraryDrill;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.app.session.DrillForm;
import palmturn.app.session.DrillForm.DrillChoice;
import palmturn.trial.DrillHand;

/** The form for the drill before the next block, with the library's instructions. */
final class DrillSheet {
  private static final double WIDTH = 430;
  private static final double SIDE = 400;
  private static final double ROW = 30;
  private static final int ROWS = 5;

  private final DrillForm asked;
  private final Look look;
  private final TextField name;
  private final VBox rows = new VBox();
  private final ScrollPane list = new ScrollPane(rows);
  private final VBox side;

  DrillSheet(DrillForm asked, Look look) {
    this.asked = asked;
    this.look = look;
    name = wide("drill-code", asked.nameProperty());
    side = new VBox(look.px(12));
  }

  /** Returns what takes the keys first. */
  TextField first() {
    return name;
  }

  /** Returns the sheet's content, which follows what is said until the end. */
  List<Node> content(Listeners listeners) {

    name.setPromptText("type, or choose with ↓");
    name.addEventFilter(KeyEvent.KEY_PRESSED, this::handleArrows);
    Nodes.scrollVertically(list);
    list.setMinHeight(look.px(2 * ROW));
    list.setPrefViewportHeight(look.px(ROWS * ROW));
    TextField dose = wide("drill-dose", asked.doseProperty());
    VBox left =
        new VBox(
            look.px(12),
            SheetFactory.labelled(
                "Which drill? One of the list or your own; a rest counts too", name, look),
            list,
            SheetFactory.labelled("Which hand did it train?", hands(listeners), look),
            SheetFactory.labelled("Dose, in your words (optional)", dose, look),
            SheetFactory.labelled(
                "Start and end, as 17:30 or 2026-11-14 17:30 (optional)", times(), look));
    setWidth(left, WIDTH);
    setWidth(side, SIDE);
    double width = WIDTH + SheetScrollPane.GAP + SIDE;
    Label missing =
        SheetFactory.obstacle("drill-missing", asked.obstacleProperty(), look.px(width));
    listeners.onValue(asked.offersProperty(), this::show);
    listeners.onValue(asked.namedProperty(), this::show);
    return List.of(SheetScrollPane.beside(width, look, left, side), missing);
  }

  private void setWidth(Region column, double width) {
    column.setMinWidth(look.px(width));
    column.setPrefWidth(look.px(width));
    column.setMaxWidth(look.px(width));
  }

  private void handleArrows(KeyEvent event) {
    if (event.getCode() == KeyCode.UP || event.getCode() == KeyCode.DOWN) {
      asked.move(event.getCode() == KeyCode.UP ? -1 : 1);
      name.end();
      event.consume();
    }
  }

  private HBox hands(Listeners listeners) {
    HBox row =
        RadioRow.of(
            "drill-hand",
            look,
            asked.handProperty(),
            RadioRow.option("left", DrillHand.LEFT, "left"),
            RadioRow.option("right", DrillHand.RIGHT, "right"),
            RadioRow.option("both", DrillHand.BOTH, "both"),
            RadioRow.option("none", DrillHand.NONE, "none"));
    RadioRow.follow(row, asked.handProperty(), listeners);
    return row;
  }

  private HBox times() {
    TextField start = SheetFactory.field("drill-start", 9, look, asked.startProperty());
    start.setAccessibleText("start");
    TextField end = SheetFactory.field("drill-end", 9, look, asked.endProperty());
    end.setAccessibleText("end");
    return Nodes.row(look.px(8), start, Nodes.label("to", "second"), end);
  }

  private void show(List<DrillChoice> offers) {
    rows.getChildren().setAll(offers.stream().map(this::row).toList());
    if (offers.isEmpty()) {
      rows.getChildren().add(Nodes.label("Not in the list: a drill of your own.", "second"));
    }
    list.setVvalue(0);
    show(asked.namedProperty().get());
  }

  private HBox row(DrillChoice offer) {
    HBox row =
        Nodes.row(
            look.px(12),
            Nodes.whole(offer.name(), "plain"),
            Nodes.space(),
            Nodes.label(offer.aims(), "small"));
    row.setId("offer-" + offer.code());
    row.setMinHeight(look.px(ROW));
    row.getStyleClass().setAll("offer", "inbox-row", "to-click");
    row.setOnMouseClicked(event -> asked.choose(offer));
    return row;
  }

  private void show(@Nullable DrillChoice named) {
    List<DrillChoice> offers = asked.offersProperty().get();
    for (int i = 0; i < offers.size(); i++) {
      boolean chosen = offers.get(i).equals(named);
      Nodes.setStyle(rows.getChildren().get(i), "inbox-chosen", chosen);
      if (chosen) {
        int hidden = offers.size() - ROWS;
        list.setVvalue(hidden <= 0 ? 0 : Math.max(0.0, i - ROWS / 2) / hidden);
      }
    }
    side.getChildren().clear();
    LibraryDrill drill = named == null ? null : named.drill();
    Set<Caution> cautions = new LinkedHashSet<>(Set.of(Caution.PAIN));
    if (drill != null) {
      side.getChildren()
          .addAll(
              Nodes.wrapped(drill.name(), "strong"),
              Nodes.wrapped(drill.how(), "second"),
              Nodes.wrapped("Stop: " + drill.stop(), "second"));
      cautions.addAll(drill.cautions());
    }
    side.getChildren()
        .add(
            Nodes.wrapped(
                "To tell the drill's effect from practice, train one hand and film both."
                    + " A drill of both hands or none needs a rest block of the same length.",
                "small"));
    cautions.stream()
        .sorted()
        .forEach(caution -> side.getChildren().add(Nodes.wrapped(caution.text(), "small")));
  }

  private TextField wide(String id, StringProperty typed) {
    TextField field = SheetFactory.field(id, 24, look, typed);
    field.setMaxWidth(Double.MAX_VALUE);
    return field;
  }
}
