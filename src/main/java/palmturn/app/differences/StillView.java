package palmturn.app.differences;

import javafx.geometry.Rectangle2D;
import javafx.scene.control.Label;
import javafx.scene.image.ImageView;
import javafx.scene.layout.Pane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.app.stage.PictureNode;
import palmturn.clip.Picture;
import palmturn.trial.Estimate;

/** One picture, 328 by 184 where there is room, with a line under it and marks named on it. */
final class StillView extends VBox {
  private static final double SHAPE = 184.0 / 328;
  private static final double MOST_HEIGHT = 184;
  private static final double LEAST_HEIGHT = 60;

  /** Around the hands some of the arms is wanted. */
  private static final double AROUND = 1.7;

  private final Look look;
  private final ImageView image = new ImageView();
  private final Label mark = new Label();
  private final Label words = new Label();
  private final Label when = Nodes.whole("", "second");
  private final Frame frame;
  private Estimate.@Nullable Region region;

  StillView(Look look, boolean main) {
    super(look.px(6));
    this.look = look;
    frame = new Frame();
    setMinWidth(0);
    setPrefWidth(look.px(328));
    frame.getStyleClass().setAll(main ? "still-main" : "still");
    mark.getStyleClass().setAll("label", "on-picture");
    mark.setManaged(false);
    words.getStyleClass().add(main ? "name" : "second");
    getChildren().setAll(frame, Nodes.row(look.px(8), words, Nodes.space(), when));
  }

  void setRegion(Estimate.@Nullable Region hands) {
    region = hands;
  }

  void show(@Nullable Picture picture, String under, String time, String onIt) {
    words.setText(under);
    when.setText(time);
    mark.setText(onIt);
    mark.setVisible(!onIt.isEmpty());
    if (picture != null) {
      image.setImage(PictureNode.toImage(picture));
      image.setViewport(viewport(picture));
    } else {
      image.setImage(null);
    }
    frame.requestLayout();
  }

  private @Nullable Rectangle2D viewport(Picture picture) {
    if (region == null) {
      return null;
    }
    double width = AROUND * Math.max(region.width(), region.height() / SHAPE);
    width = Math.min(width, Math.min(picture.width(), picture.height() / SHAPE));
    double height = width * SHAPE;
    double x = region.x() + region.width() / 2 - width / 2;
    double y = region.y() + region.height() / 2 - height / 2;
    return new Rectangle2D(
        Math.max(0, Math.min(picture.width() - width, x)),
        Math.max(0, Math.min(picture.height() - height, y)),
        width,
        height);
  }

  /** Keeps the picture's shape, in the middle of what room there is. */
  private final class Frame extends Pane {
    Frame() {
      image.setPreserveRatio(true);
      image.setManaged(false);
      getChildren().setAll(image, mark);
      setMinHeight(look.px(LEAST_HEIGHT));
      setMaxHeight(look.px(MOST_HEIGHT));
    }

    @Override
    public javafx.geometry.Orientation getContentBias() {
      return javafx.geometry.Orientation.HORIZONTAL;
    }

    @Override
    protected double computePrefHeight(double width) {
      return Math.min(look.px(MOST_HEIGHT), width < 0 ? MOST_HEIGHT : Math.floor(width * SHAPE));
    }

    @Override
    protected void layoutChildren() {
      image.setFitWidth(getWidth());
      image.setFitHeight(getHeight());
      double width = image.getBoundsInLocal().getWidth();
      double height = image.getBoundsInLocal().getHeight();
      image.relocate((getWidth() - width) / 2, (getHeight() - height) / 2);
      mark.autosize();
      mark.relocate(look.px(8), getHeight() - mark.getHeight() - look.px(8));
    }
  }
}
