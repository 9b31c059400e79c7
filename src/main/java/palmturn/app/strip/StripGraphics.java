package palmturn.app.strip;

import java.awt.Font;
import javafx.scene.canvas.GraphicsContext;
import org.jfree.fx.FXGraphics2D;
import palmturn.app.look.Look;

/** A graphics context for the charts' painters on a canvas, with JavaFX's own fonts. */
public final class StripGraphics extends FXGraphics2D {
  private final GraphicsContext context;

  /** Draws on a canvas. */
  public StripGraphics(GraphicsContext context) {
    super(context);
    this.context = context;
  }

  @Override
  public void setFont(Font font) {
    super.setFont(font);
    double size = font.getSize2D();
    context.setFont(font.isBold() ? Look.bold(size) : Look.regular(size));
  }
}
