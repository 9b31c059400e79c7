package palmturn.app.stage;

import java.nio.IntBuffer;
import java.util.Locale;
import javafx.animation.AnimationTimer;
import javafx.animation.PauseTransition;
import javafx.geometry.Pos;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.Label;
import javafx.scene.image.ImageView;
import javafx.scene.image.PixelBuffer;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.shape.Rectangle;
import javafx.util.Duration;
import org.jspecify.annotations.Nullable;
import palmturn.app.estimate.Found;
import palmturn.app.look.Follow;
import palmturn.app.look.Look;
import palmturn.clip.FrameTable;
import palmturn.clip.Picture;
import palmturn.trial.Estimate;

/** Shows the picture or a part of it, its time and frame number, and what is drawn on it. */
public final class StageView extends StackPane {
  /** A picture that stays this long after another was asked for is dimmed. */
  private static final Duration PATIENCE = Duration.millis(120);

  private static final double DIMMED = 0.45;
  private static final double GHOST = 0.4;

  /** From here on the pixels themselves are looked at, so they are not smoothed away. */
  private static final double PIXELS = 4;

  private static final double WHEEL = 1.0025;

  private final Stage stage;
  private final Viewing viewing;
  private final Placing placing;
  private final Found found;
  private final double elbowLimitCm;
  private final Look look;
  private final Ghost ghost;
  private final ImageView image = view();
  private final ImageView before = view();
  private final Canvas overlay = new Canvas();
  private final Label where = new Label();
  private final Label speed = new Label();
  private final Label trouble = new Label();
  private final PauseTransition patience = new PauseTransition(PATIENCE);
  private final AnimationTimer clock =
      new AnimationTimer() {
        @Override
        public void handle(long now) {
          stage.tick(System.nanoTime());
        }
      };
  private double dragX;
  private double dragY;

  /**
   * Builds the pane, which takes what room the others leave.
   *
   * @param elbowLimitCm how far the elbow may go from its place
   * @param line stands on the picture, at the foot of it
   */
  public StageView(
      Stage stage,
      Placing placing,
      Found found,
      double elbowLimitCm,
      EstimateLine line,
      Look look,
      Follow follow) {
    this.stage = stage;
    this.viewing = stage.viewing();
    this.placing = placing;
    this.found = found;
    this.elbowLimitCm = elbowLimitCm;
    this.look = look;
    ghost = new Ghost(stage);
    getStyleClass().setAll("stage");
    setId("stage");
    setFocusTraversable(true);
    setAccessibleText("Picture");
    before.setOpacity(GHOST);
    overlay.setManaged(false);
    overlay.setMouseTransparent(true);
    StackPane.setAlignment(line, Pos.BOTTOM_CENTER);
    line.getStyleClass().add("stage-line");
    trouble.setId("stage-trouble");
    trouble.getStyleClass().add("on-picture");
    trouble.setWrapText(true);
    PlaceLine places = new PlaceLine(placing, look, follow);
    StackPane.setAlignment(places, Pos.TOP_CENTER);
    getChildren().setAll(image, before, overlay, foot(), line, places, trouble);
    setMinSize(0, 0);
    Rectangle clip = new Rectangle();
    clip.widthProperty().bind(widthProperty());
    clip.heightProperty().bind(heightProperty());
    setClip(clip);
    patience.setOnFinished(event -> image.setOpacity(stale() ? DIMMED : 1));
    follow(follow);
    mouse();
    words();
  }

  private static ImageView view() {
    ImageView view = new ImageView();
    view.setPreserveRatio(true);
    view.setManaged(false);
    view.setMouseTransparent(true);
    return view;
  }

  private HBox foot() {
    where.setId("stage-where");
    where.getStyleClass().add("on-picture");
    speed.setId("stage-speed");
    speed.getStyleClass().add("on-picture");
    Region space = new Region();
    HBox.setHgrow(space, Priority.ALWAYS);
    HBox foot = new HBox(look.px(8), where, space, speed);
    foot.setMaxHeight(Region.USE_PREF_SIZE);
    foot.setMouseTransparent(true);
    foot.getStyleClass().add("stage-foot");
    StackPane.setAlignment(foot, Pos.BOTTOM_CENTER);
    return foot;
  }

  private void follow(Follow follow) {
    follow.changes(stage.frameProperty(), this::moved);
    follow.changes(stage.framesProperty(), this::words);
    follow.changes(stage.speedProperty(), this::words);
    follow.changes(stage.loopingProperty(), this::words);
    follow.changes(stage.troubleProperty(), this::words);
    follow.value(stage.pictureProperty(), this::show);
    follow.value(stage.playingProperty(), this::run);
    follow.changes(viewing.framingProperty(), this::requestLayout);
    follow.changes(viewing.ghostProperty(), ghost::follow);
    follow.changes(viewing.drawnProperty(), this::drawOverlay);
    follow.changes(viewing.hiddenProperty(), this::drawOverlay);
    follow.value(ghost.pictureProperty(), this::showGhost);
    follow.changes(found.visibleProperty(), this::drawOverlay);
    follow.changes(placing.draftProperty(), this::drawOverlay);
    follow.changes(placing.chosenProperty(), this::drawOverlay);
    follow.changes(placing.activeProperty(), this::drawOverlay);
    follow.atEnd(clock::stop);
    follow.atEnd(patience::stop);
  }

  private void mouse() {
    setOnMousePressed(this::pressed);
    setOnMouseDragged(this::dragged);
    setOnMouseReleased(event -> placing.release());
    setOnMouseClicked(
        event -> {
          if (event.getClickCount() == 2 && !placing.activeProperty().get()) {
            viewing.whole();
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
    Framing.Lie lie = viewing.lie();
    if (lie != null) {
      placing.press(lie.pictureX(dragX), lie.pictureY(dragY));
    }
  }

  private void dragged(MouseEvent event) {
    Framing.Lie lie = viewing.lie();
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
    Picture shown = stage.pictureProperty().get();
    viewing.setRoom(
        shown == null || getWidth() < 1 || getHeight() < 1
            ? null
            : new Framing.Room(getWidth(), getHeight(), shown.width(), shown.height()));
    Framing.Lie lie = viewing.lie();
    if (shown != null && lie != null) {
      for (ImageView view : new ImageView[] {image, before}) {
        view.setSmooth(lie.scale() < PIXELS);
        view.setFitWidth(shown.width() * lie.scale());
        view.setFitHeight(shown.height() * lie.scale());
        view.relocate(lie.left(), lie.top());
      }
    }
    overlay.setWidth(getWidth());
    overlay.setHeight(getHeight());
    drawOverlay();
  }

  /** Draws only beside the picture of the very frame that it is about. */
  private void drawOverlay() {
    GraphicsContext g = overlay.getGraphicsContext2D();
    g.clearRect(0, 0, overlay.getWidth(), overlay.getHeight());
    Picture picture = stage.pictureProperty().get();
    Framing.Lie lie = viewing.lie();
    if (picture != null && lie != null) {
      Estimate shown = found.visibleProperty().getValue();
      Overlay found =
          shown == null ? Overlay.NONE : Overlay.at(shown, picture.timeS(), elbowLimitCm);
      Drawn setting = placing.activeProperty().get() ? placing.chosenProperty().get() : null;
      new OverlayDrawing(g, look, lie.scale(), lie.left(), lie.top())
          .draw(
              found
                  .plus(placing.draftProperty().get(), setting)
                  .only(what -> what == setting || viewing.shows(what)));
    }
  }

  private void show(@Nullable Picture picture) {
    image.setImage(picture == null ? null : image(picture));
    image.setOpacity(1);
    ghost.follow();
    words();
    requestLayout();
  }

  private void showGhost(@Nullable Picture picture) {
    before.setImage(picture == null ? null : image(picture));
  }

  /** Returns a picture for views; the cache's own array, since pictures never change. */
  public static WritableImage image(Picture picture) {
    return new WritableImage(
        new PixelBuffer<>(
            picture.width(),
            picture.height(),
            IntBuffer.wrap(picture.argb()),
            PixelFormat.getIntArgbPreInstance()));
  }

  private void run(boolean playing) {
    if (playing) {
      clock.start();
    } else {
      clock.stop();
    }
    ghost.follow();
    words();
  }

  private boolean stale() {
    Picture shown = stage.pictureProperty().get();
    return shown != null && shown.index() != stage.frameProperty().get();
  }

  private void moved() {
    if (stale()) {
      patience.playFromStart();
    }
    words();
  }

  /** Tells of the picture that is shown; of the one that is on its way only that it comes. */
  private void words() {
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
              "%.3f s   frame %d of %d%s",
              frames.timeS(index),
              index + 1,
              frames.size(),
              index == wanted
                  ? ""
                  : String.format(Locale.ROOT, ", frame %d is coming", wanted + 1)));
    }
    speed.setText(
        (stage.loopingProperty().get()
                ? "looping at "
                : stage.playingProperty().get() ? "playing at " : "speed ")
            + stage.speedProperty().get().words());
    trouble.setText(stage.troubleProperty().get());
    trouble.setVisible(!trouble.getText().isEmpty());
  }
}
