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
import palmturn.app.keys.Keys;
import palmturn.app.look.Follow;
import palmturn.app.look.Look;
import palmturn.app.strip.Wave;
import palmturn.trial.Decision;
import palmturn.trial.Estimate;

/** The difference that is looked at: the question, its pictures, both readings, the choices. */
final class QuestionView extends VBox {
  private final Differences differences;
  private final Keys keys;
  private final Label question = new Label();
  private final Label explanation = new Label();
  private final StillsRow stills;
  private final StavesView staves;
  private final EndView end;
  private final AnimationTimer clock =
      new AnimationTimer() {
        @Override
        public void handle(long now) {
          differences.stage().tick(System.nanoTime());
        }
      };

  QuestionView(
      Differences differences,
      ObservableValue<@Nullable Wave> wave,
      Keys keys,
      Look look,
      Consumer<String> press,
      Follow follow) {
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
    stills = new StillsRow(differences, look, follow);
    staves = new StavesView(differences, wave, look, follow);
    end = new EndView(differences, look);
    VBox.setVgrow(staves, Priority.ALWAYS);
    VBox.setVgrow(end, Priority.ALWAYS);
    getChildren()
        .setAll(
            question,
            explanation,
            stills,
            staves,
            end,
            new ChoiceRow(differences, keys, look, press, follow));
    follow.changes(differences.settledProperty(), this::show);
    follow.changes(differences.atProperty(), this::show);
    follow.changes(differences.afresh().activeProperty(), this::show);
    follow.value(differences.stage().playingProperty(), this::run);
    follow.atEnd(clock::stop);
    show();
  }

  private void run(boolean playing) {
    if (playing) {
      clock.start();
    } else {
      clock.stop();
    }
  }

  private void show() {
    Item item = differences.current();
    Wording wording = Sight.wording(differences);
    boolean asking = item != null && wording != null;
    shown(stills, asking);
    shown(staves, asking);
    shown(end, !asking);
    if (item == null || wording == null) {
      question.setText(end.title());
      explanation.setText(end.about());
      end.show();
    } else if (differences.afresh().activeProperty().get()) {
      question.setText("Mark it afresh");
      explanation.setText(
          item instanceof Item.OfSpan
              ? "Neither is right? Go to the frame where it begins, %s, and where it ends, %s."
                  .formatted(keys.of(Action.PALM), keys.of(Action.BACK))
              : "Neither is right? Go to the first frame that shows contact, and name the slap.");
    } else {
      Decision<?> decision = item.decision();
      question.setText(wording.question(item));
      explanation.setText(
          wording.explanation(item)
              + wording.evidence(item, estimate())
              + (decision == null ? "" : " " + wording.decision(decision)));
    }
  }

  private @Nullable Estimate estimate() {
    Opened opened = differences.openedProperty().get();
    return opened == null ? null : opened.trial().estimate();
  }

  private static void shown(Region part, boolean now) {
    part.setVisible(now);
    part.setManaged(now);
  }
}
