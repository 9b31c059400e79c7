package palmturn.app;

import javafx.beans.binding.Bindings;
import javafx.geometry.Pos;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import palmturn.app.desk.Desk;
import palmturn.app.look.Look;
import palmturn.app.look.Theme;

/** The header, 48 high: whose session, the last step, whose reading and when it was saved. */
final class HeaderView extends HBox {
  HeaderView(Desk desk, Look look) {
    super(look.px(12));
    getStyleClass().setAll("header");
    setAlignment(Pos.CENTER_LEFT);
    setMinHeight(look.px(48));
    setMaxHeight(look.px(48));
    Label name = new Label("Palmturn");
    name.getStyleClass().add("program");
    Label heading = label("heading", "second");
    heading.textProperty().bind(desk.headingProperty());
    Label step = label("step", "step");
    step.textProperty().bind(desk.marking().stepProperty());
    step.setMinWidth(0);
    Label reader = label("reader", "plain");
    reader.textProperty().bind(desk.readerProperty());
    Label saved = label("saved", "second");
    saved
        .textProperty()
        .bind(
            Bindings.when(desk.readOnlyProperty())
                .then("Look only")
                .otherwise(desk.savedProperty()));
    saved.managedProperty().bind(saved.textProperty().isNotEmpty());
    getChildren()
        .setAll(
            sign(look), name, gap(look, 16), heading, gap(look, 24), step, space(), reader, saved);
  }

  private static Label label(String id, String style) {
    Label label = new Label();
    label.setId(id);
    label.getStyleClass().add(style);
    label.setMinWidth(Region.USE_PREF_SIZE);
    return label;
  }

  private static Canvas sign(Look look) {
    double scale = look.scaleProperty().get();
    Canvas canvas = new Canvas(26 * scale, 28 * scale);
    GraphicsContext g = canvas.getGraphicsContext2D();
    g.scale(scale, scale);
    Color ink = Theme.fx(look.theme().palette().ink());
    g.setFill(ink);
    g.setStroke(ink);
    g.setLineWidth(2);
    g.strokeLine(1, 14, 25, 14);
    g.strokeLine(8.5, 14, 8.5, 5);
    g.strokeLine(17.5, 14, 17.5, 23);
    g.fillOval(4.5, 1, 8, 8);
    g.fillRect(13.5, 19, 8, 8);
    return canvas;
  }

  private static Region gap(Look look, double width) {
    Region gap = new Region();
    gap.setMinWidth(look.px(width) - look.px(12));
    return gap;
  }

  private static Region space() {
    Region space = new Region();
    HBox.setHgrow(space, Priority.ALWAYS);
    return space;
  }
}
