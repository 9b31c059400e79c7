package palmturn.app.differences;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javafx.application.Platform;
import javafx.beans.binding.Bindings;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.skin.VirtualFlow;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import palmturn.app.keys.Action;
import palmturn.app.keys.KeyBindings;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.settle.Agreement;
import palmturn.settle.Comparison;
import palmturn.settle.InWords;
import palmturn.settle.Settled;

/** The list, 384 wide: what is open, worst first, what is decided, and how well the two agree. */
final class ListPane extends VBox {
  private static final double WIDTH = 384;
  private static final double FOOT_SHARE = 0.4;

  private final DifferenceReview differences;
  private final KeyBindings keys;
  private final Look look;
  private final Label count = label("differences-count", "title");
  private final Label progress = label("differences-progress", "second");
  private final HBox showPair;
  private final ListView<Row> list = new ListView<>();
  private final VBox showAgreement;
  private @Nullable Comparison shownComparison;

  /** A line of the list: a heading, or a difference. */
  sealed interface Row {
    record Heading(String words) implements Row {}

    record Entry(ReviewItem item) implements Row {}
  }

  ListPane(
      DifferenceReview differences,
      KeyBindings keys,
      Look look,
      Consumer<String> press,
      Listeners follow) {
    this.differences = differences;
    this.keys = keys;
    this.look = look;
    getStyleClass().setAll("differences-list");
    setMinWidth(look.px(WIDTH));
    setMaxWidth(look.px(WIDTH));
    Region space = new Region();
    HBox.setHgrow(space, Priority.ALWAYS);
    HBox head = new HBox(count, space, progress);
    head.getStyleClass().add("list-head");
    showPair = new HBox(look.px(8));
    showPair.setAlignment(Pos.CENTER_LEFT);
    showPair.getStyleClass().add("list-pairs");
    showAgreement = new VBox(look.px(4));
    showAgreement.setId("agreement");
    showAgreement.getStyleClass().add("list-foot");
    list.setId("differences-rows");
    list.setFocusTraversable(false);
    list.setCellFactory(view -> new RowCell(differences, look));
    VBox.setVgrow(list, Priority.ALWAYS);
    ScrollPane under = new ScrollPane(showAgreement);
    under.setFitToWidth(true);
    under.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    under.setFocusTraversable(false);
    under.setMinHeight(Region.USE_PREF_SIZE);
    // Where it is cramped the sentences scroll before the list does.
    under
        .prefHeightProperty()
        .bind(
            Bindings.min(
                showAgreement.heightProperty().add(1), heightProperty().multiply(FOOT_SHARE)));
    getChildren().setAll(head, showPair, list, under);
    follow.onChange(differences.settledProperty(), this::show);
    follow.onChange(differences.positionProperty(), this::scrollToCurrent);
    follow.onChange(differences.comparison().pairsProperty(), () -> showPair(press));
    follow.onChange(differences.comparison().pairProperty(), () -> showPair(press));
    follow.onChange(keys.mapProperty(), () -> showPair(press));
    showPair(press);
    show();
  }

  private static Label label(String id, String style) {
    Label label = new Label();
    label.setId(id);
    label.getStyleClass().add(style);
    return label;
  }

  private void showPair(Consumer<String> press) {
    List<ReadingPair> all = differences.comparison().pairsProperty().get();
    ReadingPair now = differences.comparison().pairProperty().get();
    showPair.getChildren().clear();
    boolean choice = all.size() > 1 && now != null;
    showPair.setVisible(choice);
    showPair.setManaged(choice);
    if (choice) {
      Label words =
          new Label("%s, %d of %d".formatted(now.words(), all.indexOf(now) + 1, all.size()));
      words.getStyleClass().add("second");
      Region space = new Region();
      HBox.setHgrow(space, Priority.ALWAYS);
      Label key = new Label(keys.of(Action.OTHER_PAIR));
      key.getStyleClass().add("key");
      Label other = new Label("another pair");
      other.getStyleClass().add("second");
      key.setOnMouseClicked(event -> press.accept(keys.of(Action.OTHER_PAIR)));
      other.setOnMouseClicked(event -> press.accept(keys.of(Action.OTHER_PAIR)));
      showPair.getChildren().setAll(words, space, key, other);
    }
  }

  private void show() {
    List<ReviewItem> all = differences.itemsProperty().get();
    Settled settled = differences.settledProperty().get();
    int decided = differences.decidedCount();
    count.setText(
        settled == null
            ? "Comparing…"
            : all.isEmpty()
                ? "Nothing differs"
                : all.size() + (all.size() == 1 ? " difference" : " differences"));
    progress.setText(all.isEmpty() ? "" : decided + " of " + all.size() + " decided");
    List<Row> rows = new ArrayList<>();
    all.stream().filter(ReviewItem::open).forEach(item -> rows.add(new Row.Entry(item)));
    if (decided > 0) {
      rows.add(new Row.Heading("Decided"));
      all.stream().filter(item -> !item.open()).forEach(item -> rows.add(new Row.Entry(item)));
    }
    list.getItems().setAll(rows);
    showAgreement(settled);
    scrollToCurrent();
  }

  /** Decisions change nothing in how well the two agree. */
  private void showAgreement(@Nullable Settled settled) {
    Comparison now = settled == null ? null : settled.comparison();
    if (now == shownComparison) {
      return;
    }
    shownComparison = now;
    showAgreement.getChildren().clear();
    if (now == null) {
      return;
    }
    Agreement agreement = Agreement.of(now);
    showAgreement
        .getChildren()
        .add(words(agreement.independent() ? "Independent readings" : "Not independent", "name"));
    InWords.of(agreement, now.a().name(), now.b().name())
        .forEach(sentence -> showAgreement.getChildren().add(words(sentence, "small")));
    differences
        .comparison()
        .notesProperty()
        .get()
        .forEach(note -> showAgreement.getChildren().add(words("Note: " + note + ".", "small")));
  }

  private static Label words(String text, String style) {
    Label label = new Label(text);
    label.getStyleClass().add(style);
    label.setWrapText(true);
    label.setMinHeight(Region.USE_PREF_SIZE);
    return label;
  }

  private void scrollToCurrent() {
    list.refresh();
    // Where its lines lie the list knows only once it has laid them out.
    Platform.runLater(this::scrollNow);
  }

  /** Brings the line that is looked at into sight, moving no more than needed. */
  private void scrollNow() {
    ReviewItem current = differences.current();
    int line = current == null ? -1 : list.getItems().indexOf(new Row.Entry(current));
    if (line >= 0 && list.lookup(".virtual-flow") instanceof VirtualFlow<?> flow) {
      flow.layout();
      flow.scrollTo(line);
    }
  }
}
