package palmturn.app.differences;

import java.util.function.Consumer;
import javafx.animation.AnimationTimer;
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
import palmturn.app.strip.SoundOutline;
import palmturn.trial.Decision;
import palmturn.trial.Estimate;

/** The current difference: the question, pictures, both readings and the choices. */
final class QuestionView extends VBox {
  private final DifferenceReview differences;
  private final KeyBindings keys;
  private final Label question = new Label();
  private final Label explanation = new Label();
  private final StillsRow stills;
  private final StavesView staves;
  private final SummaryView end;
  private final AnimationTimer clock =
      new AnimationTimer() {
        @Override
        public void handle(long now) {
          differences.stage().tick(System.nanoTime());
        }
      };

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
    question.setId("question");
    question.getStyleClass().add("question");
    question.setMinHeight(Region.USE_PREF_SIZE);
    explanation.setId("explanation");
    explanation.getStyleClass().add("explanation");
    explanation.setWrapText(true);
    explanation.setMinHeight(Region.USE_PREF_SIZE);
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
    listeners.onValue(differences.stage().playingProperty(), this::runClock);
    listeners.onEnd(clock::stop);
    show();
  }

  private void runClock(boolean playing) {
    if (playing) {
      clock.start();
    } else {
      clock.stop();
    }
  }

  private void show() {
    ReviewItem item = differences.current();
    DifferenceWords wording = StavesLayout.wording(differences);
    boolean asking = item != null && wording != null;
    setShown(stills, asking);
    setShown(staves, asking);
    setShown(end, !asking);
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

  private static void setShown(Region part, boolean now) {
    part.setVisible(now);
    part.setManaged(now);
  }
}
