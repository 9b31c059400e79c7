package palmturn.app.sheet;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.RadioButton;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import palmturn.app.desk.Desk;
import palmturn.app.desk.NewClips;
import palmturn.app.desk.Question;
import palmturn.app.look.Follow;
import palmturn.app.look.Look;
import palmturn.trial.Hand;

/** Lays over the window what the desk asks, and hands the answer back. */
public final class Sheets extends StackPane {
  private final Desk desk;
  private final Look look;
  private final Consumer<String> press;
  private final Runnable closed;

  /**
   * Builds the layer, invisible while nothing is asked.
   *
   * @param press is told which key of a sheet was clicked
   * @param closed is run when a sheet goes away, to give the focus back
   */
  public Sheets(Desk desk, Look look, Consumer<String> press, Runnable closed, Follow follow) {
    this.desk = desk;
    this.look = look;
    this.press = press;
    this.closed = closed;
    setPickOnBounds(false);
    follow.value(desk.questionProperty(), this::show);
  }

  private void show(@Nullable Question question) {
    getChildren().clear();
    if (question == null) {
      closed.run();
      return;
    }
    if (question instanceof Question.Initials initials) {
      initials(initials);
    } else if (question instanceof Question.Clips clips) {
      clips(clips);
    } else if (question instanceof Question.Note) {
      note();
    } else if (question instanceof Question.Replace replace) {
      replace(replace);
    } else if (question instanceof Question.More) {
      more();
    } else {
      put(
          new Sheet("All keys", look, KeyTable.all(look, press))
              .choice("sheet-close", "Close", true, this::close),
          null);
    }
  }

  private void initials(Question.Initials question) {
    TextField field = field("initials", 8);
    Sheet sheet =
        new Sheet(
            "Who is marking?",
            look,
            words("Your initials stand with your marks, so that a second reader's stay apart."),
            field);
    sheet
        .choice("sheet-cancel", "Cancel", false, this::close)
        .choice(
            "sheet-ok",
            "Begin marking",
            true,
            () -> {
              if (!field.getText().isBlank()) {
                desk.setReader(field.getText());
                close();
                question.then().run();
              }
            });
    put(sheet, field);
  }

  private void note() {
    TextField field = field("note", 28);
    Sheet sheet = new Sheet("What is wrong with this slap?", look, field);
    sheet
        .choice("sheet-cancel", "Cancel", false, this::close)
        .choice(
            "sheet-ok",
            "Mark it",
            true,
            () -> {
              if (!field.getText().isBlank()) {
                close();
                desk.mark(() -> desk.marking().other(field.getText().strip()));
              }
            });
    put(sheet, field);
  }

  private void replace(Question.Replace question) {
    put(
        new Sheet(
                "Start from the estimate?",
                look,
                words(
                    "Your %d %s will give way to the estimate’s. Z brings them back."
                        .formatted(question.marks(), question.marks() == 1 ? "mark" : "marks")))
            .choice("sheet-cancel", "Cancel", false, this::close)
            .choice(
                "sheet-ok",
                "Start from the estimate",
                true,
                () -> {
                  close();
                  question.then().run();
                }),
        null);
  }

  private void more() {
    put(
        new Sheet("More marks", look, KeyTable.more(look, press))
            .choice("sheet-close", "Close", true, this::close),
        null);
  }

  private void clips(Question.Clips question) {
    TextField athlete = field("athlete", 12);
    Label missing = words("");
    missing.setId("clips-missing");
    missing.managedProperty().bind(missing.textProperty().isNotEmpty());
    GridPane grid = new GridPane();
    grid.setHgap(look.px(24));
    grid.setVgap(look.px(8));
    List<ToggleGroup> hands = new ArrayList<>();
    int row = 0;
    for (Path clip : question.clips()) {
      ToggleGroup group = new ToggleGroup();
      HBox pair = new HBox(look.px(16));
      for (Hand hand : Hand.values()) {
        RadioButton button = new RadioButton(hand == Hand.LEFT ? "left hand" : "right hand");
        button.setId("clip-" + row + "-" + hand.code());
        button.setUserData(hand);
        button.setToggleGroup(group);
        pair.getChildren().add(button);
      }
      hands.add(group);
      grid.addRow(row++, new Label(String.valueOf(clip.getFileName())), pair);
    }
    List<Node> content = new ArrayList<>();
    if (question.newSession()) {
      content.add(
          new VBox(
              look.px(4), words("The athlete's code, such as H-07; no name is needed"), athlete));
    }
    content.add(
        new VBox(look.px(8), words("Which of the athlete's own hands is the moving one?"), grid));
    content.add(missing);
    Sheet sheet =
        new Sheet(
            question.newSession() ? "A new session" : "Add clips",
            look,
            content.toArray(Node[]::new));
    sheet
        .choice("sheet-cancel", "Cancel", false, this::close)
        .choice(
            "sheet-ok",
            question.clips().size() == 1 ? "Add the clip" : "Add the clips",
            true,
            () -> {
              List<NewClips.Clip> said = new ArrayList<>();
              for (int i = 0; i < hands.size(); i++) {
                var chosen = hands.get(i).getSelectedToggle();
                if (chosen != null) {
                  said.add(new NewClips.Clip(question.clips().get(i), (Hand) chosen.getUserData()));
                }
              }
              if (question.newSession() && athlete.getText().isBlank()) {
                missing.setText("The athlete's code is still missing.");
              } else if (said.size() < hands.size()) {
                missing.setText("Say for every clip which hand moves.");
              } else {
                close();
                desk.add(said, athlete.getText());
              }
            });
    put(sheet, question.newSession() ? athlete : null);
  }

  private void put(Sheet sheet, @Nullable Node first) {
    getChildren().setAll(sheet);
    if (first != null) {
      first.requestFocus();
    } else {
      sheet.requestFocus();
    }
  }

  private void close() {
    desk.ask(null);
  }

  private TextField field(String id, int columns) {
    TextField field = new TextField();
    field.setId(id);
    field.setPrefColumnCount(columns);
    field.setMaxWidth(look.px(16.0 * columns + 40));
    return field;
  }

  private static Label words(String text) {
    Label label = new Label(text);
    label.getStyleClass().add("second");
    return label;
  }
}
