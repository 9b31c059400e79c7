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
import palmturn.app.keys.Keys;
import palmturn.app.look.Follow;
import palmturn.app.look.Look;
import palmturn.settle.Agreement;
import palmturn.settle.Comparison;
import palmturn.settle.InWords;
import palmturn.settle.Settled;

/** The list, 384 wide: what is open, worst first, what is decided, and how well the two agree. */
final class ListPane extends VBox {
  private static final double WIDTH = 384;
  private static final double FOOT_SHARE = 0.4;

  private final Differences differences;
  private final Keys keys;
  private final Look look;
  private final Label count = label("differences-count", "title");
  private final Label progress = label("differences-progress", "second");
  private final HBox pairs;
  private final ListView<Row> list = new ListView<>();
  private final VBox foot;
  private @Nullable Comparison told;

  /** A line of the list: a heading, or a difference. */
  sealed interface Row {
    record Heading(String words) implements Row {}

    record Of(Item item) implements Row {}
  }

  ListPane(Differences differences, Keys keys, Look look, Consumer<String> press, Follow follow) {
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
    pairs = new HBox(look.px(8));
    pairs.setAlignment(Pos.CENTER_LEFT);
    pairs.getStyleClass().add("list-pairs");
    foot = new VBox(look.px(4));
    foot.setId("agreement");
    foot.getStyleClass().add("list-foot");
    list.setId("differences-rows");
    list.setFocusTraversable(false);
    list.setCellFactory(view -> new RowCell(differences, look));
    VBox.setVgrow(list, Priority.ALWAYS);
    ScrollPane under = new ScrollPane(foot);
    under.setFitToWidth(true);
    under.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    under.setFocusTraversable(false);
    under.setMinHeight(Region.USE_PREF_SIZE);
    // Where it is cramped the sentences scroll before the list does.
    under
        .prefHeightProperty()
        .bind(Bindings.min(foot.heightProperty().add(1), heightProperty().multiply(FOOT_SHARE)));
    getChildren().setAll(head, pairs, list, under);
    follow.changes(differences.settledProperty(), this::show);
    follow.changes(differences.atProperty(), this::arrive);
    follow.changes(differences.compared().pairsProperty(), () -> pairs(press));
    follow.changes(differences.compared().pairProperty(), () -> pairs(press));
    follow.changes(keys.mapProperty(), () -> pairs(press));
    pairs(press);
    show();
  }

  private static Label label(String id, String style) {
    Label label = new Label();
    label.setId(id);
    label.getStyleClass().add(style);
    return label;
  }

  private void pairs(Consumer<String> press) {
    List<Pair> all = differences.compared().pairsProperty().get();
    Pair now = differences.compared().pairProperty().get();
    pairs.getChildren().clear();
    boolean choice = all.size() > 1 && now != null;
    pairs.setVisible(choice);
    pairs.setManaged(choice);
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
      pairs.getChildren().setAll(words, space, key, other);
    }
  }

  private void show() {
    List<Item> all = differences.itemsProperty().get();
    Settled settled = differences.settledProperty().get();
    int decided = differences.decided();
    count.setText(
        settled == null
            ? "Comparing…"
            : all.isEmpty()
                ? "Nothing differs"
                : all.size() + (all.size() == 1 ? " difference" : " differences"));
    progress.setText(all.isEmpty() ? "" : decided + " of " + all.size() + " decided");
    List<Row> rows = new ArrayList<>();
    all.stream().filter(Item::open).forEach(item -> rows.add(new Row.Of(item)));
    if (decided > 0) {
      rows.add(new Row.Heading("Decided"));
      all.stream().filter(item -> !item.open()).forEach(item -> rows.add(new Row.Of(item)));
    }
    list.getItems().setAll(rows);
    foot(settled);
    arrive();
  }

  /** Decisions change nothing in how well the two agree. */
  private void foot(@Nullable Settled settled) {
    Comparison now = settled == null ? null : settled.comparison();
    if (now == told) {
      return;
    }
    told = now;
    foot.getChildren().clear();
    if (now == null) {
      return;
    }
    Agreement agreement = Agreement.of(now);
    foot.getChildren()
        .add(words(agreement.independent() ? "Independent readings" : "Not independent", "name"));
    InWords.of(agreement, now.a().name(), now.b().name())
        .forEach(sentence -> foot.getChildren().add(words(sentence, "small")));
    differences
        .compared()
        .notesProperty()
        .get()
        .forEach(note -> foot.getChildren().add(words("Note: " + note + ".", "small")));
  }

  private static Label words(String text, String style) {
    Label label = new Label(text);
    label.getStyleClass().add(style);
    label.setWrapText(true);
    label.setMinHeight(Region.USE_PREF_SIZE);
    return label;
  }

  private void arrive() {
    list.refresh();
    // Where its lines lie the list knows only once it has laid them out.
    Platform.runLater(this::bringIn);
  }

  /** Brings the line that is looked at into sight, moving no more than needed. */
  private void bringIn() {
    Item current = differences.current();
    int line = current == null ? -1 : list.getItems().indexOf(new Row.Of(current));
    if (line >= 0 && list.lookup(".virtual-flow") instanceof VirtualFlow<?> flow) {
      flow.layout();
      flow.scrollTo(line);
    }
  }
}
