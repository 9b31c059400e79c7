package palmturn.app.board;

import java.util.List;
import java.util.Locale;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.ToggleButton;
import javafx.scene.paint.Color;
import javafx.scene.shape.ArcType;
import javafx.scene.shape.StrokeLineCap;
import javafx.scene.text.TextAlignment;
import palmturn.app.look.Look;
import palmturn.app.look.Theme;
import palmturn.chart.Palette;
import palmturn.trial.Hand;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;

/**
 * A trial on the board: a miniature of its marks, how far it is in a shape and a word, its rate.
 */
final class CellView extends ToggleButton {
  static final double WIDTH = 92;
  static final double HEIGHT = 56;

  CellView(Cell cell, Look look, boolean chosen) {
    getStyleClass().setAll("cell");
    if (cell.state() == Cell.State.NOT_FILMED) {
      getStyleClass().add("not-filmed");
    }
    setFocusTraversable(false);
    setSelected(chosen);
    setId(cell.id().name());
    setMinSize(look.px(WIDTH), look.px(HEIGHT));
    setMaxSize(look.px(WIDTH), look.px(HEIGHT));
    setAccessibleText(words(cell));
    setGraphic(drawing(cell, look));
  }

  private static String words(Cell cell) {
    return "%s hand, %s, repeat %d, %s"
        .formatted(
            cell.id().hand() == Hand.LEFT ? "left" : "right",
            cell.id().block(),
            cell.id().repeat(),
            cell.state().words());
  }

  private static Canvas drawing(Cell cell, Look look) {
    Canvas canvas = new Canvas(look.px(WIDTH), look.px(HEIGHT));
    canvas.setMouseTransparent(true);
    GraphicsContext g = canvas.getGraphicsContext2D();
    double scale = look.scaleProperty().get();
    g.scale(scale, scale);
    Palette palette = look.theme().palette();
    Color ink = Theme.fx(palette.ink());
    Color quiet = Theme.fx(palette.ink3());
    boolean filmed = cell.state() != Cell.State.NOT_FILMED;
    double line = filmed ? 42 : 28;
    icon(g, cell.state(), 12.5, line, filmed ? Theme.fx(palette.ink2()) : quiet);
    g.setFill(filmed ? Theme.fx(palette.ink2()) : quiet);
    g.setFont(Look.regular(13));
    g.fillText(cell.state().words(), 22, line + 4.5);
    if (cell.slapsPerS() != null) {
      g.setFill(ink);
      g.setFont(Look.bold(14));
      g.setTextAlign(TextAlignment.RIGHT);
      g.fillText(String.format(Locale.ROOT, "%.1f", cell.slapsPerS()), WIDTH - 6, line + 4.5);
    }
    if (cell.reading() != null) {
      marks(g, cell.reading(), ink, Theme.fx(palette.clay()));
    } else if (filmed) {
      g.setStroke(Theme.fx(palette.edge()));
      g.setLineWidth(1.25);
      g.strokeLine(9, 18, WIDTH - 9, 18);
    }
    return canvas;
  }

  private static void marks(GraphicsContext g, Reading reading, Color ink, Color clay) {
    double middle = 18;
    g.setStroke(ink);
    g.setLineWidth(1.25);
    g.strokeLine(9, middle, WIDTH - 9, middle);
    List<Slap> slaps = reading.slaps();
    if (slaps.isEmpty()) {
      return;
    }
    double from = slaps.get(0).timeS();
    double length = Math.max(5, slaps.get(slaps.size() - 1).timeS() - from);
    for (Slap slap : slaps) {
      double x = 9 + (slap.timeS() - from) / length * (WIDTH - 18);
      double tall = slap.faulty() ? 11 : 7;
      g.setStroke(slap.faulty() ? clay : ink);
      g.setLineWidth(slap.faulty() ? 2 : 1.25);
      double up = slap.side() == Side.BACK ? 0 : tall;
      double down = slap.side() == Side.PALM ? 0 : tall;
      g.strokeLine(x, middle - up, x, middle + down);
    }
  }

  private static void icon(GraphicsContext g, Cell.State state, double x, double y, Color color) {
    double r = 4.75;
    g.setStroke(color);
    g.setFill(color);
    g.setLineWidth(1.5);
    g.setLineCap(StrokeLineCap.BUTT);
    if (state == Cell.State.NOT_FILMED) {
      for (int angle = 0; angle < 360; angle += 45) {
        g.strokeArc(x - r, y - r, 2 * r, 2 * r, angle, 24, ArcType.OPEN);
      }
    } else {
      g.strokeOval(x - r, y - r, 2 * r, 2 * r);
    }
    if (state == Cell.State.OPEN) {
      g.fillOval(x - 2, y - 2, 4, 4);
    } else if (state == Cell.State.READ) {
      g.fillArc(x - r, y - r, 2 * r, 2 * r, 90, 180, ArcType.CHORD);
    }
  }
}
