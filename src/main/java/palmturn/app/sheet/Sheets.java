package palmturn.app.sheet;

import java.util.function.Consumer;
import java.util.function.Function;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.layout.StackPane;
import org.jspecify.annotations.Nullable;
import palmturn.app.desk.Messages;
import palmturn.app.desk.OpenSession;
import palmturn.app.desk.Prompts;
import palmturn.app.desk.Question;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.session.SessionFlow;

/** The layer over the window for the question that is asked. */
public final class Sheets extends StackPane {
  static final String READ_ONLY = "This session is read-only: nothing can be written here.";

  private final Function<Listeners, SheetFactory> factory;
  private final Runnable closed;
  private Listeners listeners = new Listeners();

  /**
   * Builds the layer, invisible while nothing is asked.
   *
   * @param press gets the key of a sheet that was clicked
   * @param closed runs when a sheet goes away, to give the focus back
   */
  public Sheets(
      OpenSession session,
      Prompts prompts,
      Messages messages,
      SessionFlow flow,
      Look look,
      Consumer<String> press,
      Runnable closed,
      Listeners listeners) {
    factory =
        ofSheet ->
            new SheetFactory(
                session,
                prompts,
                messages,
                flow,
                look,
                press,
                () -> getScene().getWindow(),
                ofSheet);
    this.closed = closed;
    setPickOnBounds(false);
    listeners.onValue(prompts.questions().currentProperty(), this::show);
    listeners.onEnd(() -> this.listeners.end());
  }

  private void show(@Nullable Question question) {
    getChildren().clear();
    listeners.end();
    listeners = new Listeners();
    if (question == null) {
      closed.run();
      return;
    }
    Sheet sheet = question.accept(factory.apply(listeners));
    Node first = sheet.first();
    getChildren().setAll(sheet);
    if (first == null) {
      sheet.requestFocus();
    } else if (first.getScene() == null) {
      // What scrolls comes into the scene with its skin; the key that asked must not be typed
      // there.
      Platform.runLater(
          () -> {
            sheet.applyCss();
            first.requestFocus();
          });
    } else {
      first.requestFocus();
    }
  }
}
