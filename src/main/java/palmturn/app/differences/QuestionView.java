package palmturn.app.differences;

import java.util.function.Consumer;
import javafx.beans.value.ObservableValue;
import javafx.scene.control.Label;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import palmturn.app.keys.Action;
import palmturn.app.keys.KeyBindings;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.app.strip.SoundOutline;
import palmturn.trial.Decision;
import palmturn.trial.Estimate;

/** The current difference: the question, pictures, both readings and the choices. */
final class QuestionView extends VBox {
  private final DifferenceReview differences;
  private final KeyBindings keys;
  private final Label question = Nodes.named("question", "question");
  private final Label explanation = Nodes.wrapped("", "explanation");
  private final StillsRow stills;
  private final StavesView staves;
  private final SummaryView end;

  QuestionView(
      DifferenceReview differences,
      ObservableValue<@Nullable SoundOutline> wave,
      KeyBindings keys,
      Look look,
      Consumer<String> press,
      Listeners listeners) {
    this.differences = differences;
    this.keys = keys;
    getStyleClass().setAll("question-pane");
    setMinSize(0, 0);
    question.setMinHeight(Region.USE_PREF_SIZE);
    explanation.setId("explanation");
    stills = new StillsRow(differences, look, listeners);
    staves = new StavesView(differences, wave, look, listeners);
    end = new SummaryView(differences, look);
    VBox.setVgrow(staves, Priority.ALWAYS);
    VBox.setVgrow(end, Priority.ALWAYS);
    getChildren()
        .setAll(
            question,
            explanation,
            stills,
            staves,
            end,
            new ChoiceRow(differences, keys, look, press, listeners));
    listeners.onChange(differences.settledProperty(), this::show);
    listeners.onChange(differences.positionProperty(), this::show);
    listeners.onChange(differences.newMark().activeProperty(), this::show);
    listeners.onEachFrame(
        differences.stage().playingProperty(), () -> differences.stage().tick(System.nanoTime()));
    show();
  }

  private void show() {
    ReviewItem item = differences.current();
    DifferenceWords wording = StavesLayout.wording(differences);
    boolean asking = item != null && wording != null;
    Nodes.setShown(stills, asking);
    Nodes.setShown(staves, asking);
    Nodes.setShown(end, !asking);
    if (item == null || wording == null) {
      question.setText(end.title());
      explanation.setText(end.explanation());
      end.show();
    } else if (differences.newMark().activeProperty().get()) {
      question.setText("New mark");
      explanation.setText(
          item instanceof ReviewItem.OfSpan
              ? "Go to the frame where the span starts and press %s, then to its end and press %s."
                  .formatted(keys.of(Action.PALM), keys.of(Action.BACK))
              : "Go to the first frame that shows contact, then set the side and the zone.");
    } else {
      Decision<?> decision = item.decision();
      question.setText(wording.question(item));
      explanation.setText(
          wording.explanation(item)
              + wording.evidence(item, estimate())
              + (decision == null ? "" : " " + wording.decisionSentence(decision)));
    }
  }

  private @Nullable Estimate estimate() {
    ReviewedTrial opened = differences.trialProperty().get();
    return opened == null ? null : opened.trial().estimate();
  }
}
