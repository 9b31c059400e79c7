package palmturn.app.differences;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import javafx.application.Platform;
import javafx.beans.binding.Bindings;
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
import palmturn.app.look.Nodes;
import palmturn.settle.Agreement;
import palmturn.settle.ReadingComparison;
import palmturn.settle.SettledTrial;
import palmturn.wording.AgreementSentences;

/** The list of differences, 384 wide: open ones, worst first, decided ones, and the agreement. */
final class ListPane extends VBox {
  private static final double WIDTH = 384;
  private static final double FOOT_SHARE = 0.4;

  private final DifferenceReview differences;
  private final KeyBindings keys;
  private final Look look;
  private final Label count = Nodes.named("differences-count", "title");
  private final Label progress = Nodes.named("differences-progress", "second");
  private final HBox pairs;
  private final ListView<Row> list = new ListView<>();
  private final VBox foot;
  private @Nullable ReadingComparison shownComparison;

  /** A line of the list: a heading, or a difference. */
  sealed interface Row {
    record Heading(String words) implements Row {}

    record Item(ReviewItem item) implements Row {}
  }

  ListPane(
      DifferenceReview differences,
      KeyBindings keys,
      Look look,
      Consumer<String> press,
      Listeners listeners) {
    this.differences = differences;
    this.keys = keys;
    this.look = look;
    getStyleClass().setAll("differences-list");
    Nodes.setWidth(this, look.px(WIDTH));
    HBox head = new HBox(count, Nodes.space(), progress);
    head.getStyleClass().add("list-head");
    pairs = Nodes.row(look.px(8));
    pairs.getStyleClass().add("list-pairs");
    foot = new VBox(look.px(4));
    foot.setId("agreement");
    foot.getStyleClass().add("list-foot");
    list.setId("differences-rows");
    list.setFocusTraversable(false);
    list.setCellFactory(view -> new RowCell(differences, look));
    VBox.setVgrow(list, Priority.ALWAYS);
    ScrollPane under = new ScrollPane(foot);
    Nodes.scrollVertically(under);
    under.setMinHeight(Region.USE_PREF_SIZE);
    // Where it is cramped the sentences scroll before the list does.
    under
        .prefHeightProperty()
        .bind(Bindings.min(foot.heightProperty().add(1), heightProperty().multiply(FOOT_SHARE)));
    getChildren().setAll(head, pairs, list, under);
    listeners.onChange(differences.settledProperty(), this::show);
    listeners.onChange(differences.positionProperty(), this::scrollToCurrent);
    listeners.onChange(differences.comparison().pairsProperty(), () -> showPair(press));
    listeners.onChange(differences.comparison().pairProperty(), () -> showPair(press));
    listeners.onChange(keys.mapProperty(), () -> showPair(press));
    showPair(press);
    show();
  }

  private void showPair(Consumer<String> press) {
    List<ReadingPair> all = differences.comparison().pairsProperty().get();
    ReadingPair now = differences.comparison().pairProperty().get();
    pairs.getChildren().clear();
    boolean choice = all.size() > 1 && now != null;
    Nodes.setShown(pairs, choice);
    if (choice) {
      Label words =
          Nodes.label(
              String.format(
                  Locale.ROOT, "%s, %d of %d", now.words(), all.indexOf(now) + 1, all.size()),
              "second");
      Label key = Nodes.label(keys.of(Action.OTHER_PAIR), "key");
      Label other = Nodes.label("another pair", "second");
      key.setOnMouseClicked(event -> press.accept(keys.of(Action.OTHER_PAIR)));
      other.setOnMouseClicked(event -> press.accept(keys.of(Action.OTHER_PAIR)));
      pairs.getChildren().setAll(words, Nodes.space(), key, other);
    }
  }

  private void show() {
    List<ReviewItem> all = differences.itemsProperty().get();
    SettledTrial settled = differences.settledProperty().get();
    int decided = differences.decidedCount();
    count.setText(
        settled == null
            ? "Comparing…"
            : all.isEmpty()
                ? "Nothing differs"
                : all.size() + (all.size() == 1 ? " difference" : " differences"));
    progress.setText(all.isEmpty() ? "" : decided + " of " + all.size() + " decided");
    List<Row> rows = new ArrayList<>();
    all.stream().filter(ReviewItem::open).forEach(item -> rows.add(new Row.Item(item)));
    if (decided > 0) {
      rows.add(new Row.Heading("Decided"));
      all.stream().filter(item -> !item.open()).forEach(item -> rows.add(new Row.Item(item)));
    }
    list.getItems().setAll(rows);
    showAgreement(settled);
    scrollToCurrent();
  }

  /** Shows the agreement, which decisions don't change. */
  private void showAgreement(@Nullable SettledTrial settled) {
    ReadingComparison now = settled == null ? null : settled.comparison();
    if (now == shownComparison) {
      return;
    }
    shownComparison = now;
    foot.getChildren().clear();
    if (now == null) {
      return;
    }
    Agreement agreement = Agreement.of(now);
    foot.getChildren()
        .add(
            Nodes.wrapped(
                agreement.independent() ? "Independent readings" : "Not independent", "name"));
    AgreementSentences.of(agreement, now.a().name(), now.b().name())
        .forEach(sentence -> foot.getChildren().add(Nodes.wrapped(sentence, "small")));
    differences
        .comparison()
        .notesProperty()
        .get()
        .forEach(note -> foot.getChildren().add(Nodes.wrapped("Note: " + note + ".", "small")));
  }

  private void scrollToCurrent() {
    list.refresh();
    // Where its lines lie the list knows only once it has laid them out.
    Platform.runLater(this::scrollNow);
  }

  /** Brings the line that is looked at into sight, moving no more than needed. */
  private void scrollNow() {
    ReviewItem current = differences.current();
    int line = current == null ? -1 : list.getItems().indexOf(new Row.Item(current));
    if (line >= 0 && list.lookup(".virtual-flow") instanceof VirtualFlow<?> flow) {
      flow.layout();
      flow.scrollTo(line);
    }
  }
}
