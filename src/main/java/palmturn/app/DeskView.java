package palmturn.app;

import java.io.File;
import java.nio.file.Path;
import java.util.List;
import javafx.beans.InvalidationListener;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.DragEvent;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.TransferMode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
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
import palmturn.app.look.Sentence;
import palmturn.app.pair.PairView;
import palmturn.app.session.SessionFlow;
import palmturn.app.sheet.Sheets;
import palmturn.app.stage.EstimateBar;
import palmturn.app.stage.SoundPlayer;
import palmturn.app.stage.StageView;
import palmturn.app.strip.StripView;
import palmturn.app.tally.TallyView;
import palmturn.settings.RecentSessions;

/** All panes on the grid. Built anew when the theme or the size of text changes. */
final class DeskView extends StackPane implements Keyboard.Face {
  private final Desk desk;
  private final SessionFlow flow;
  private final Look look;
  private final Runnable printKeys;
  private final Exporter exporter;
  private final Keyboard keyboard;
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
      Exporter handOver,
      Listeners follow) {
    this.printKeys = printKeys;
    this.exporter = handOver;
    this.desk = desk;
    this.flow = flow;
    this.look = look;
    keyboard = new Keyboard(desk, flow.inbox(), look, this, follow);
    getStyleClass().setAll("desk");
    board =
        new BoardView(
            desk.board(), desk.keys().map(), flow::droppedOn, look, this::pressed, follow);
    board.setMinWidth(look.px(240));
    board.setMaxWidth(look.px(240));
    line = new EstimateBar(desk.estimation().run(), desk.keys(), look, this::pressed, follow);
    stage =
        new StageView(
            desk.stage(),
            desk.places().placing(),
            desk.estimation().found(),
            desk::elbowLimitCm,
            line,
            look,
            follow);
    tally = new TallyView(desk.tally(), look, follow);
    right.setMinWidth(look.px(311));
    right.setMaxWidth(look.px(311));
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
            desk.reviewing().differences(),
            desk.strip().outlineProperty(),
            desk.keys(),
            look,
            this::pressed,
            follow);
    VBox one = new VBox(row, strip);
    one.heightProperty().addListener((height, before, now) -> strip.fitInto(now.doubleValue()));
    differences.visibleProperty().bind(desk.reviewing().differences().trialProperty().isNotNull());
    pair = new PairView(desk.pairing().pair(), desk.keys().map(), look, this::pressed, follow);
    pair.visibleProperty().bind(desk.pairing().pair().activeProperty());
    one.visibleProperty().bind(differences.visibleProperty().or(pair.visibleProperty()).not());
    StackPane body = new StackPane(one, differences, pair);
    body.setMinHeight(0);
    VBox.setVgrow(body, Priority.ALWAYS);
    HeaderView header = new HeaderView(desk, handOver.run(), look, this::pressed, follow);
    VBox panes = new VBox();
    inboxView = new InboxView(flow.inbox(), look, this::pressed, follow);
    follow.onValue(
        flow.inbox().shownProperty(),
        shown -> {
          panes.getChildren().setAll(header, shown ? inboxView : body, hints);
          offer();
          focusStrip();
        });
    Sheets sheets = new Sheets(desk, flow, look, this::pressed, this::focusStrip, follow);
    getChildren().setAll(panes, troubleLine(), sheets);
    follow.onChange(flow.inbox().foundProperty(), this::offer);
    follow.onChange(flow.inbox().searchProperty(), this::offer);
    follow.onChange(desk.folderProperty(), this::place);
    follow.onChange(desk.readOnlyProperty(), this::place);
    follow.onChange(flow.recentsProperty(), this::place);
    follow.onChange(desk.stage().framesProperty(), this::place);
    follow.onChange(board.focusedProperty(), this::place);
    follow.onChange(desk.places().placing().activeProperty(), this::offer);
    follow.onChange(desk.estimation().found().estimateProperty(), this::offer);
    follow.onChange(desk.estimation().found().hiddenProperty(), this::offer);
    follow.onChange(desk.estimation().run().trialProperty(), this::offer);
    follow.onChange(desk.marking().readingProperty(), this::offer);
    follow.onChange(desk.fast().pass().positionProperty(), this::pass);
    follow.onChange(desk.fast().typing().activeProperty(), this::pass);
    follow.onChange(desk.reviewing().offeredProperty(), this::offer);
    follow.onChange(one.visibleProperty(), this::review);
    follow.onChange(desk.reviewing().differences().positionProperty(), this::offer);
    follow.onChange(desk.reviewing().differences().settledProperty(), this::offer);
    follow.onChange(desk.reviewing().differences().newMark().activeProperty(), this::offer);
    place();
    pass();
    addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
    setOnDragOver(this::dragOver);
    setOnDragDropped(this::dropped);
  }

  private HBox troubleLine() {
    Label words = new Label();
    words.setId("trouble");
    words.textProperty().bind(desk.troubleProperty().map(Sentence::of));
    words.getStyleClass().add("trouble-words");
    Label close = new Label("Esc");
    close.getStyleClass().add("key");
    close.setMinWidth(Region.USE_PREF_SIZE);
    HBox line = new HBox(look.px(12), words, close);
    line.setAlignment(Pos.CENTER_LEFT);
    line.getStyleClass().setAll("trouble");
    line.setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
    line.setOnMouseClicked(event -> desk.forgetTrouble());
    line.visibleProperty().bind(desk.troubleProperty().isNotEmpty());
    line.translateYProperty().set(look.px(56));
    StackPane.setAlignment(line, Pos.TOP_CENTER);
    return line;
  }

  private void place() {
    boolean open = desk.folderProperty().get() != null;
    boolean filmed = desk.stage().framesProperty().get() != null;
    if (open && filmed) {
      middle.getChildren().setAll(stage, fast);
    } else {
      middle.getChildren().setAll(new FilmingGuide(look));
    }
    right.getChildren().setAll(open && filmed ? tally : start(open));
    offer();
  }

  private void pass() {
    var place = desk.fast().pass().positionProperty().get();
    boolean typing = desk.fast().typing().activeProperty().get();
    fast.setText(
        place != null
            ? place.words()
            : typing
                ? "Typing along: %s palm, %s back; %s stops, and the marks settle"
                    .formatted(
                        desk.keys().of(Action.PALM),
                        desk.keys().of(Action.BACK),
                        desk.keys().of(Action.TYPE_ALONG))
                : "");
    fast.setVisible(!fast.getText().isEmpty());
    if (place != null && board.isFocused()) {
      focusStrip();
    }
    strip.draw();
    offer();
  }

  private void review() {
    focusStrip();
    offer();
  }

  private void offer() {
    hints.show(keyboard.hints(), desk.keys().map());
    line.offer(keyboard.offer());
  }

  private void pressed(String chord) {
    keyboard.press(chord);
  }

  private void pressed(KeyEvent event) {
    String chord = Chord.of(event);
    boolean taken = keyboard.waitsForKey() || !chord.isEmpty();
    if (taken && keyboard.press(chord)) {
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
    DirectoryChooser chooser = new DirectoryChooser();
    chooser.setTitle("Open a session folder");
    File chosen = chooser.showDialog(getScene().getWindow());
    if (chosen != null) {
      desk.open(chosen.toPath());
    }
  }

  @Override
  public void chooseInbox() {
    DirectoryChooser chooser = new DirectoryChooser();
    chooser.setTitle("Choose the folder in which sessions arrive");
    File chosen = chooser.showDialog(getScene().getWindow());
    if (chosen != null) {
      flow.inbox().choose(chosen.toPath());
    }
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
  public void askDrill() {
    flow.askDrill();
  }

  @Override
  public void askReader() {
    flow.askReader();
  }

  @Override
  public void showAthlete() {
    flow.athleteForm().show();
  }

  @Override
  public void showProgress() {
    flow.showProgress();
  }

  @Override
  public void showLadder() {
    flow.showLadder();
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
  public Exporter exporter() {
    return exporter;
  }

  @Override
  public void printKeys() {
    printKeys.run();
  }

  @Override
  public void redrawStrip() {
    strip.draw();
  }

  /** Lets a clip's sound be heard while it plays at full speed. */
  static void connect(SoundPlayer voice, Desk desk) {
    InvalidationListener follow =
        changed -> {
          var sound = desk.soundProperty().get();
          boolean aloud =
              desk.stage().playingProperty().get()
                  && desk.stage().speedProperty().get() == palmturn.app.stage.PlaySpeed.FULL;
          if (aloud && sound != null) {
            voice.play(sound, desk.stage().timeS());
          } else {
            voice.stop();
          }
        };
    desk.stage().playingProperty().addListener(follow);
    desk.stage().speedProperty().addListener(follow);
  }

  /** The guide scrolls where the window is too low for all of it. */
  private ScrollPane start(boolean open) {
    ScrollPane scroll =
        new ScrollPane(new StartPane(open, flow, desk.keys().map(), look, this::pressed));
    scroll.setFitToWidth(true);
    scroll.setFitToHeight(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.setFocusTraversable(false);
    return scroll;
  }
}
