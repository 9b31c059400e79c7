package palmturn.app.sheet;

import java.io.File;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.beans.property.Property;
import javafx.beans.value.ObservableStringValue;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.VBox;
import javafx.stage.DirectoryChooser;
import javafx.stage.Window;
import palmturn.app.desk.Messages;
import palmturn.app.desk.OpenSession;
import palmturn.app.desk.Prompts;
import palmturn.app.desk.Question;
import palmturn.app.keys.Action;
import palmturn.app.keys.KeyBindings;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.app.progress.ProgressView;
import palmturn.app.session.SessionFlow;

/**
 * Builds the sheet of each question.
 *
 * @param press gets the key of a sheet that was clicked
 * @param window returns the owner of choosers
 * @param follow ends with the sheet
 */
record SheetFactory(
    OpenSession session,
    Prompts prompts,
    Messages messageList,
    SessionFlow flow,
    Look look,
    Consumer<String> press,
    Supplier<Window> window,
    Listeners follow)
    implements Question.Visitor<Sheet> {
  @Override
  public Sheet page(Question.Page page) {
    return switch (page) {
      case ATHLETE -> athlete();
      case NEW_DRILL -> newDrill();
      case MORE_MARKS ->
          toRead("More marks", KeyTable.moreMarks(prompts.keys().map(), look, press));
      case MESSAGES -> messages();
      case PROGRESS -> toRead("Progress", new ProgressView(flow.progress(), look, follow));
      case LADDER -> ladder();
      case ALL_KEYS -> allKeys();
    };
  }

  private Sheet allKeys() {
    KeyBindings keys = prompts.keys();
    keys.change().begin();
    Sheet sheet =
        new Sheet("All keys", look, new KeyTable(keys, look, follow).allKeys())
            .addButton("keys-reset", "Reset all keys", false, keys.change()::resetAll)
            .addButton("keys-print", "Print", false, () -> press.accept(keys.of(Action.PRINT_KEYS)))
            .addButton("sheet-close", "Close", false, this::close);
    follow.onChange(keys.change().chosenProperty(), sheet::requestFocus);
    follow.onChange(keys.change().askingProperty(), sheet::requestFocus);
    return sheet;
  }

  @Override
  public Sheet line(Question.Line question) {
    TextField field = field(question.id(), question.columns(), look);
    field.setText(question.before());
    List<Node> content = new ArrayList<>();
    question.about().forEach(line -> content.add(Nodes.label(line, "second")));
    content.add(field);
    return toAnswer(
            question.title(),
            content,
            question.done(),
            () -> {
              if (!field.getText().isBlank()) {
                close();
                question.then().accept(field.getText().strip());
              }
            })
        .focusOn(field);
  }

  @Override
  public Sheet reader(Question.Reader question) {
    TextField field = field("initials", 8, look);
    field.setText(question.guess());
    field.selectAll();
    Label why =
        Nodes.label(
            "There are marks in this session already. You see your own, those with your initials;\n"
                + "another reader’s stay hidden while you read, and so does the estimate.\n"
                + "“View only” shows everything and changes nothing.",
            "second");
    return new Sheet(
            "Who is reading?", look, List.of(why, Nodes.label("Your initials", "second"), field))
        .addButton("sheet-cancel", "Cancel", false, this::close)
        .addButton("sheet-look", "View only", false, () -> question.then().accept(null))
        .addButton(
            "sheet-ok",
            "Open",
            true,
            () -> {
              if (!field.getText().isBlank()) {
                question.then().accept(field.getText());
              }
            })
        .focusOn(field);
  }

  @Override
  public Sheet consent(Question.Consent question) {
    return new Sheet(question.title(), look, List.of(Nodes.label(question.about(), "second")))
        .addButton("sheet-cancel", question.refuse(), false, this::close)
        .addButton(
            "sheet-ok",
            question.done(),
            true,
            () -> {
              close();
              question.then().run();
            });
  }

  @Override
  public Sheet clips(Question.Clips question) {
    Sheet sheet =
        toAnswer(
            flow.intake().newSession() ? "A new session" : "Add clips",
            new ClipsSheet(flow.intake(), look).content(follow),
            "Add",
            flow::add);
    return sheet.focusOn(sheet.lookup("#athlete"));
  }

  private Sheet newDrill() {
    DrillSheet drill = new DrillSheet(flow.drillForm(), look);
    return toAnswer(
            "Drill before the next block", drill.content(follow), "Begin the block", flow::drill)
        .focusOn(drill.first());
  }

  private Sheet athlete() {
    AthleteSheet athlete =
        new AthleteSheet(
            flow.athleteForm(), session.headingProperty().get(), session.readOnly(), look);
    List<Node> content = athlete.content(follow);
    Sheet sheet =
        session.readOnly()
            ? toRead("The athlete", content)
            : toAnswer("The athlete", content, "Save", flow.athleteForm()::save);
    return sheet.focusOn(athlete.first());
  }

  private Sheet messages() {
    MessagesSheet messages = new MessagesSheet(messageList, session.readOnly(), look);
    Sheet sheet =
        new Sheet("Messages", look, messages.content(follow))
            .addButton("sheet-close", "Close", false, this::close);
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
    return sheet.focusOn(messages.first());
  }

  @Override
  public Sheet estimate(Question.EstimateDetails question) {
    Node table = EstimateTable.of(question.estimate(), look);
    // The arrow keys go down it where it is longer than the window.
    table.setFocusTraversable(true);
    return toRead("Estimate details", table).focusOn(table);
  }

  private Sheet ladder() {
    return new Sheet("Pace ladder", look, new LadderSheet(flow.ladders(), look).content(follow))
        .addButton("sheet-close", "Close", false, this::close)
        .addButton("sheet-ok", "Save the click tracks", true, this::saveClicks);
  }

  private void saveClicks() {
    DirectoryChooser chooser = new DirectoryChooser();
    chooser.setTitle("Choose a folder for the click tracks");
    File chosen =
        flow.ladders().handsProperty().get().isEmpty() ? null : chooser.showDialog(window.get());
    if (chosen != null) {
      flow.ladders().save(chosen.toPath());
    }
  }

  private Sheet toRead(String title, Node content) {
    return toRead(title, List.of(content));
  }

  private Sheet toRead(String title, List<Node> content) {
    return new Sheet(title, look, content).addButton("sheet-close", "Close", true, this::close);
  }

  private Sheet toAnswer(String title, List<Node> content, String word, Runnable answer) {
    return new Sheet(title, look, content)
        .addButton("sheet-cancel", "Cancel", false, this::close)
        .addButton("sheet-ok", word, true, answer);
  }

  private void close() {
    prompts.questions().close();
  }

  static TextField field(String id, int columns, Look look) {
    TextField field = new TextField();
    field.setId(id);
    field.setPrefColumnCount(columns);
    field.setMaxWidth(look.px(16.0 * columns + 40));
    return field;
  }

  /** Returns a field that edits a property. */
  static TextField field(String id, int columns, Look look, Property<String> text) {
    TextField field = field(id, columns, look);
    field.textProperty().bindBidirectional(text);
    return field;
  }

  /** Returns a line that says what stands in the way of an answer. */
  static Label obstacle(String id, ObservableStringValue text, double width) {
    Label label = Nodes.wrapped("", "over");
    label.setId(id);
    label.setMaxWidth(width);
    Nodes.bindText(label, text);
    return label;
  }

  /** Returns an answer under its question. */
  static VBox labelled(String question, Node answer, Look look) {
    return new VBox(look.px(4), Nodes.label(question, "second"), answer);
  }
}
