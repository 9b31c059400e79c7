package palmturn.app.sheet;

import java.io.File;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyEvent;
import javafx.stage.DirectoryChooser;
import javafx.stage.Window;
import org.jspecify.annotations.Nullable;
import palmturn.app.desk.Messages;
import palmturn.app.desk.OpenSession;
import palmturn.app.desk.Prompts;
import palmturn.app.desk.Question;
import palmturn.app.keys.Action;
import palmturn.app.keys.KeyBindings;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.progress.ProgressView;
import palmturn.app.session.SessionFlow;

/** Builds the sheet of each question. */
final class SheetFactory implements Question.Visitor<SheetFactory.Opened> {
  private final OpenSession session;
  private final Prompts prompts;
  private final Messages messageList;
  private final SessionFlow flow;
  private final Look look;
  private final Consumer<String> press;
  private final Supplier<Window> window;
  private final Listeners follow;

  /**
   * A sheet that was built.
   *
   * @param first the part that gets the focus; null for the sheet itself
   */
  record Opened(Sheet sheet, @Nullable Node first) {}

  /**
   * Builds nothing yet.
   *
   * @param press gets the key of a sheet that was clicked
   * @param window returns the owner of choosers
   * @param follow ends with the sheet
   */
  SheetFactory(
      OpenSession session,
      Prompts prompts,
      Messages messageList,
      SessionFlow flow,
      Look look,
      Consumer<String> press,
      Supplier<Window> window,
      Listeners follow) {
    this.session = session;
    this.prompts = prompts;
    this.messageList = messageList;
    this.flow = flow;
    this.look = look;
    this.press = press;
    this.window = window;
    this.follow = follow;
  }

  @Override
  public Opened keys(Question.AllKeys question) {
    KeyBindings keys = prompts.keys();
    keys.change().begin();
    Sheet sheet =
        new Sheet(
            "All keys", look, new KeyTable(keys, look, follow).allKeys().toArray(Node[]::new));
    sheet
        .addButton("keys-reset", "Reset all keys", false, keys.change()::resetAll)
        .addButton("keys-print", "Print", false, () -> press.accept(keys.of(Action.PRINT_KEYS)))
        .addButton("sheet-close", "Close", false, this::close);
    follow.onChange(keys.change().chosenProperty(), sheet::requestFocus);
    follow.onChange(keys.change().askingProperty(), sheet::requestFocus);
    return new Opened(sheet, null);
  }

  @Override
  public Opened initials(Question.Initials question) {
    TextField field = field("initials", 8, look);
    Sheet sheet =
        new Sheet(
            "Who is reading?",
            look,
            words("Your initials keep your marks apart from a second reader’s."),
            words("Your initials"),
            field);
    sheet
        .addButton("sheet-cancel", "Cancel", false, this::close)
        .addButton(
            "sheet-ok",
            "Begin marking",
            true,
            () -> {
              if (!field.getText().isBlank()) {
                close();
                question.then().accept(field.getText());
              }
            });
    return new Opened(sheet, field);
  }

  @Override
  public Opened reader(Question.Reader question) {
    TextField field = field("initials", 8, look);
    field.setText(question.guess());
    field.selectAll();
    return new Opened(
        new Sheet(
                "Who is reading?",
                look,
                words(
                    "There are marks in this session already. You see your own, those with your initials;\n"
                        + "another reader’s stay hidden while you read, and so does the estimate.\n"
                        + "“Only look” shows everything and changes nothing."),
                words("Your initials"),
                field)
            .addButton("sheet-cancel", "Cancel", false, this::close)
            .addButton("sheet-look", "Only look", false, () -> question.then().accept(null))
            .addButton(
                "sheet-ok",
                "Open",
                true,
                () -> {
                  if (!field.getText().isBlank()) {
                    question.then().accept(field.getText());
                  }
                }),
        field);
  }

  @Override
  public Opened line(Question.Line question) {
    TextField field = field("line", question.columns(), look);
    field.setText(question.before());
    Sheet sheet = new Sheet(question.title(), look, words(question.about()), field);
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
    return new Opened(sheet, field);
  }

  @Override
  public Opened note(Question.Note question) {
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
                question.then().accept(field.getText().strip());
              }
            });
    return new Opened(sheet, field);
  }

  @Override
  public Opened replace(Question.Replace question) {
    return new Opened(
        new Sheet(
                "Start from the estimate?",
                look,
                words(
                    "The estimate’s marks will replace your %d %s. %s undoes it."
                        .formatted(
                            question.marks(),
                            question.marks() == 1 ? "mark" : "marks",
                            prompts.keys().of(Action.UNDO))))
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

  @Override
  public Opened unsaved(Question.Unsaved question) {
    return new Opened(
        new Sheet(
                "Another program changed this session",
                look,
                words(
                    "%d %s of yours could not be saved. They can be saved as a reading of their own, beside what is there now."
                        .formatted(question.marks(), question.marks() == 1 ? "mark" : "marks")))
            .addButton("sheet-cancel", "Not now", false, this::close)
            .addButton(
                "sheet-ok",
                "Save as a new reading",
                true,
                () -> {
                  close();
                  question.then().run();
                }),
        null);
  }

  @Override
  public Opened more(Question.More question) {
    return new Opened(
        new Sheet("More marks", look, KeyTable.moreMarks(prompts.keys().map(), look, press))
            .addButton("sheet-close", "Close", true, this::close),
        null);
  }

  @Override
  public Opened clips(Question.Clips question) {
    ClipsSheet clips = new ClipsSheet(flow.intake(), look);
    Sheet sheet =
        new Sheet(
            flow.intake().newSession() ? "A new session" : "Add clips",
            look,
            clips.content(follow).toArray(Node[]::new));
    sheet
        .addButton("sheet-cancel", "Cancel", false, this::close)
        .addButton("sheet-ok", "Add", true, flow::add);
    return new Opened(sheet, sheet.lookup("#athlete"));
  }

  @Override
  public Opened newDrill(Question.NewDrill question) {
    DrillSheet drill = new DrillSheet(flow.drillForm(), look);
    Sheet sheet =
        new Sheet("Drill before the next block", look, drill.content(follow).toArray(Node[]::new))
            .addButton("sheet-cancel", "Cancel", false, this::close)
            .addButton("sheet-ok", "Begin the block", true, flow::drill);
    return new Opened(sheet, drill.first());
  }

  @Override
  public Opened athlete(Question.Athlete question) {
    boolean lookOnly = session.readOnly();
    AthleteSheet athlete =
        new AthleteSheet(flow.athleteForm(), session.headingProperty().get(), lookOnly, look);
    Sheet sheet = new Sheet("The athlete", look, athlete.content(follow).toArray(Node[]::new));
    if (lookOnly) {
      sheet.addButton("sheet-close", "Close", true, this::close);
    } else {
      sheet
          .addButton("sheet-cancel", "Cancel", false, this::close)
          .addButton("sheet-ok", "Save", true, flow.athleteForm()::save);
    }
    return new Opened(sheet, athlete.first());
  }

  @Override
  public Opened messages(Question.MessageList question) {
    boolean lookOnly = session.readOnly();
    MessagesSheet messages = new MessagesSheet(messageList, lookOnly, look);
    Sheet sheet = new Sheet("Messages", look, messages.content(follow).toArray(Node[]::new));
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
    return new Opened(sheet, messages.first());
  }

  @Override
  public Opened estimateSummary(Question.EstimateSummary question) {
    Node table = EstimateTable.of(question.estimate(), look);
    // The arrow keys go down it where it is longer than the window.
    table.setFocusTraversable(true);
    return new Opened(
        new Sheet("Estimate details", look, table)
            .addButton("sheet-close", "Close", true, this::close),
        table);
  }

  @Override
  public Opened progress(Question.Progress question) {
    return new Opened(
        new Sheet("Progress", look, new ProgressView(flow.progress(), look, follow))
            .addButton("sheet-close", "Close", true, this::close),
        null);
  }

  @Override
  public Opened ladder(Question.Ladder question) {
    LadderSheet ladder = new LadderSheet(flow.ladders(), look);
    return new Opened(
        new Sheet("Pace ladder", look, ladder.content(follow).toArray(Node[]::new))
            .addButton("sheet-close", "Close", false, this::close)
            .addButton("sheet-ok", "Save the click tracks", true, this::saveClicks),
        null);
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

  private static Label words(String text) {
    Label label = new Label(text);
    label.getStyleClass().add("second");
    return label;
  }
}
