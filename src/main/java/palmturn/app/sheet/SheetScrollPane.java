package palmturn.app.sheet;

import javafx.geometry.Insets;
import javafx.geometry.Orientation;
import javafx.scene.Node;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import palmturn.app.look.Look;

/**
 * As high as what is in it, and scrolls where large text leaves no room for all; what is there
 * stands clear of the bar.
 */
final class SheetScrollPane extends ScrollPane {
  /** Between parts that stand side by side. */
  static final double GAP = 24;

  /** So much of it is always in sight. */
  private static final double LEAST = 160;

  private static final double BAR = 16;

  private final Region inside;

  /**
   * @param width that it would have, at text of the usual size
   */
  SheetScrollPane(Region inside, double width, Look look) {
    super(inside);
    this.inside = inside;
    setFitToWidth(true);
    setHbarPolicy(ScrollBarPolicy.NEVER);
    setFocusTraversable(false);
    setMinHeight(look.px(LEAST));
    setPrefViewportWidth(look.px(width));
    viewportBoundsProperty()
        .addListener(
            (bounds, before, now) -> {
              boolean all = inside.getHeight() <= now.getHeight() + 1;
              inside.setPadding(new Insets(0, all ? 0 : look.px(12), 0, 0));
            });
  }

  /**
   * Returns parts side by side, one under the other where large text leaves no room, without a line
   * over and under them.
   *
   * @param width of all of them side by side, at text of the usual size
   */
  static SheetScrollPane beside(double width, Look look, Node... parts) {
    FlowPane row = new FlowPane(look.px(GAP), look.px(12), parts);
    row.setPrefWrapLength(look.px(width));
    // A bar that comes and goes must not push the parts under each other.
    SheetScrollPane scrolled = new SheetScrollPane(row, width + 2 * BAR, look);
    scrolled.getStyleClass().add("unruled");
    return scrolled;
  }

  @Override
  public Orientation getContentBias() {
    return Orientation.HORIZONTAL;
  }

  @Override
  protected double computePrefHeight(double width) {
    double across = width < 0 ? prefWidth(-1) : width;
    double room = across - snappedLeftInset() - snappedRightInset();
    return snappedTopInset() + inside.prefHeight(room) + snappedBottomInset();
  }
}
