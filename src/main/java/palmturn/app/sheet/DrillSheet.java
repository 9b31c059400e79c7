package palmturn.app.sheet;

import java.util.List;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import palmturn.app.look.Look;
import palmturn.app.session.SessionFlow;
import palmturn.trial.DrillHand;

/** Asks which drill was done, for the block that follows it. */
final class DrillSheet {
  private final SessionFlow flow;
  private final Look look;
  private final TextField code;
  private final TextField dose;
  private final ObjectProperty<@Nullable DrillHand> hand = new SimpleObjectProperty<>();
  private final Label missing = new Label();

  DrillSheet(SessionFlow flow, Look look) {
    this.flow = flow;
    this.look = look;
    code = Sheets.field("drill-code", 24, look);
    dose = Sheets.field("drill-dose", 24, look);
    missing.setId("drill-missing");
    missing.getStyleClass().add("over");
    missing.managedProperty().bind(missing.textProperty().isNotEmpty());
  }

  TextField first() {
    return code;
  }

  List<Node> content() {
    return List.of(
        asked("Which drill? For example paced flips; a rest counts too", code),
        asked(
            "Which hand did it train?",
            Choices.of(
                "drill-hand",
                look,
                hand,
                Choices.choice("left", DrillHand.LEFT, "left"),
                Choices.choice("right", DrillHand.RIGHT, "right"),
                Choices.choice("both", DrillHand.BOTH, "both"),
                Choices.choice("none", DrillHand.NONE, "none"))),
        asked("How much? In your words; may stay empty", dose),
        small(
            "One hand as a control tells a drill's effect from practice: train one, film both.\n"
                + "Pain, dizziness or double vision: stop."),
        missing);
  }

  void done() {
    missing.setText(flow.drill(code.getText(), hand.get(), dose.getText()));
  }

  private VBox asked(String words, Node answer) {
    Label label = new Label(words);
    label.getStyleClass().add("second");
    return new VBox(look.px(4), label, answer);
  }

  private static Label small(String words) {
    Label label = new Label(words);
    label.getStyleClass().add("small");
    return label;
  }
}
