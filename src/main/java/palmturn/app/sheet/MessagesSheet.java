package palmturn.app.sheet;

import java.util.ArrayList;
import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.RadioButton;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import palmturn.app.desk.MessageWords;
import palmturn.app.desk.Messages;
import palmturn.app.desk.Messages.Moment;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.trial.Message;

/** The messages, the newest last, and a field for one more. */
final class MessagesSheet {
  private static final double WIDTH = 640;
  private static final double MOST = 300;

  private final Messages messages;
  private final boolean readOnly;
  private final Look look;
  private final TextField text;
  private final VBox rows = new VBox();
  private final ScrollPane scroll = new ScrollPane(rows);

  MessagesSheet(Messages messages, boolean readOnly, Look look) {
    this.messages = messages;
    this.readOnly = readOnly;
    this.look = look;
    text = SheetFactory.field("message", 36, look);
    text.setMaxWidth(Double.MAX_VALUE);
    text.setPromptText("for example: watch the elbow from here");
  }

  /** Returns what takes the keys first; null for the sheet itself. */
  @Nullable TextField first() {
    return readOnly ? null : text;
  }

  List<Node> content(Listeners listeners) {
    List<Node> content = new ArrayList<>();
    content.add(list(listeners));
    if (readOnly) {
      content.add(Nodes.label(Sheets.READ_ONLY, "second"));
    } else {
      content.add(text);
      content.add(row("About", about()));
      content.add(row("From", writers()));
    }
    return content;
  }

  /** Returns the word for {@link #submit}; null where there is nothing to do. */
  @Nullable String submitWord() {
    return !readOnly ? "Write" : messages.allProperty().get().isEmpty() ? null : "Go there";
  }

  /** Lets the arrow keys choose a message, except where they choose something else. */
  void handleArrows(KeyEvent event) {
    boolean up = event.getCode() == KeyCode.UP;
    if ((up || event.getCode() == KeyCode.DOWN) && !(event.getTarget() instanceof RadioButton)) {
      messages.move(up ? -1 : 1);
      event.consume();
    }
  }

  /** Writes what is there, or goes to the message that is chosen; returns whether it did either. */
  boolean submit() {
    Message chosen = messages.chosenProperty().get();
    if (!text.getText().isBlank()) {
      messages.write(text.getText());
    } else if (chosen != null) {
      messages.go(chosen);
    } else {
      return false;
    }
    return true;
  }

  private HBox about() {
    Moment here = messages.here();
    RadioRow.Option<Moment> session = RadioRow.option("session", Moment.NONE, "the session");
    return here.trial() == null
        ? RadioRow.of("message-about", look, messages.aboutProperty(), session)
        : RadioRow.of(
            "message-about",
            look,
            messages.aboutProperty(),
            RadioRow.option("here", here, MessageWords.where(here)),
            session);
  }

  private HBox writers() {
    return RadioRow.of(
        "message-from",
        look,
        messages.fromProperty(),
        messages.writers().stream().map(who -> RadioRow.option(who, who, who)).toList());
  }

  private HBox row(String name, Node answer) {
    Label label = Nodes.label(name, "second");
    label.setMinWidth(look.px(56));
    return Nodes.row(0, label, answer);
  }

  private Node list(Listeners listeners) {
    List<Message> all = messages.allProperty().get();
    if (all.isEmpty()) {
      Label none =
          Nodes.label(
              readOnly
                  ? "No messages yet."
                  : "No messages yet. What you write here stays with the session.",
              "second");
      none.setPrefWidth(look.px(WIDTH));
      return none;
    }
    all.forEach(each -> rows.getChildren().add(row(each)));
    rows.getChildren().get(all.size() - 1).getStyleClass().add("last-message");
    Nodes.scrollVertically(scroll);
    scroll.setPrefWidth(look.px(WIDTH));
    rows.heightProperty().addListener((height, before, now) -> fit(now.doubleValue()));
    listeners.onValue(messages.chosenProperty(), this::show);
    return scroll;
  }

  private void fit(double height) {
    double seen = Math.min(height, look.px(MOST));
    scroll.setPrefViewportHeight(seen);
    scroll.setMinViewportHeight(seen);
    scroll.setVvalue(1);
  }

  private void show(@Nullable Message chosen) {
    List<Message> all = messages.allProperty().get();
    for (int i = 0; i < rows.getChildren().size(); i++) {
      Node row = rows.getChildren().get(i);
      boolean here = all.get(i).equals(chosen);
      Nodes.setStyle(row, "inbox-chosen", here);
      if (here) {
        Nodes.scrollTo(scroll, row);
      }
    }
  }

  private VBox row(Message message) {
    boolean hidden = messages.hidden(message);
    Label from = Nodes.whole(message.from(), "name");
    Moment moment = hidden ? new Moment(message.trial(), null) : Moment.of(message);
    Label where = Nodes.label(MessageWords.where(moment), "second");
    Label fresh = Nodes.whole(messages.fresh(message) ? "new" : "", "name");
    Label when =
        Nodes.whole(
            MessageWords.when(message, messages.zone())
                + (messages.isAhead(message) ? ", in the future" : ""),
            "small");
    HBox head = new HBox(look.px(12), from, where, Nodes.space(), fresh, when);
    head.setAlignment(Pos.BASELINE_LEFT);
    Label words =
        Nodes.wrapped(
            hidden ? "Hidden until you have read this trial." : message.text(),
            hidden ? "second" : "plain");
    VBox row = new VBox(look.px(2), head, words);
    row.getStyleClass().setAll("message", "inbox-row");
    row.setOnMouseClicked(event -> messages.go(message));
    return row;
  }
}
