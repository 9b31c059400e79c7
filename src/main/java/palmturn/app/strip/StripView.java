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
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.app.marking.Marking;
import palmturn.app.stage.Stage;
import palmturn.chart.BeatStrip;
import palmturn.chart.BeatStripPainter;
import palmturn.trial.Slap;
import palmturn.trial.Span;

/**
 * The strip on a canvas. A click on a mark chooses it, a drag moves it; a click elsewhere goes
 * there; the wheel scrolls, with Ctrl it zooms.
 */
public final class StripView extends Pane {
  /** Height of the grid's row. */
  public static final double HEIGHT = 316;

  /** Height left to the row above, at any text size. */
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
  private final Timeline animation = new Timeline();
  private @Nullable Slap held;
  private SpanHitTest.@Nullable Hit heldEnd;
  private double pressedX;
  private double scale;
  private boolean dragged;

  /** Builds the pane, 316 high. */
  public StripView(Strip strip, Stage stage, Marking marking, Look look, Listeners listeners) {
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
    Nodes.setHeight(this, look.px(HEIGHT));
    setMinWidth(0);
    listeners.onChange(marking.readingProperty(), this::draw);
    listeners.onChange(marking.slapProperty(), this::draw);
    listeners.onChange(marking.spanProperty(), this::draw);
    listeners.onChange(marking.openSpansProperty(), this::draw);
    listeners.onChange(strip.outlineProperty(), this::draw);
    listeners.onChange(strip.shownProperty(), this::draw);
    listeners.onChange(strip.messageTimesProperty(), this::draw);
    listeners.onChange(stage.framesProperty(), this::draw);
    listeners.onChange(stage.frameProperty(), this::keepFrameInView);
    listeners.onChange(focusedProperty(), this::draw);
    listeners.onChange(strip.animation().startedProperty(), this::animate);
    listeners.onChange(share, this::drawStep);
    listeners.onEnd(animation::stop);
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
    double fits = look.scaleFitting(height, HEIGHT, ROW);
    if (fits != scale) {
      scale = fits;
      Nodes.setHeight(this, HEIGHT * fits);
    }
  }

  /** Draws the strip again, after it was zoomed or scrolled from outside. */
  public void draw() {
    GraphicsContext g = canvas.getGraphicsContext2D();
    g.save();
    g.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
    g.scale(scale(), scale());
    BeatStrip picture = strip.content(look.theme().palette());
    if (stage.framesProperty().get() == null) {
      EmptyStrip.draw(g, look.theme().palette());
    } else {
      StripGraphics graphics = new StripGraphics(g);
      BeatStripPainter.ground(graphics, picture);
      LanePainter.drawSound(g, picture, strip.outlineProperty().get(), strip.soundOffsetS());
      LanePainter.drawGhosts(g, picture, strip.animation().ghosts());
      LanePainter.drawMessages(g, picture, strip.messageTimesProperty().get());
      BeatStripPainter.marks(graphics, picture);
      LanePainter.drawOpenSpans(g, picture, marking.openSpansProperty().get(), stage.timeS());
      LanePainter.drawChosenSpan(g, picture, marking.spanProperty().get());
    }
    LanePainter.drawGutter(
        g, look.theme().palette(), strip, marking.readingProperty().get(), isFocused());
    g.restore();
  }

  /**
   * Slides marks to where they snap; with reduced motion they jump and their ghosts stay longer.
   */
  private void animate() {
    boolean jump = look.lessMotion();
    animation.stop();
    share.set(jump ? 1 : 0);
    animation
        .getKeyFrames()
        .setAll(
            new KeyFrame(
                Duration.millis(jump ? GHOST_MS : GLIDE_MS),
                event -> {
                  strip.animation().end();
                  draw();
                },
                new KeyValue(share, 1, Interpolator.EASE_OUT)));
    strip.animation().setShare(share.get());
    animation.play();
  }

  private void drawStep() {
    strip.animation().setShare(share.get());
    draw();
  }

  private void keepFrameInView() {
    if (held == null && heldEnd == null) {
      strip.keepFrameInView();
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
    BeatStrip picture = strip.content(look.theme().palette());
    OptionalInt slap = picture.slapAt(pressedX, event.getY() / scale());
    if (slap.isPresent()) {
      held = picture.slaps().get(slap.getAsInt());
      stage.seek(strip.frameAt(picture.view().x(held.timeS())));
      marking.chooseSlap(held);
      return;
    }
    heldEnd = SpanHitTest.at(picture, pressedX, event.getY() / scale());
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
    SpanHitTest.Hit end = heldEnd;
    held = null;
    heldEnd = null;
    if (dragged && slap != null) {
      marking.moveSlap(slap, frame);
    } else if (dragged && end != null && end.movable()) {
      marking.moveSpanEnd(end.span(), end.start(), frame);
    }
    keepFrameInView();
  }

  private void seek(double x) {
    int frame = strip.frameAt(x);
    stage.seek(frame);
    Span span = marking.spanProperty().get();
    if (span != null) {
      marking.chooseSlap(null);
    }
    marking.chooseSlapOn(frame);
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
