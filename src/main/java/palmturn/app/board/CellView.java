package palmturn.app.board;

import java.util.Locale;
import javafx.scene.Node;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.ToggleButton;
import javafx.scene.image.ImageView;
import javafx.scene.layout.StackPane;
import javafx.scene.paint.Color;
import javafx.scene.shape.ArcType;
import javafx.scene.shape.StrokeLineCap;
import javafx.scene.text.TextAlignment;
import org.jspecify.annotations.Nullable;
import palmturn.app.look.Look;
import palmturn.app.look.Theme;
import palmturn.app.look.Tooltips;
import palmturn.chart.Palette;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;

/**
 * A trial on the board: a miniature of its marks or a picture of its clip, its state as a shape and
 * a word, its rate, and a triangle where its clip has warnings.
 */
final class CellView extends ToggleButton {
  static final double WIDTH = 92;
  static final double HEIGHT = 56;
  private static final double PICTURE = 31;

  private final Look look;
  private final Palette palette;

  CellView(CellContent content, boolean chosen, ImageCache pictures, Look at) {
    Cell cell = content.cell();
    ClipPreview filmed = content.filmed();
    boolean next = content.next();
    this.look = at;
    this.palette = at.theme().palette();
    getStyleClass().setAll("cell");
    if (cell.state() == Cell.State.NOT_FILMED) {
      getStyleClass().add(next ? "film-next" : "not-filmed");
    }
    setFocusTraversable(false);
    setSelected(chosen);
    setId(cell.id().name());
    setMinSize(look.px(WIDTH), look.px(HEIGHT));
    setMaxSize(look.px(WIDTH), look.px(HEIGHT));
    String words = CellWords.fullText(cell, content.block(), filmed, next);
    setAccessibleText(words);
    // A tooltip has a window of its own: hundreds of them would keep the board waiting.
    setOnMouseEntered(
        event -> {
          if (getTooltip() == null) {
            setTooltip(Tooltips.of(words, look));
          }
        });
    StackPane layers = new StackPane();
    if (cell.reading() == null && filmed != null && filmed.still() != null) {
      layers.getChildren().add(picture(pictures.of(filmed.still())));
    }
    layers.getChildren().add(drawing(cell, filmed, next));
    layers.setMouseTransparent(true);
    setGraphic(layers);
  }

  /** The middle of the clip's picture, where the hands are. */
  private Node picture(javafx.scene.image.Image still) {
    ImageView view = new ImageView(still);
    double shape = PICTURE / (WIDTH - 4);
    double height = Math.min(still.getHeight(), still.getWidth() * shape);
    double width = height / shape;
    view.setViewport(
        new javafx.geometry.Rectangle2D(
            (still.getWidth() - width) / 2, (still.getHeight() - height) * 0.62, width, height));
    view.setFitWidth(look.px(WIDTH - 4));
    view.setFitHeight(look.px(PICTURE));
    view.setTranslateY(-look.px((HEIGHT - PICTURE) / 2 - 2));
    return view;
  }

  private Canvas drawing(Cell cell, @Nullable ClipPreview filmed, boolean next) {
    Canvas canvas = look.canvas(WIDTH, HEIGHT);
    GraphicsContext g = canvas.getGraphicsContext2D();
    Color ink = Theme.fx(palette.ink());
    boolean there = cell.state() != Cell.State.NOT_FILMED;
    double line = there ? 43 : 28;
    Color quiet = Theme.fx(there ? palette.ink2() : next ? palette.iris() : palette.ink3());
    icon(g, cell.state(), 12.5, line, quiet);
    g.setFill(quiet);
    g.setFont(next ? Look.bold(13) : Look.regular(13));
    g.fillText(CellWords.stateWord(cell, next), 22, line + 4.5);
    if (cell.slapsPerS() != null) {
      g.setFill(ink);
      g.setFont(Look.bold(14));
      g.setTextAlign(TextAlignment.RIGHT);
      g.fillText(String.format(Locale.ROOT, "%.1f", cell.slapsPerS()), WIDTH - 6, line + 4.5);
    }
    if (cell.reading() != null) {
      marks(g, cell.reading(), ink, Theme.fx(palette.clay()));
    } else if (there && (filmed == null || filmed.still() == null)) {
      g.setStroke(Theme.fx(palette.edge()));
      g.setLineWidth(1.25);
      g.strokeLine(9, 18, WIDTH - 9, 18);
    }
    if (filmed != null && !filmed.warnings().isEmpty()) {
      warning(g);
    }
    return canvas;
  }

  /** A triangle on a ground of its own, so that it stands out from any picture. */
  private void warning(GraphicsContext g) {
    double x = WIDTH - 11;
    g.setFill(Theme.fx(palette.sheet()));
    g.fillRect(x - 8, 2, 17, 14);
    g.setFill(Theme.fx(palette.clay()));
    g.fillPolygon(new double[] {x - 6, x, x + 6}, new double[] {14, 4, 14}, 3);
  }

  private static void marks(GraphicsContext g, Reading reading, Color ink, Color clay) {
    double middle = 18;
    g.setStroke(ink);
    g.setLineWidth(1.25);
    g.strokeLine(9, middle, WIDTH - 9, middle);
    if (reading.slaps().isEmpty()) {
      return;
    }
    double from = reading.slaps().get(0).timeS();
    double length = Math.max(5, reading.slaps().get(reading.slaps().size() - 1).timeS() - from);
    for (Slap slap : reading.slaps()) {
      double x = 9 + (slap.timeS() - from) / length * (WIDTH - 18);
      double tall = slap.faulty() ? 11 : 7;
      g.setStroke(slap.faulty() ? clay : ink);
      g.setLineWidth(slap.faulty() ? 2 : 1.25);
      double up = slap.side() == Side.BACK ? 0 : tall;
      double down = slap.side() == Side.PALM ? 0 : tall;
      g.strokeLine(x, middle - up, x, middle + down);
    }
  }

  private void icon(GraphicsContext g, Cell.State state, double x, double y, Color color) {
    double r = 4.75;
    g.setStroke(color);
    g.setFill(color);
    g.setLineWidth(1.5);
    g.setLineCap(StrokeLineCap.BUTT);
    switch (state) {
      case NOT_FILMED -> {
        for (int angle = 0; angle < 360; angle += 45) {
          g.strokeArc(x - r, y - r, 2 * r, 2 * r, angle, 24, ArcType.OPEN);
        }
      }
      case FILMED -> g.strokeOval(x - r, y - r, 2 * r, 2 * r);
      case ESTIMATED -> {
        g.strokeOval(x - r, y - r, 2 * r, 2 * r);
        g.setStroke(Theme.fx(palette.sea()));
        g.strokeOval(x - 2, y - 2, 4, 4);
      }
      case OPEN -> {
        g.strokeOval(x - r, y - r, 2 * r, 2 * r);
        g.fillOval(x - 2, y - 2, 4, 4);
      }
      case READ -> {
        g.strokeOval(x - r, y - r, 2 * r, 2 * r);
        g.fillArc(x - r, y - r, 2 * r, 2 * r, 90, 180, ArcType.CHORD);
      }
      case SETTLED -> {
        g.fillOval(x - r - 0.75, y - r - 0.75, 2 * r + 1.5, 2 * r + 1.5);
        g.setStroke(Theme.fx(palette.sheet()));
        g.strokePolyline(
            new double[] {x - 2.6, x - 0.7, x + 2.7}, new double[] {y + 0.1, y + 2.1, y - 2}, 3);
      }
    }
  }
}
