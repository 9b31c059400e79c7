package palmturn.app.pair;

import java.util.List;
import java.util.Locale;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.input.ScrollEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.app.stage.PictureNode;
import palmturn.clip.FrameTable;
import palmturn.measure.TrialClock;

/** One of the two pictures, with its trial, frame and current slap. */
final class PairMemberView extends VBox {
  private static final double WHEEL = 1.0025;

  private final PairMember half;
  private final PictureNode image;
  private final Pane frame = new Pane();
  private final VBox notes = new VBox();
  private final Label name = Nodes.whole("", "strong");
  private final Label marks = Nodes.label("", "second");
  private final Label slap = Nodes.whole("", "big");
  private final Label fault = Nodes.label("", "over");
  private final Label where = Nodes.whole("", "second");
  private final Label interval = Nodes.label("", "plain");
  private final ProgressBar share = new ProgressBar(0);
  private double dragX;
  private double dragY;

  /**
   * Builds the pane.
   *
   * @param id begins the names of its parts
   * @param choices stand behind the trial's name
   */
  PairMemberView(PairMember half, String id, List<Node> choices, Look look, Listeners listeners) {
    super(look.px(8));
    this.half = half;
    image = new PictureNode(half.stage(), listeners);
    name.setId(id + "-name");
    slap.setId(id + "-slap");
    interval.setId(id + "-interval");
    where.setId(id + "-where");
    fault.setId(id + "-fault");
    marks.setMinWidth(0);
    fault.setMinWidth(0);
    HBox head = Nodes.row(look.px(12), name, marks, Nodes.space());
    head.getChildren().addAll(choices);
    head.setMinHeight(look.px(26));
    StackPane picture = picture(look);
    VBox.setVgrow(picture, Priority.ALWAYS);

    HBox told = new HBox(look.px(12), slap, fault, Nodes.space(), where);
    told.setAlignment(Pos.BASELINE_LEFT);
    share.getStyleClass().add("line-bar");
    share.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(share, Priority.ALWAYS);
    interval.setMinWidth(look.px(190));
    getChildren().setAll(head, picture, told, Nodes.row(look.px(12), interval, share));
    setMinSize(0, 0);
    listeners.onChange(half.trialProperty(), this::showWords);
    listeners.onChange(half.mirroredProperty(), this::showWords);
    listeners.onChange(half.outsideReasonProperty(), this::showWords);
    listeners.onChange(half.troubleProperty(), this::showWords);
    listeners.onChange(half.stage().troubleProperty(), this::showWords);
    listeners.onChange(half.stage().framesProperty(), this::showWords);
    listeners.onChange(half.stage().pictureProperty(), this::showWords);
    listeners.onChange(half.stage().frameProperty(), this::showWords);
    listeners.onChange(half.stage().viewing().changed(), frame::requestLayout);
    showWords();
  }

  private StackPane picture(Look look) {
    frame.getChildren().setAll(image);
    frame.setMouseTransparent(true);
    notes.setSpacing(look.px(4));
    notes.setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
    notes.setMouseTransparent(true);
    notes.setTranslateX(look.px(8));
    notes.setTranslateY(look.px(8));
    StackPane.setAlignment(notes, Pos.TOP_LEFT);
    StackPane pane =
        new StackPane(frame, notes) {
          @Override
          protected void layoutChildren() {
            super.layoutChildren();
            image.layOut(
                half.stage().viewing(),
                half.stage().pictureProperty().get(),
                getWidth(),
                getHeight());
          }
        };
    pane.getStyleClass().setAll("pair-picture");
    pane.setMinSize(0, 0);
    pane.setPrefSize(0, 0);
    Nodes.clipToBounds(pane);
    handleMouse(pane);
    return pane;
  }

  private void handleMouse(StackPane pane) {
    pane.setOnMousePressed(
        event -> {
          dragX = event.getX();
          dragY = event.getY();
        });
    pane.setOnMouseDragged(
        event -> {
          double right = event.getX() - dragX;
          half.stage()
              .viewing()
              .shift(half.mirroredProperty().get() ? -right : right, event.getY() - dragY);
          dragX = event.getX();
          dragY = event.getY();
        });
    pane.setOnMouseClicked(
        event -> {
          if (event.getClickCount() == 2) {
            half.stage().viewing().showWhole();
          }
        });
    pane.addEventHandler(
        ScrollEvent.SCROLL,
        event ->
            half.stage()
                .viewing()
                .zoom(
                    Math.pow(WHEEL, event.getDeltaY()),
                    half.mirroredProperty().get() ? pane.getWidth() - event.getX() : event.getX(),
                    event.getY()));
  }

  private void showWords() {
    PairTrial trial = half.trialProperty().get();
    TrialClock beats = half.handClock();
    FrameTable frames = half.stage().framesProperty().get();
    frame.setScaleX(half.mirroredProperty().get() ? -1 : 1);
    frame.setOpacity(half.outsideReasonProperty().get().isEmpty() ? 1 : 0.45);
    name.setText(trial == null ? "" : PairWords.name(trial.id()));
    marks.setText(trial == null ? "" : PairWords.marksSource(trial));
    notes.getChildren().clear();
    if (trial != null) {
      PairWords.notes(trial, half.mirroredProperty().get()).forEach(this::addNote);
    }
    addNote(half.outsideReasonProperty().get());
    addNote(half.troubleProperty().get());
    addNote(half.stage().troubleProperty().get());
    boolean open = beats != null && frames != null;
    for (Node part : List.of(slap, fault, where, interval, share)) {
      part.setVisible(open);
    }
    if (beats != null && frames != null) {
      PairWords.SlapPosition at = PairWords.position(beats, half.momentS());
      int index = half.stage().frameProperty().get();
      slap.setText(at.slap());
      fault.setText(at.fault());
      interval.setText(at.interval());
      share.setProgress(at.share() == null ? 0 : at.share());
      share.setVisible(at.share() != null);
      where.setText(
          String.format(
              Locale.ROOT,
              "clip %.3f s   frame %d of %d%s",
              frames.timeS(index),
              index + 1,
              frames.size(),
              half.stage().showsItsFrame() ? "" : ", loading"));
    } else if (trial != null && half.troubleProperty().get().isEmpty()) {
      addNote("opening the clip");
    }
    frame.requestLayout();
  }

  private void addNote(String words) {
    if (!words.isEmpty()) {
      notes.getChildren().add(Nodes.label(words, "on-picture"));
    }
  }
}
