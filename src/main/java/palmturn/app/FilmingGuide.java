package palmturn.app;

import javafx.scene.canvas.Canvas;
import javafx.scene.layout.Pane;
import palmturn.app.look.Look;

/** A drawing of how to stand before the camera, in the stage's place while nothing is filmed. */
final class FilmingGuide extends Pane {
  private final Canvas canvas = new Canvas();
  private final Look look;

  FilmingGuide(Look look) {
    this.look = look;
    getStyleClass().setAll("guide");
    setMinSize(0, 0);
    getChildren().add(canvas);
  }

  @Override
  protected void layoutChildren() {
    canvas.setWidth(getWidth());
    canvas.setHeight(getHeight());
    GuideDrawing.draw(canvas.getGraphicsContext2D(), getWidth(), getHeight(), look);
  }
}
