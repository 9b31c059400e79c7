package palmturn.app.inbox;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javafx.application.Platform;
import javafx.geometry.Bounds;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Tooltips;
import palmturn.app.tasks.RunningTask;
import palmturn.work.search.InboxSearch.Found;
import palmturn.work.search.InboxSearch.State;

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
    Label title = new Label("Inbox");
    title.getStyleClass().add("title");
    Label where = new Label();
    where.setId("inbox-folder");
    where.getStyleClass().add("second");
    where.setTextOverrun(OverrunStyle.LEADING_ELLIPSIS);
    where.setMinWidth(0);
    progress = new HBox(look.px(12));
    progress.setAlignment(Pos.CENTER_RIGHT);
    progress.setMinWidth(Region.USE_PREF_SIZE);
    Button folder = new Button("Choose a folder");
    folder.setId("inbox-choose");
    folder.getStyleClass().setAll("button", "choice", "narrow");
    folder.setMinWidth(Region.USE_PREF_SIZE);
    folder.setFocusTraversable(false);
    folder.setOnAction(event -> press.accept("O"));
    HBox head = new HBox(look.px(16), title, where, space(), progress, folder);
    head.setAlignment(Pos.CENTER_LEFT);
    head.setMinHeight(look.px(34));
    Label words = new Label();
    words.setId("inbox-words");
    words.getStyleClass().add("second");
    words.setWrapText(true);
    words.setMinHeight(Region.USE_PREF_SIZE);
    words.textProperty().bind(inbox.wordsProperty());
    words.managedProperty().bind(words.textProperty().isNotEmpty());
    scroll.setFitToWidth(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.setFocusTraversable(false);
    VBox.setVgrow(scroll, Priority.ALWAYS);
    VBox.setVgrow(this, Priority.ALWAYS);
    setMinHeight(0);
    Button first = new Button("Choose the folder");
    first.setId("inbox-first");
    first.getStyleClass().setAll("button", "main-choice");
    first.setMinHeight(look.px(44));
    first.setOnAction(event -> press.accept("O"));
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
    State before = null;
    for (Found each : all) {
      if (each.state() != before) {
        rows.add(heading(each.state(), all));
      }
      before = each.state();
      rows.add(session(each));
    }
    list.getChildren().setAll(rows);
  }

  private Label heading(State state, List<Found> all) {
    long count = all.stream().filter(each -> each.state() == state).count();
    Label label = new Label(InboxWords.state(state) + "  " + count);
    label.getStyleClass().addAll("strong", "inbox-heading");
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
    if (each.state() == State.UNREADABLE) {
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
      Platform.runLater(() -> bringIntoSight(row));
    }
    return row;
  }

  private HBox row(String style, String extra, String... texts) {
    HBox row = new HBox(look.px(16));
    row.setAlignment(Pos.CENTER_LEFT);
    row.setMinHeight(look.px(style.equals("small") ? 24 : 34));
    for (int i = 0; i < texts.length; i++) {
      Label label = new Label(texts[i]);
      label.getStyleClass().add(style);
      if (i < WIDTHS.length) {
        label.setMinWidth(look.px(WIDTHS[i]));
        label.setMaxWidth(look.px(WIDTHS[i]));
      } else {
        label.setMinWidth(0);
        label.setMaxWidth(Double.MAX_VALUE);
        HBox.setHgrow(label, Priority.ALWAYS);
      }
      row.getChildren().add(label);
    }
    if (!extra.isEmpty()) {
      Label label = new Label(extra);
      label.getStyleClass().add("strong");
      label.setMinWidth(Region.USE_PREF_SIZE);
      row.getChildren().add(label);
    }
    row.getStyleClass().add("inbox-line");
    return row;
  }

  private void bringIntoSight(Node row) {
    double room = list.getHeight() - scroll.getViewportBounds().getHeight();
    if (row.getScene() == null || room <= 0) {
      return;
    }
    Bounds at = row.getBoundsInParent();
    double top = scroll.getVvalue() * room;
    double bottom = top + scroll.getViewportBounds().getHeight();
    if (at.getMinY() < top) {
      scroll.setVvalue(at.getMinY() / room);
    } else if (at.getMaxY() > bottom) {
      scroll.setVvalue((at.getMaxY() - scroll.getViewportBounds().getHeight()) / room);
    }
  }

  private void progress(@Nullable RunningTask now) {
    progress.getChildren().clear();
    if (now == null) {
      return;
    }
    Label words = new Label(now.words());
    words.getStyleClass().add("second");
    ProgressBar bar = new ProgressBar();
    bar.getStyleClass().add("line-bar");
    bar.setPrefWidth(look.px(140));
    bar.progressProperty().bind(now.shareProperty());
    Button stop = new Button("Stop");
    stop.setId("inbox-stop");
    stop.getStyleClass().setAll("button", "choice", "narrow");
    stop.setFocusTraversable(false);
    stop.setOnAction(event -> inbox.stop());
    progress.getChildren().setAll(words, bar, stop);
  }

  private static Region space() {
    Region space = new Region();
    HBox.setHgrow(space, Priority.ALWAYS);
    return space;
  }
}
