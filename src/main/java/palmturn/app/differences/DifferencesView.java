package palmturn.app.differences;

import java.util.function.Consumer;
import javafx.beans.value.ObservableValue;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import org.jspecify.annotations.Nullable;
import palmturn.app.keys.Keys;
import palmturn.app.look.Follow;
import palmturn.app.look.Look;
import palmturn.app.strip.Wave;

/** Shows the list of differences beside the one that is looked at. */
public final class DifferencesView extends HBox {
  /**
   * Builds the pane, which takes the place of board, stage, tally and strip.
   *
   * @param wave the clip's sound
   * @param press is told which key was clicked
   */
  public DifferencesView(
      Differences differences,
      ObservableValue<@Nullable Wave> wave,
      Keys keys,
      Look look,
      Consumer<String> press,
      Follow follow) {
    getStyleClass().setAll("differences");
    setId("differences");
    setFocusTraversable(true);
    setAccessibleText("Differences");
    setMinHeight(0);
    QuestionView question = new QuestionView(differences, wave, keys, look, press, follow);
    HBox.setHgrow(question, Priority.ALWAYS);
    getChildren().setAll(new ListPane(differences, keys, look, press, follow), question);
  }
}
