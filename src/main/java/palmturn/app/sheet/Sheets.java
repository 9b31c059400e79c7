package palmturn.app.sheet;

import java.io.File;
import java.util.function.Consumer;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.StackPane;
import javafx.stage.DirectoryChooser;
import org.jspecify.annotations.Nullable;
import palmturn.app.desk.Desk;
import palmturn.app.desk.Question;
import palmturn.app.keys.Action;
import palmturn.app.keys.KeyBindings;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.app.progress.ProgressView;
import palmturn.app.session.SessionFlow;

/** Lays over the window what the desk asks, and hands the answer back. */
public final class Sheets extends StackPane {
  static final String LOOK_ONLY = "This session is open to look only: nothing can be written here.";

  private final Desk desk;
  private final SessionFlow flow;
  private final Look look;
  private final Consumer<String> press;
  private final Runnable closed;
  private Listeners listeners = new Listeners();

  /**
   * Builds the layer, invisible while nothing is asked.
   *
   * @param press is told which key of a sheet was clicked
   * @param closed is run when a sheet goes away, to give the focus back
   */
  public Sheets(
      Desk desk,
      SessionFlow flow,
      Look look,
      Consumer<String> press,
      Runnable closed,
      Listeners listeners) {
    this.desk = desk;
    this.flow = flow;
    this.look = look;
    this.press = press;
    this.closed = closed;
    setPickOnBounds(false);
    listeners.onValue(desk.questionProperty(), this::show);
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
    if (question instanceof Question.Initials initials) {
      initials(initials);
    } else if (question instanceof Question.WhoReads reads) {
      whoReads(reads);
    } else if (question instanceof Question.Line line) {
      line(line);
    } else if (question instanceof Question.Clips) {
      clips();
    } else if (question instanceof Question.NewDrill) {
      drill();
    } else if (question instanceof Question.Athlete) {
      athlete();
    } else if (question instanceof Question.Note) {
      note();
    } else if (question instanceof Question.Replace replace) {
      replace(replace);
    } else if (question instanceof Question.Progress) {
      progress();
    } else if (question instanceof Question.Ladder) {
      ladder();
    } else if (question instanceof Question.Messages) {
      messages();
    } else if (question instanceof Question.EstimateSays says) {
      says(says);
    } else if (question instanceof Question.More) {
      more();
    } else {
      keys();
    }
  }

  private void keys() {
    KeyBindings keys = desk.keys();
    keys.change().begin();
    Sheet sheet =
        new Sheet(
            "All keys", look, new KeyTable(keys, look, listeners).allKeys().toArray(Node[]::new));
    sheet
        .addButton("keys-reset", "Reset all keys", false, keys.change()::resetAll)
        .addButton("keys-print", "Print", false, () -> press.accept(keys.of(Action.PRINT_KEYS)))
        .addButton("sheet-close", "Close", false, this::close);
    put(sheet, null);
    listeners.onChange(keys.change().chosenProperty(), sheet::requestFocus);
    listeners.onChange(keys.change().askingProperty(), sheet::requestFocus);
  }

  private void initials(Question.Initials question) {
    TextField field = field("initials", 8, look);
    Sheet sheet =
        new Sheet(
            "Who is reading?",
            look,
            Nodes.label("Your initials keep your marks apart from a second reader’s.", "second"),
            Nodes.label("Your initials", "second"),
            field);
    sheet
        .addButton("sheet-cancel", "Cancel", false, this::close)
        .addButton(
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

  private void whoReads(Question.WhoReads question) {
    TextField field = field("initials", 8, look);
    field.setText(question.guess());
    field.selectAll();
    put(
        new Sheet(
                "Who is reading?",
                look,
                Nodes.label(
                    "There are marks in this session already. You see your own, those with your initials;\n"
                        + "another reader’s stay hidden while you read, and so does the estimate.\n"
                        + "“Only look” shows everything and changes nothing.",
                    "second"),
                Nodes.label("Your initials", "second"),
                field)
            .addButton("sheet-cancel", "Cancel", false, this::close)
            .addButton("sheet-look", "Only look", false, () -> desk.arrival().answer(null))
            .addButton(
                "sheet-ok",
                "Open",
                true,
                () -> {
                  if (!field.getText().isBlank()) {
                    desk.arrival().answer(field.getText());
                  }
                }),
        field);
  }

  private void line(Question.Line question) {
    TextField field = field("line", question.columns(), look);
    field.setText(question.before());
    Sheet sheet = new Sheet(question.title(), look, Nodes.label(question.about(), "second"), field);
    sheet
        .addButton("sheet-cancel", "Cancel", false, this::close)
        .addButton(
            "sheet-ok",
            question.done(),
            true,
            () -> {
              if (!field.getText().isBlank()) {
                close();
                question.then().accept(field.getText().strip());
              }
            });
    put(sheet, field);
  }

  private void note() {
    TextField field = field("note", 28, look);
    Sheet sheet = new Sheet("What is wrong with this slap?", look, field);
    sheet
        .addButton("sheet-cancel", "Cancel", false, this::close)
        .addButton(
            "sheet-ok",
            "Mark it",
            true,
            () -> {
              if (!field.getText().isBlank()) {
                close();
                desk.mark(() -> desk.marking().describeFault(field.getText().strip()));
              }
            });
    put(sheet, field);
  }

  private void replace(Question.Replace question) {
    put(
        new Sheet(
                "Start from the estimate?",
                look,
                Nodes.label(
                    "The estimate’s marks will replace your %d %s. %s undoes it."
                        .formatted(
                            question.marks(),
                            question.marks() == 1 ? "mark" : "marks",
                            desk.keys().of(Action.UNDO)),
                    "second"))
            .addButton("sheet-cancel", "Cancel", false, this::close)
            .addButton(
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
        new Sheet("More marks", look, KeyTable.moreMarks(desk.keys().map(), look, press))
            .addButton("sheet-close", "Close", true, this::close),
        null);
  }

  private void clips() {
    ClipsSheet clips = new ClipsSheet(flow.intake(), look);
    Sheet sheet =
        new Sheet(
            flow.intake().newSession() ? "A new session" : "Add clips",
            look,
            clips.content(listeners).toArray(Node[]::new));
    sheet
        .addButton("sheet-cancel", "Cancel", false, this::close)
        .addButton("sheet-ok", "Add", true, flow::add);
    put(sheet, sheet.lookup("#athlete"));
  }

  private void drill() {
    DrillSheet drill = new DrillSheet(flow.drillForm(), look);
    Sheet sheet =
        new Sheet(
                "Drill before the next block", look, drill.content(listeners).toArray(Node[]::new))
            .addButton("sheet-cancel", "Cancel", false, this::close)
            .addButton("sheet-ok", "Begin the block", true, flow::drill);
    put(sheet, drill.first());
  }

  private void athlete() {
    boolean lookOnly = desk.readOnlyProperty().get();
    AthleteSheet athlete =
        new AthleteSheet(flow.athleteForm(), desk.headingProperty().get(), lookOnly, look);
    Sheet sheet = new Sheet("The athlete", look, athlete.content(listeners).toArray(Node[]::new));
    if (lookOnly) {
      sheet.addButton("sheet-close", "Close", true, this::close);
    } else {
      sheet
          .addButton("sheet-cancel", "Cancel", false, this::close)
          .addButton("sheet-ok", "Save", true, flow.athleteForm()::save);
    }
    put(sheet, athlete.first());
  }

  private void messages() {
    boolean lookOnly = desk.readOnlyProperty().get();
    MessagesSheet messages = new MessagesSheet(desk.messages(), lookOnly, look);
    Sheet sheet = new Sheet("Messages", look, messages.content(listeners).toArray(Node[]::new));
    sheet.addButton("sheet-close", "Close", false, this::close);
    String word = messages.submitWord();
    if (word != null) {
      sheet.addButton(
          "sheet-ok",
          word,
          true,
          () -> {
            if (messages.submit()) {
              close();
            }
          });
    }
    sheet.addEventFilter(KeyEvent.KEY_PRESSED, messages::handleArrows);
    put(sheet, messages.first());
  }

  private void says(Question.EstimateSays question) {
    Node table = EstimateTable.of(question.estimate(), look);
    // The arrow keys go down it where it is longer than the window.
    table.setFocusTraversable(true);
    put(
        new Sheet("Estimate details", look, table)
            .addButton("sheet-close", "Close", true, this::close),
        table);
  }

  private void progress() {
    put(
        new Sheet("Progress", look, new ProgressView(flow.progress(), look, listeners))
            .addButton("sheet-close", "Close", true, this::close),
        null);
  }

  private void ladder() {
    LadderSheet ladder = new LadderSheet(flow.ladders(), look);
    put(
        new Sheet("Pace ladder", look, ladder.content(listeners).toArray(Node[]::new))
            .addButton("sheet-close", "Close", false, this::close)
            .addButton("sheet-ok", "Save the click tracks", true, this::saveClicks),
        null);
  }

  private void saveClicks() {
    DirectoryChooser chooser = new DirectoryChooser();
    chooser.setTitle("Choose a folder for the click tracks");
    File chosen =
        flow.ladders().handsProperty().get().isEmpty()
            ? null
            : chooser.showDialog(getScene().getWindow());
    if (chosen != null) {
      flow.ladders().save(chosen.toPath());
    }
  }

  private void put(Sheet sheet, @Nullable Node first) {
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

  private void close() {
    desk.ask(null);
  }

  static TextField field(String id, int columns, Look look) {
    TextField field = new TextField();
    field.setId(id);
    field.setPrefColumnCount(columns);
    field.setMaxWidth(look.px(16.0 * columns + 40));
    return field;
  }
}
