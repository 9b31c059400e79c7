package palmturn.app.differences;

import java.util.function.Consumer;
import javafx.beans.value.ObservableValue;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import org.jspecify.annotations.Nullable;
import palmturn.app.keys.KeyBindings;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.strip.SoundOutline;

/** The list of differences beside the current one. */
public final class ReviewView extends HBox {
  /**
   * Builds the pane, which takes the place of board, stage, tally and strip.
   *
   * @param wave the clip's sound
   * @param press is told which key was clicked
   */
  public ReviewView(
      DifferenceReview differences,
      ObservableValue<@Nullable SoundOutline> wave,
      KeyBindings keys,
      Look look,
      Consumer<String> press,
      Listeners listeners) {
    getStyleClass().setAll("differences");
    setId("differences");
    setFocusTraversable(true);
    setAccessibleText("Differences");
    setMinHeight(0);
    QuestionView question = new QuestionView(differences, wave, keys, look, press, listeners);
    HBox.setHgrow(question, Priority.ALWAYS);
    getChildren().setAll(new ListPane(differences, keys, look, press, listeners), question);
  }
}
