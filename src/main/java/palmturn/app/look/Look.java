package palmturn.app.look;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Objects;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.scene.canvas.Canvas;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;
import palmturn.chart.Lato;

/** The theme, text size and reduced motion, observed by every pane. */
public final class Look {
  private static final double LARGEST = 2;
  private static final double STEP = 0.25;
  private static final double TEXT = 15;

  private final ObjectProperty<Theme> theme = new SimpleObjectProperty<>(Theme.LIGHT);
  private final DoubleProperty scale = new SimpleDoubleProperty(1);
  private final BooleanProperty lessMotion = new SimpleBooleanProperty(false);

  /** Light or dark. */
  public ObjectProperty<Theme> themeProperty() {
    return theme;
  }

  /** Size of text and of all that holds it: 1 to 2. */
  public DoubleProperty scaleProperty() {
    return scale;
  }

  /** True if moving things jump instead. */
  public BooleanProperty lessMotionProperty() {
    return lessMotion;
  }

  /** Returns the theme. */
  public Theme theme() {
    return theme.get();
  }

  /** Returns a length of the grid at the present size of text, pixels. */
  public double px(double length) {
    return Math.round(length * scale.get());
  }

  /** Returns whether moving things jump instead. */
  public boolean lessMotion() {
    return lessMotion.get();
  }

  /** Switches reduced motion on or off. */
  public void toggleLessMotion() {
    lessMotion.set(!lessMotion.get());
  }

  /** Makes text a quarter larger, up to 200 %. */
  public void larger() {
    setScale(scale.get() + STEP);
  }

  /** Makes text a quarter smaller, down to 100 %. */
  public void smaller() {
    setScale(scale.get() - STEP);
  }

  /**
   * Returns how large to draw a strip under a row of panes, so that large text leaves that row its
   * room: as large as text is, or less, but never less than the ordinary size.
   *
   * @param height what there is for the strip and the row, pixels
   * @param strip the strip's height at the ordinary size
   * @param row what the row needs, in units of the size of text
   */
  public double scaleFitting(double height, double strip, double row) {
    return Math.min(scale.get(), Math.max(1, (height - px(row)) / strip));
  }

  /** Makes text as large as asked, at least 1 and at most 2. */
  public void setScale(double wanted) {
    scale.set(Math.max(1, Math.min(LARGEST, wanted)));
  }

  /** Returns the style of a root: the theme's colours and the size of text. */
  public String rootStyle() {
    return theme().style() + " -fx-font-size: " + TEXT * scale.get() + "px;";
  }

  /** Returns a canvas whose pen draws in units of the ordinary size of text. */
  public Canvas canvas(double width, double height) {
    Canvas canvas = new Canvas(width * scale.get(), height * scale.get());
    canvas.getGraphicsContext2D().scale(scale.get(), scale.get());
    return canvas;
  }

  /** Returns the regular face for a canvas, which scales by itself. */
  public static Font regular(double size) {
    return Font.font(Lato.FAMILY, FontWeight.NORMAL, size);
  }

  /** Returns the bold face for a canvas, which scales by itself. */
  public static Font bold(double size) {
    return Font.font(Lato.FAMILY, FontWeight.BOLD, size);
  }

  /** Makes the bundled typeface known to the toolkit. */
  public static void loadFonts() {
    for (String file : new String[] {"Lato-Regular.ttf", "Lato-Bold.ttf"}) {
      try (InputStream in =
          Objects.requireNonNull(Look.class.getResourceAsStream(Lato.FOLDER + file))) {
        Font.loadFont(in, TEXT);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  /** Returns the address of the style sheet. */
  public static String sheet() {
    return Objects.requireNonNull(Look.class.getResource("/palmturn/app/app.css")).toExternalForm();
  }
}
