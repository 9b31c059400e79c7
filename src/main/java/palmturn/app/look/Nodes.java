package palmturn.app.look;

import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.shape.Rectangle;

/** Small parts that the panes are built from. */
public final class Nodes {
  private Nodes() {}

  /** Returns a region that takes the spare width of a row. */
  public static Region space() {
    Region space = new Region();
    HBox.setHgrow(space, Priority.ALWAYS);
    return space;
  }

  /** Returns a label with a style class. */
  public static Label label(String text, String style) {
    Label label = new Label(text);
    label.getStyleClass().add(style);
    return label;
  }

  /** Returns a label with a style class whose text wraps and is never cut off. */
  public static Label wrapped(String text, String style) {
    Label label = label(text, style);
    label.setWrapText(true);
    label.setMinHeight(Region.USE_PREF_SIZE);
    return label;
  }

  /** Lets a pane scroll up and down only, without taking the focus. */
  public static void scrollVertically(ScrollPane pane) {
    pane.setFitToWidth(true);
    pane.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    pane.setFocusTraversable(false);
  }

  /** Scrolls a node of the content into view, no further than needed. */
  public static void scrollTo(ScrollPane pane, Node node) {
    Node content = pane.getContent();
    double shown = pane.getViewportBounds().getHeight();
    double spare = content.getLayoutBounds().getHeight() - shown;
    if (node.getScene() == null || spare <= 0) {
      return;
    }
    Bounds at = content.sceneToLocal(node.localToScene(node.getBoundsInLocal()));
    double top = pane.getVvalue() * spare;
    pane.setVvalue(Math.min(at.getMinY(), Math.max(at.getMaxY() - shown, top)) / spare);
  }

  /** Clips a pane's content to its bounds. */
  public static void clipToBounds(Region pane) {
    Rectangle clip = new Rectangle();
    clip.widthProperty().bind(pane.widthProperty());
    clip.heightProperty().bind(pane.heightProperty());
    pane.setClip(clip);
  }
}
