package palmturn.app.inbox;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javafx.application.Platform;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.app.look.Tooltips;
import palmturn.app.tasks.RunningTask;
import palmturn.work.search.InboxSearch.Found;
import palmturn.work.search.InboxSearch.SessionState;

/** Shows the inbox: a line a session, under a heading for each state. */
public final class InboxView extends VBox {
  private static final double[] WIDTHS = {150, 120, 70, 80, 80};

  private final Inbox inbox;
  private final Look look;
  private final VBox list = new VBox();
  private final ScrollPane scroll = new ScrollPane(list);
  private final HBox progress;

  /**
   * Builds the pane.
   *
   * @param press is told which key was clicked
   */
  public InboxView(Inbox inbox, Look look, Consumer<String> press, Listeners follow) {
    this.inbox = inbox;
    this.look = look;
    getStyleClass().setAll("pane", "inbox");
    setId("inbox");
    setFocusTraversable(true);
    setAccessibleText("Inbox");
    Label where = Nodes.named("inbox-folder", "second");
    where.setTextOverrun(OverrunStyle.LEADING_ELLIPSIS);
    where.setMinWidth(0);
    progress = new HBox(look.px(12));
    progress.setAlignment(Pos.CENTER_RIGHT);
    progress.setMinWidth(Region.USE_PREF_SIZE);
    Button folder =
        Nodes.button(
            "inbox-choose", "Choose a folder", () -> press.accept("O"), "choice", "narrow");
    folder.setMinWidth(Region.USE_PREF_SIZE);
    folder.setFocusTraversable(false);
    HBox head =
        Nodes.row(
            look.px(16), Nodes.label("Inbox", "title"), where, Nodes.space(), progress, folder);
    head.setMinHeight(look.px(34));
    Label words = Nodes.wrapped("", "second");
    words.setId("inbox-words");
    Nodes.bindText(words, inbox.wordsProperty());
    Nodes.scrollVertically(scroll);
    VBox.setVgrow(scroll, Priority.ALWAYS);
    VBox.setVgrow(this, Priority.ALWAYS);
    setMinHeight(0);
    Button first =
        Nodes.button("inbox-first", "Choose the folder", () -> press.accept("O"), "main-choice");
    first.setMinHeight(look.px(44));
    first.visibleProperty().bind(inbox.folderProperty().isNull());
    first.managedProperty().bind(first.visibleProperty());
    folder.visibleProperty().bind(first.visibleProperty().not());
    VBox.setMargin(first, new Insets(look.px(16), 0, 0, 0));
    getChildren().setAll(head, words, first, scroll);
    follow.onValue(inbox.folderProperty(), now -> where.setText(InboxWords.where(now)));
    follow.onValue(inbox.searchProperty(), this::progress);
    follow.onChange(inbox.foundProperty(), this::fill);
    follow.onChange(inbox.chosenProperty(), this::fill);
    fill();
  }

  private void fill() {
    List<Node> rows = new ArrayList<>();
    List<Found> all = inbox.foundProperty().get();
    if (!all.isEmpty()) {
      rows.add(
          row("small", "", "Athlete", "Filmed on", "Filmed", "Read", "Settled", "Last message"));
    }
    SessionState before = null;
    for (Found each : all) {
      if (each.state() != before) {
        rows.add(heading(each.state(), all));
      }
      before = each.state();
      rows.add(session(each));
    }
    list.getChildren().setAll(rows);
  }

  private Label heading(SessionState state, List<Found> all) {
    long count = all.stream().filter(each -> each.state() == state).count();
    Label label = Nodes.label(InboxWords.state(state) + "  " + count, "strong");
    label.getStyleClass().add("inbox-heading");
    return label;
  }

  private HBox session(Found each) {
    int unseen = inbox.unseen(each);
    HBox row =
        row(
            "plain",
            unseen == 0 ? "" : unseen + " new",
            InboxWords.athlete(each),
            InboxWords.day(each.date()),
            each.filmed() == 0 ? "" : Integer.toString(each.filmed()),
            InboxWords.of(each.read(), each),
            InboxWords.of(each.settled(), each),
            InboxWords.last(each));
    boolean chosen = each.path().equals(inbox.chosenProperty().get());
    row.getStyleClass().add(chosen ? "inbox-chosen" : "inbox-row");
    row.getChildren().get(0).getStyleClass().add("strong");
    if (each.state() == SessionState.UNREADABLE) {
      Label why = (Label) row.getChildren().get(WIDTHS.length);
      why.getStyleClass().add("over");
      why.setTooltip(Tooltips.of(each.problem(), look));
    }
    row.setAccessibleText(
        InboxWords.athlete(each) + ", " + InboxWords.state(each.state()) + ", " + each.path());
    Label name = (Label) row.getChildren().get(0);
    name.setTooltip(Tooltips.of(each.path().toString(), look));
    row.setOnMouseClicked(
        event -> {
          inbox.choose(each);
          if (event.getClickCount() == 2) {
            inbox.open();
          }
        });
    if (chosen) {
      Platform.runLater(() -> Nodes.scrollTo(scroll, row));
    }
    return row;
  }

  private HBox row(String style, String extra, String... texts) {
    HBox row = Nodes.row(look.px(16));
    row.setMinHeight(look.px(style.equals("small") ? 24 : 34));
    for (int i = 0; i < texts.length; i++) {
      Label label = Nodes.label(texts[i], style);
      if (i < WIDTHS.length) {
        Nodes.setWidth(label, look.px(WIDTHS[i]));
      } else {
        label.setMinWidth(0);
        label.setMaxWidth(Double.MAX_VALUE);
        HBox.setHgrow(label, Priority.ALWAYS);
      }
      row.getChildren().add(label);
    }
    if (!extra.isEmpty()) {
      row.getChildren().add(Nodes.whole(extra, "strong"));
    }
    row.getStyleClass().add("inbox-line");
    return row;
  }

  private void progress(@Nullable RunningTask now) {
    List<Node> parts =
        now == null ? List.of() : Nodes.progress(now, "inbox", look.px(140), inbox::stop);
    parts.forEach(part -> part.setFocusTraversable(false));
    progress.getChildren().setAll(parts);
  }
}
