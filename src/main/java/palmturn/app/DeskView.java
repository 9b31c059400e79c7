package palmturn.app;

import java.io.File;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.DragEvent;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.TransferMode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.stage.DirectoryChooser;
import javafx.stage.FileChooser;
import org.jspecify.annotations.Nullable;
import palmturn.app.board.BoardView;
import palmturn.app.desk.Desk;
import palmturn.app.differences.ReviewView;
import palmturn.app.hints.KeyHintsView;
import palmturn.app.inbox.InboxView;
import palmturn.app.keys.Action;
import palmturn.app.keys.Chord;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.app.pair.PairView;
import palmturn.app.session.SessionFlow;
import palmturn.app.sheet.Sheets;
import palmturn.app.stage.EstimateBar;
import palmturn.app.stage.StageView;
import palmturn.app.strip.StripView;
import palmturn.app.tally.TallyView;
import palmturn.settings.RecentSessions;

/** All panes on the grid; built anew when the theme or the size of text changes. */
final class DeskView extends StackPane implements WindowKeys.Window {
  private final Desk desk;
  private final SessionFlow flow;
  private final Look look;
  private final Runnable printKeys;
  private final WindowKeys keys;
  private final BoardView board;
  private final StripView strip;
  private final KeyHintsView hints;
  private final StackPane middle = new StackPane();
  private final StackPane right = new StackPane();
  private final StageView stage;
  private final EstimateBar line;
  private final TallyView tally;
  private final ReviewView differences;
  private final PairView pair;
  private final Label fast = new Label();
  private final InboxView inboxView;

  DeskView(
      Desk desk,
      SessionFlow flow,
      Look look,
      Runnable printKeys,
      Exporter exporter,
      Listeners follow) {
    this.printKeys = printKeys;
    this.desk = desk;
    this.flow = flow;
    this.look = look;
    keys = WindowKeys.of(desk, flow, exporter, look, this, follow);
    getStyleClass().setAll("desk");
    board =
        new BoardView(
            desk.board(),
            desk.prompts().keys().map(),
            flow::droppedOn,
            look,
            this::pressed,
            follow);
    Nodes.setWidth(board, look.px(240));
    line =
        new EstimateBar(
            desk.estimation().run(), desk.prompts().keys(), look, this::pressed, follow);
    stage =
        new StageView(
            desk.stage(),
            desk.places().placing(),
            desk.estimation().shown(),
            desk.session()::elbowLimitCm,
            line,
            look,
            follow);
    tally = new TallyView(desk.tally(), look, follow);
    Nodes.setWidth(right, look.px(311));
    right.setMinHeight(0);
    middle.setMinSize(0, 0);
    strip = new StripView(desk.strip(), desk.stage(), desk.marking(), look, follow);
    hints = new KeyHintsView(look, this::pressed);
    fast.setId("fast");
    fast.getStyleClass().setAll("label", "on-picture", "on-picture-large");
    fast.setVisible(false);
    fast.setMouseTransparent(true);
    StackPane.setAlignment(fast, Pos.TOP_CENTER);
    fast.translateYProperty().set(look.px(16));
    HBox.setHgrow(middle, Priority.ALWAYS);
    HBox row = new HBox(board, middle, right);
    row.setMinHeight(0);
    VBox.setVgrow(row, Priority.ALWAYS);
    differences =
        new ReviewView(
            desk.review().differences(),
            desk.strip().outlineProperty(),
            desk.prompts().keys(),
            look,
            this::pressed,
            follow);
    VBox one = new VBox(row, strip);
    one.heightProperty().addListener((height, before, now) -> strip.fitInto(now.doubleValue()));
    differences.visibleProperty().bind(desk.review().differences().trialProperty().isNotNull());
    pair =
        new PairView(
            desk.pairing().pair(), desk.prompts().keys().map(), look, this::pressed, follow);
    pair.visibleProperty().bind(desk.pairing().pair().activeProperty());
    one.visibleProperty().bind(differences.visibleProperty().or(pair.visibleProperty()).not());
    StackPane body = new StackPane(one, differences, pair);
    body.setMinHeight(0);
    VBox.setVgrow(body, Priority.ALWAYS);
    HeaderView header =
        new HeaderView(
            new HeaderView.Lines(
                desk.session().headingProperty(),
                desk.marking().stepProperty(),
                desk.figures().stateProperty(),
                desk.session().saving().wordsProperty(),
                desk.session().readOnlyProperty()),
            desk.review(),
            desk.messages(),
            exporter.run(),
            desk.prompts().keys(),
            look,
            this::pressed,
            follow);
    VBox panes = new VBox();
    inboxView = new InboxView(flow.inbox(), look, this::pressed, follow);
    follow.onValue(
        flow.inbox().shownProperty(),
        shown -> {
          panes.getChildren().setAll(header, shown ? inboxView : body, hints);
          showHints();
          focusStrip();
        });
    Sheets sheets =
        new Sheets(
            desk.session(),
            desk.prompts(),
            desk.messages(),
            flow,
            look,
            this::pressed,
            this::focusStrip,
            follow);
    getChildren().setAll(panes, new NoticeLine(desk.prompts().notices(), look, follow), sheets);
    follow.onChange(flow.inbox().foundProperty(), this::showHints);
    follow.onChange(flow.inbox().searchProperty(), this::showHints);
    follow.onChange(desk.session().folderProperty(), this::arrange);
    follow.onChange(desk.session().readOnlyProperty(), this::arrange);
    follow.onChange(flow.recentsProperty(), this::arrange);
    follow.onChange(desk.stage().framesProperty(), this::arrange);
    follow.onChange(board.focusedProperty(), this::arrange);
    follow.onChange(desk.places().placing().activeProperty(), this::showHints);
    follow.onChange(desk.estimation().shown().estimateProperty(), this::showHints);
    follow.onChange(desk.estimation().shown().hiddenProperty(), this::showHints);
    follow.onChange(desk.estimation().run().trialProperty(), this::showHints);
    follow.onChange(desk.marking().readingProperty(), this::showHints);
    follow.onChange(desk.fast().pass().positionProperty(), this::showPass);
    follow.onChange(desk.fast().typing().activeProperty(), this::showPass);
    follow.onChange(desk.review().offeredProperty(), this::showHints);
    follow.onChange(
        one.visibleProperty(),
        () -> {
          focusStrip();
          showHints();
        });
    follow.onChange(desk.review().differences().positionProperty(), this::showHints);
    follow.onChange(desk.review().differences().settledProperty(), this::showHints);
    follow.onChange(desk.review().differences().newMark().activeProperty(), this::showHints);
    arrange();
    showPass();
    addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
    setOnDragOver(this::dragOver);
    setOnDragDropped(this::dropped);
  }

  private void arrange() {
    boolean open = desk.session().folderProperty().get() != null;
    boolean filmed = desk.stage().framesProperty().get() != null;
    if (open && filmed) {
      middle.getChildren().setAll(stage, fast);
    } else {
      middle.getChildren().setAll(new FilmingGuide(look));
    }
    right.getChildren().setAll(open && filmed ? tally : start(open));
    showHints();
  }

  private void showPass() {
    var place = desk.fast().pass().positionProperty().get();
    boolean typing = desk.fast().typing().activeProperty().get();
    fast.setText(
        place != null
            ? place.words()
            : typing
                ? "Typing along: %s palm, %s back; %s stops, and the marks settle"
                    .formatted(
                        desk.prompts().keys().of(Action.PALM),
                        desk.prompts().keys().of(Action.BACK),
                        desk.prompts().keys().of(Action.TYPE_ALONG))
                : "");
    fast.setVisible(!fast.getText().isEmpty());
    if (place != null && board.isFocused()) {
      focusStrip();
    }
    strip.draw();
    showHints();
  }

  private void showHints() {
    hints.show(keys.hints().hints(), desk.prompts().keys().map());
    line.offer(keys.hints().offer());
  }

  private void pressed(String chord) {
    keys.keyboard().press(chord);
  }

  private void pressed(KeyEvent event) {
    String chord = Chord.of(event);
    boolean taken = keys.keyboard().waitsForKey() || !chord.isEmpty();
    if (taken && keys.keyboard().press(chord)) {
      event.consume();
    }
  }

  private void dragOver(DragEvent event) {
    if (event.getDragboard().hasFiles()) {
      event.acceptTransferModes(TransferMode.COPY);
    }
    event.consume();
  }

  private void dropped(DragEvent event) {
    List<File> files = event.getDragboard().getFiles();
    flow.dropped(files.stream().map(File::toPath).toList());
    event.setDropCompleted(true);
    event.consume();
  }

  @Override
  public void chooseSession() {
    chooseFolder("Open a session folder", desk.opener()::open);
  }

  private void chooseFolder(String title, Consumer<Path> then) {
    DirectoryChooser chooser = new DirectoryChooser();
    chooser.setTitle(title);
    File chosen = chooser.showDialog(getScene().getWindow());
    if (chosen != null) {
      then.accept(chosen.toPath());
    }
  }

  @Override
  public void chooseInbox() {
    chooseFolder("Choose the folder in which sessions arrive", flow.inbox()::choose);
  }

  @Override
  public void chooseClips() {
    FileChooser chooser = new FileChooser();
    chooser.setTitle("Add clips");
    @Nullable List<File> chosen = chooser.showOpenMultipleDialog(getScene().getWindow());
    if (chosen != null) {
      List<Path> clips = chosen.stream().map(File::toPath).toList();
      flow.chosen(clips);
    }
  }

  @Override
  public boolean boardFocused() {
    return board.isFocused();
  }

  @Override
  public boolean stageFocused() {
    return stage.isFocused();
  }

  @Override
  public void focusStrip() {
    if (flow.inbox().shownProperty().get()) {
      inboxView.requestFocus();
      return;
    }
    (differences.isVisible() ? differences : pair.isVisible() ? pair : strip).requestFocus();
  }

  @Override
  public boolean buttonFocused() {
    return getScene().getFocusOwner() instanceof Button;
  }

  @Override
  public void openRecent(String number) {
    List<RecentSessions.Entry> recents = flow.recentsProperty().get();
    int at = Integer.parseInt(number) - 1;
    if (at < recents.size()) {
      flow.open(recents.get(at));
    }
  }

  @Override
  public void printKeys() {
    printKeys.run();
  }

  @Override
  public void redrawStrip() {
    strip.draw();
  }

  /** The guide scrolls where the window is too low for all of it. */
  private ScrollPane start(boolean open) {
    ScrollPane scroll =
        new ScrollPane(new StartPane(open, flow, desk.prompts().keys().map(), look, this::pressed));
    Nodes.scrollVertically(scroll);
    scroll.setFitToHeight(true);
    return scroll;
  }
}
