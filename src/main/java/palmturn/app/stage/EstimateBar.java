package palmturn.app.stage;

import java.util.function.Consumer;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import palmturn.app.estimate.EstimateRun;
import palmturn.app.hints.KeyCaps;
import palmturn.app.keys.Action;
import palmturn.app.keys.KeyBindings;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;

/** The bar on the picture that offers the next step with the estimate, or shows its progress. */
public final class EstimateBar extends HBox {
  /** The next step on offer. */
  public enum Offer {
    NOTHING(Action.ESTIMATE, ""),
    ESTIMATE(Action.ESTIMATE, "Estimate this trial"),
    START(Action.START_FROM, "Start from the estimate");

    private final Action action;
    private final String words;

    Offer(Action action, String words) {
      this.action = action;
      this.words = words;
    }
  }

  private final KeyBindings keys;
  private final Look look;
  private final EstimateRun run;
  private final Consumer<String> press;
  private final Label words = new Label();
  private final ProgressBar bar = new ProgressBar();
  private Offer offer = Offer.NOTHING;

  /**
   * Builds the line, invisible while there is nothing to offer.
   *
   * @param press is told which key was clicked
   */
  public EstimateBar(
      EstimateRun run, KeyBindings keys, Look look, Consumer<String> press, Listeners listeners) {
    super(look.px(8));
    this.keys = keys;
    this.look = look;
    this.run = run;
    this.press = press;
    setAlignment(Pos.CENTER);
    setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
    setPickOnBounds(false);
    words.setId("estimate-progress");
    words.setMinWidth(look.px(304));
    words.textProperty().bind(run.wordsProperty());
    bar.progressProperty().bind(run.shareProperty());
    bar.getStyleClass().add("on-picture-bar");
    bar.setMaxWidth(Double.MAX_VALUE);
    listeners.onChange(run.trialProperty(), this::build);
    build();
  }

  /** Offers something; while an estimate is made its progress stands here instead. */
  public void offer(Offer next) {
    if (next != offer) {
      offer = next;
      build();
    }
  }

  private void build() {
    boolean running = run.trialProperty().get() != null;
    if (running) {
      VBox progress = new VBox(look.px(4), words, bar);
      progress.getStyleClass().add("on-picture-box");
      progress.setMinWidth(look.px(320));
      getChildren().setAll(progress, button("estimate-stop", "Stop", Action.ESTIMATE));
    } else if (offer != Offer.NOTHING) {
      getChildren().setAll(button("estimate-offer", offer.words, offer.action));
    } else {
      getChildren().clear();
    }
    setVisible(running || offer != Offer.NOTHING);
  }

  private Button button(String id, String text, Action action) {
    String key = keys.of(action);
    Button button = Nodes.button(id, text, () -> press.accept(key), "on-picture-button");
    button.setGraphic(KeyCaps.cap(key, look));
    button.setFocusTraversable(false);
    button.setGraphicTextGap(look.px(8));
    button.setMinWidth(Region.USE_PREF_SIZE);
    return button;
  }
}
