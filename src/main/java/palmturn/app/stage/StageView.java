package palmturn.app.stage;

import java.util.Locale;
import java.util.function.DoubleSupplier;
import javafx.geometry.Pos;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.Label;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import palmturn.app.estimate.ShownEstimate;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.clip.FrameTable;
import palmturn.clip.Picture;
import palmturn.trial.Estimate;

/** The picture with its time, frame number and overlay. */
public final class StageView extends StackPane {
  private static final double GHOST = 0.4;

  private static final double WHEEL = 1.0025;

  private final Stage stage;
  private final Viewport viewing;
  private final PlaceEditor placing;
  private final ShownEstimate found;
  private final DoubleSupplier elbowLimitCm;
  private final Look look;
  private final PreviousFrame previousFrame;
  private final PictureNode image;
  private final PictureNode before = new PictureNode();
  private final Canvas overlay = new Canvas();
  private final Label where = Nodes.named("stage-where", "on-picture");
  private final Label speed = Nodes.named("stage-speed", "on-picture");
  private final Label trouble = Nodes.named("stage-trouble", "on-picture");
  private double dragX;
  private double dragY;

  /**
   * Builds the pane, which takes what room the others leave.
   *
   * @param elbowLimitCm tells how far the elbow may go from its place
   * @param line stands on the picture, at the foot of it
   */
  public StageView(
      Stage stage,
      PlaceEditor placing,
      ShownEstimate found,
      DoubleSupplier elbowLimitCm,
      EstimateBar line,
      Look look,
      Listeners listeners) {
    this.stage = stage;
    this.viewing = stage.viewing();
    this.placing = placing;
    this.found = found;
    this.elbowLimitCm = elbowLimitCm;
    this.look = look;
    previousFrame = new PreviousFrame(stage);
    image = new PictureNode(stage, listeners);
    getStyleClass().setAll("stage");
    setId("stage");
    setFocusTraversable(true);
    setAccessibleText("Picture");
    before.setOpacity(GHOST);
    overlay.setManaged(false);
    overlay.setMouseTransparent(true);
    StackPane.setAlignment(line, Pos.BOTTOM_CENTER);
    line.getStyleClass().add("stage-line");
    trouble.setWrapText(true);
    PlaceBar places = new PlaceBar(placing, look, listeners);
    StackPane.setAlignment(places, Pos.TOP_CENTER);
    getChildren().setAll(image, before, overlay, foot(), line, places, trouble);
    setMinSize(0, 0);
    Nodes.clipToBounds(this);
    follow(listeners);
    handleMouse();
    showWords();
  }

  private HBox foot() {
    HBox foot = new HBox(look.px(8), where, Nodes.space(), speed);
    foot.setMaxHeight(Region.USE_PREF_SIZE);
    foot.setMouseTransparent(true);
    foot.getStyleClass().add("stage-foot");
    StackPane.setAlignment(foot, Pos.BOTTOM_CENTER);
    return foot;
  }

  private void follow(Listeners listeners) {
    listeners.onChange(stage.frameProperty(), this::showWords);
    listeners.onChange(stage.framesProperty(), this::showWords);
    listeners.onChange(stage.speedProperty(), this::showWords);
    listeners.onChange(stage.loopingProperty(), this::showWords);
    listeners.onChange(stage.troubleProperty(), this::showWords);
    listeners.onChange(stage.pictureProperty(), this::show);
    listeners.onEachFrame(stage.playingProperty(), () -> stage.tick(System.nanoTime()));
    listeners.onChange(stage.playingProperty(), previousFrame::follow);
    listeners.onChange(stage.playingProperty(), this::showWords);
    listeners.onChange(viewing.framingProperty(), this::requestLayout);
    listeners.onChange(viewing.previousFrameProperty(), previousFrame::follow);
    listeners.onChange(viewing.overlayShownProperty(), this::drawOverlay);
    listeners.onChange(viewing.hiddenProperty(), this::drawOverlay);
    listeners.onValue(previousFrame.pictureProperty(), before::show);
    listeners.onChange(found.visibleProperty(), this::drawOverlay);
    listeners.onChange(placing.draftProperty(), this::drawOverlay);
    listeners.onChange(placing.chosenProperty(), this::drawOverlay);
    listeners.onChange(placing.activeProperty(), this::drawOverlay);
    previousFrame.follow();
  }

  private void handleMouse() {
    setOnMousePressed(this::pressed);
    setOnMouseDragged(this::dragged);
    setOnMouseReleased(event -> placing.release());
    setOnMouseClicked(
        event -> {
          if (event.getClickCount() == 2 && !placing.activeProperty().get()) {
            viewing.showWhole();
          }
        });
    addEventHandler(
        ScrollEvent.SCROLL,
        event -> viewing.zoom(Math.pow(WHEEL, event.getDeltaY()), event.getX(), event.getY()));
  }

  private void pressed(MouseEvent event) {
    requestFocus();
    dragX = event.getX();
    dragY = event.getY();
    Framing.Placement lie = viewing.placement();
    if (lie != null) {
      placing.press(lie.pictureX(dragX), lie.pictureY(dragY));
    }
  }

  private void dragged(MouseEvent event) {
    Framing.Placement lie = viewing.placement();
    if (lie == null) {
      return;
    }
    if (placing.activeProperty().get()) {
      placing.drag(lie.pictureX(event.getX()), lie.pictureY(event.getY()));
    } else {
      viewing.shift(event.getX() - dragX, event.getY() - dragY);
      dragX = event.getX();
      dragY = event.getY();
    }
  }

  @Override
  protected void layoutChildren() {
    super.layoutChildren();
    image.layOut(viewing, stage.pictureProperty().get(), getWidth(), getHeight());
    before.layOut(viewing, stage.pictureProperty().get(), getWidth(), getHeight());
    overlay.setWidth(getWidth());
    overlay.setHeight(getHeight());
    drawOverlay();
  }

  /** Draws only beside the picture of the very frame that it is about. */
  private void drawOverlay() {
    GraphicsContext g = overlay.getGraphicsContext2D();
    g.clearRect(0, 0, overlay.getWidth(), overlay.getHeight());
    Picture picture = stage.pictureProperty().get();
    Framing.Placement lie = viewing.placement();
    if (picture != null && lie != null) {
      Estimate shown = found.visibleProperty().getValue();
      Overlay found =
          shown == null
              ? Overlay.NONE
              : Overlay.at(shown, picture.timeS(), elbowLimitCm.getAsDouble());
      OverlayItem setting = placing.activeProperty().get() ? placing.chosenProperty().get() : null;
      new OverlayDrawing(g, look, lie.scale(), lie.left(), lie.top())
          .draw(
              found
                  .withDraft(placing.draftProperty().get(), setting)
                  .filter(what -> what == setting || viewing.shows(what)));
    }
  }

  private void show() {
    previousFrame.follow();
    showWords();
    requestLayout();
  }

  /** Describes the picture shown, and the one still loading. */
  private void showWords() {
    FrameTable frames = stage.framesProperty().get();
    boolean open = frames != null;
    where.setVisible(open);
    speed.setVisible(open);
    if (frames != null) {
      Picture shown = stage.pictureProperty().get();
      int wanted = stage.frameProperty().get();
      int index = shown == null ? wanted : shown.index();
      where.setText(
          String.format(
              Locale.ROOT,
              "clip %.3f s   frame %d of %d%s",
              frames.timeS(index),
              index + 1,
              frames.size(),
              index == wanted ? "" : String.format(Locale.ROOT, ", loading frame %d", wanted + 1)));
    }
    speed.setText(
        (stage.loopingProperty().get()
                ? "looping at "
                : stage.playingProperty().get() ? "playing at " : "play speed ")
            + stage.speedProperty().get().words());
    trouble.setText(stage.troubleProperty().get());
    trouble.setVisible(!trouble.getText().isEmpty());
  }
}
