package palmturn.app.strip;

import java.util.OptionalInt;
import javafx.animation.Interpolator;
import javafx.animation.KeyFrame;
import javafx.animation.KeyValue;
import javafx.animation.Timeline;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.layout.Pane;
import javafx.util.Duration;
import org.jspecify.annotations.Nullable;
import palmturn.app.look.Follow;
import palmturn.app.look.Look;
import palmturn.app.marking.Marking;
import palmturn.app.stage.Stage;
import palmturn.chart.BeatStrip;
import palmturn.chart.BeatStripPainter;
import palmturn.trial.Slap;
import palmturn.trial.Span;

/**
 * Shows the strip on a canvas. A click on a mark chooses it, a drag moves it; a click elsewhere
 * goes there; the wheel scrolls, with Ctrl it zooms.
 */
public final class StripView extends Pane {
  /** Height of the grid's row. */
  public static final double HEIGHT = 316;

  /** What the row above is left, at any size of text. */
  private static final double ROW = 180;

  private static final double DRAG_FROM = 3;
  private static final double GLIDE_MS = 140;
  private static final double GHOST_MS = 600;

  private final Strip strip;
  private final Stage stage;
  private final Marking marking;
  private final Look look;
  private final Canvas canvas = new Canvas();
  private final DoubleProperty share = new SimpleDoubleProperty(1);
  private final Timeline gliding = new Timeline();
  private @Nullable Slap held;
  private SpanEnds.@Nullable End heldEnd;
  private double pressedX;
  private double scale;
  private boolean dragged;

  /** Builds the pane, 316 high. */
  public StripView(Strip strip, Stage stage, Marking marking, Look look, Follow follow) {
    this.strip = strip;
    this.stage = stage;
    this.marking = marking;
    this.look = look;
    scale = look.scaleProperty().get();
    getStyleClass().setAll("strip");
    setId("strip");
    setFocusTraversable(true);
    setAccessibleText("Beat strip");
    getChildren().add(canvas);
    setMinHeight(look.px(HEIGHT));
    setMaxHeight(look.px(HEIGHT));
    setMinWidth(0);
    follow.changes(marking.readingProperty(), this::draw);
    follow.changes(marking.slapProperty(), this::draw);
    follow.changes(marking.spanProperty(), this::draw);
    follow.changes(marking.begunProperty(), this::draw);
    follow.changes(strip.waveProperty(), this::draw);
    follow.changes(strip.shownProperty(), this::draw);
    follow.changes(strip.saidProperty(), this::draw);
    follow.changes(stage.framesProperty(), this::draw);
    follow.changes(stage.frameProperty(), this::follow);
    follow.changes(focusedProperty(), this::draw);
    follow.changes(strip.glide().startedProperty(), this::glide);
    follow.changes(share, this::glided);
    follow.atEnd(gliding::stop);
    setOnMousePressed(this::press);
    setOnMouseDragged(this::drag);
    setOnMouseReleased(this::release);
    setOnScroll(this::wheel);
  }

  @Override
  protected void layoutChildren() {
    canvas.setWidth(getWidth());
    canvas.setHeight(getHeight());
    strip.setRightX(getWidth() / scale());
    draw();
  }

  /**
   * Makes the strip smaller than the size of text asks where it would leave no room for the board,
   * the picture and the tally; never smaller than at the ordinary size of text.
   *
   * @param height what there is for the strip and the row above it, pixels
   */
  public void fitInto(double height) {
    double fits = look.fitting(height, HEIGHT, ROW);
    if (fits != scale) {
      scale = fits;
      setMinHeight(HEIGHT * fits);
      setMaxHeight(HEIGHT * fits);
    }
  }

  /** Draws the strip again, after it was zoomed or scrolled from outside. */
  public void draw() {
    GraphicsContext g = canvas.getGraphicsContext2D();
    g.save();
    g.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
    g.scale(scale(), scale());
    BeatStrip picture = strip.picture(look.theme().palette());
    if (stage.framesProperty().get() == null) {
      EmptyStrip.draw(g, look.theme().palette());
    } else {
      StripGraphics graphics = new StripGraphics(g);
      BeatStripPainter.ground(graphics, picture);
      Lanes.wave(g, picture, strip.waveProperty().get(), strip.soundOffsetS());
      Lanes.ghosts(g, picture, strip.glide().ghosts());
      Lanes.said(g, picture, strip.saidProperty().get());
      BeatStripPainter.marks(graphics, picture);
      Lanes.begun(g, picture, marking.begunProperty().get(), stage.timeS());
      Lanes.chosenSpan(g, picture, marking.spanProperty().get());
    }
    Lanes.gutter(g, look.theme().palette(), strip, marking.readingProperty().get(), isFocused());
    g.restore();
  }

  /** Marks slide to where they settle; with less motion they jump, and their ghosts stay longer. */
  private void glide() {
    boolean jump = look.lessMotion();
    gliding.stop();
    share.set(jump ? 1 : 0);
    gliding
        .getKeyFrames()
        .setAll(
            new KeyFrame(
                Duration.millis(jump ? GHOST_MS : GLIDE_MS),
                event -> {
                  strip.glide().end();
                  draw();
                },
                new KeyValue(share, 1, Interpolator.EASE_OUT)));
    strip.glide().at(share.get());
    gliding.play();
  }

  private void glided() {
    strip.glide().at(share.get());
    draw();
  }

  private void follow() {
    if (held == null && heldEnd == null) {
      strip.follow();
    }
    draw();
  }

  private void press(MouseEvent event) {
    requestFocus();
    held = null;
    heldEnd = null;
    dragged = false;
    pressedX = x(event);
    if (pressedX < Strip.GUTTER - 12 || stage.framesProperty().get() == null) {
      return;
    }
    BeatStrip picture = strip.picture(look.theme().palette());
    OptionalInt slap = picture.slapAt(pressedX, event.getY() / scale());
    if (slap.isPresent()) {
      held = picture.slaps().get(slap.getAsInt());
      stage.seek(strip.frameAt(picture.view().x(held.timeS())));
      marking.choose(held);
      return;
    }
    heldEnd = SpanEnds.at(picture, pressedX, event.getY() / scale());
    if (heldEnd != null) {
      marking.chooseSpan(heldEnd.span());
    } else {
      seek(pressedX);
    }
  }

  private void drag(MouseEvent event) {
    double x = x(event);
    if (!dragged && Math.abs(x - pressedX) < DRAG_FROM) {
      return;
    }
    dragged = true;
    if (pressedX >= Strip.GUTTER - 12 && stage.framesProperty().get() != null) {
      stage.seek(strip.frameAt(x));
    }
  }

  private void release(MouseEvent event) {
    int frame = stage.frameProperty().get();
    Slap slap = held;
    SpanEnds.End end = heldEnd;
    held = null;
    heldEnd = null;
    if (dragged && slap != null) {
      marking.move(slap, frame);
    } else if (dragged && end != null && end.movable()) {
      marking.moveEnd(end.span(), end.start(), frame);
    }
    follow();
  }

  private void seek(double x) {
    int frame = strip.frameAt(x);
    stage.seek(frame);
    Span span = marking.spanProperty().get();
    if (span != null) {
      marking.choose(null);
    }
    marking.arriveAt(frame);
  }

  private void wheel(ScrollEvent event) {
    if (event.isControlDown()) {
      strip.zoom(event.getDeltaY() > 0 ? 1.25 : 0.8, event.getX() / scale());
    } else {
      double by = event.getDeltaX() == 0 ? event.getDeltaY() : event.getDeltaX();
      strip.scroll(-by / scale());
    }
    draw();
  }

  private double x(MouseEvent event) {
    return event.getX() / scale();
  }

  private double scale() {
    return scale;
  }
}
