package palmturn.app.look;

import java.util.List;
import javafx.beans.value.ObservableValue;
import javafx.geometry.Bounds;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.shape.Rectangle;
import palmturn.app.tasks.RunningTask;

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

  /** Returns a label with a style class that is never narrower than its text. */
  public static Label whole(String text, String style) {
    Label label = label(text, style);
    label.setMinWidth(Region.USE_PREF_SIZE);
    return label;
  }

  /** Returns an empty label with an id and a style class, for a text that changes. */
  public static Label named(String id, String style) {
    Label label = label("", style);
    label.setId(id);
    return label;
  }

  /** Lets a label show a text, and take no room while that is empty. */
  public static void bindText(Label label, ObservableValue<String> text) {
    label.textProperty().bind(text);
    label.managedProperty().bind(label.textProperty().isNotEmpty());
  }

  /** Returns a row of parts, centred on one line. */
  public static HBox row(double gap, Node... parts) {
    HBox row = new HBox(gap, parts);
    row.setAlignment(Pos.CENTER_LEFT);
    return row;
  }

  /** Returns a button with an id and style classes. */
  public static Button button(String id, String text, Runnable press, String... styles) {
    Button button = new Button(text);
    button.setId(id);
    button.getStyleClass().setAll("button");
    button.getStyleClass().addAll(styles);
    button.setOnAction(event -> press.run());
    return button;
  }

  /** Gives a node a style class, or takes it away. */
  public static void setStyle(Node node, String style, boolean on) {
    node.getStyleClass().remove(style);
    if (on) {
      node.getStyleClass().add(style);
    }
  }

  /** Shows a node, or takes it out of the layout. */
  public static void setShown(Node node, boolean shown) {
    node.setVisible(shown);
    node.setManaged(shown);
  }

  /** Fixes a pane's width. */
  public static void setWidth(Region pane, double width) {
    pane.setMinWidth(width);
    pane.setMaxWidth(width);
  }

  /** Fixes a pane's height. */
  public static void setHeight(Region pane, double height) {
    pane.setMinHeight(height);
    pane.setMaxHeight(height);
  }

  /** Returns the name and the progress of a task, and a button that stops it. */
  public static List<Node> progress(RunningTask task, String id, double width, Runnable stop) {
    Label words = named(id + "-running", "second");
    words.setText(task.words());
    ProgressBar bar = new ProgressBar();
    bar.getStyleClass().add("line-bar");
    bar.setPrefWidth(width);
    bar.progressProperty().bind(task.shareProperty());
    return List.of(words, bar, button(id + "-stop", "Stop", stop, "choice", "narrow"));
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
