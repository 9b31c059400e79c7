package palmturn.app.differences;

import java.util.List;
import java.util.function.Consumer;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import palmturn.app.keys.Action;
import palmturn.app.keys.KeyBindings;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;
import palmturn.settle.Difference;
import palmturn.trial.Decision;
import palmturn.trial.Slap;
import palmturn.trial.Span;

/** Three choices, 84 high, each with its key. */
final class ChoiceRow extends HBox {
  private static final double HEIGHT = 84;
  private static final double ABOVE = 8;

  private final DifferenceReview differences;
  private final KeyBindings keys;
  private final Look look;
  private final Consumer<String> press;

  /** An option: its key, its words, details, and whether it was taken before. */
  private record KeyedChoice(String key, String words, String more, boolean taken) {}

  ChoiceRow(
      DifferenceReview differences,
      KeyBindings keys,
      Look look,
      Consumer<String> press,
      Listeners listeners) {
    super(look.px(12));
    this.differences = differences;
    this.keys = keys;
    this.look = look;
    this.press = press;
    getStyleClass().setAll("choices");
    setId("choices");
    Nodes.setHeight(this, look.px(HEIGHT + ABOVE));
    setPrefHeight(look.px(HEIGHT + ABOVE));
    listeners.onChange(differences.settledProperty(), this::show);
    listeners.onChange(differences.positionProperty(), this::show);
    listeners.onChange(differences.newMark().activeProperty(), this::show);
    listeners.onChange(differences.newMark().slapProperty(), this::show);
    listeners.onChange(differences.newMark().spanProperty(), this::show);
    show();
  }

  private void show() {
    getChildren().setAll(options().stream().map(this::button).toList());
  }

  private List<KeyedChoice> options() {
    ReviewItem item = differences.current();
    DifferenceWords wording = StavesLayout.wording(differences);
    if (wording == null) {
      return List.of();
    }
    if (item == null) {
      return endOptions();
    }
    if (differences.newMark().activeProperty().get()) {
      return newMarkOptions(wording);
    }
    Difference<?> difference = item.difference();
    return List.of(
        new KeyedChoice(
            "↑",
            wording.readingNameCapitalised(false) + " is correct",
            wording.describe(item, difference.a()),
            isTaken(item, Decision.Choice.FIRST)),
        new KeyedChoice(
            "↓",
            wording.readingNameCapitalised(true) + " is correct",
            wording.describe(item, difference.b()),
            isTaken(item, Decision.Choice.SECOND)),
        item.open()
            ? new KeyedChoice("→", "Leave it open", "decide later", false)
            : new KeyedChoice("→", "Next", "the decision stands", false));
  }

  private static boolean isTaken(ReviewItem item, Decision.Choice choice) {
    return item.decision() != null && item.decision().choice() == choice;
  }

  private List<KeyedChoice> newMarkOptions(DifferenceWords wording) {
    Slap slap = differences.newMark().slapProperty().get();
    Span span = differences.newMark().spanProperty().get();
    String words =
        slap != null ? wording.describe(slap, true) : span != null ? wording.describe(span) : "";
    return List.of(
        new KeyedChoice("Enter", "Save this mark", words, false),
        new KeyedChoice(
            keys.of(Action.DELETE), "Nothing there", "neither reading’s mark stands", false),
        new KeyedChoice("Esc", "Cancel", "back to the two readings", false));
  }

  private List<KeyedChoice> endOptions() {
    int open = differences.itemsProperty().get().size() - differences.decidedCount();
    boolean none = differences.itemsProperty().get().isEmpty();
    KeyedChoice back =
        new KeyedChoice("Esc", "Back to the trial", "the board and the strip", false);
    if (none) {
      return differences.savedProperty().get() || differences.readOnly()
          ? List.of(back)
          : List.of(new KeyedChoice("Enter", "Settle", "both readings agree", false), back);
    }
    KeyedChoice before = new KeyedChoice("←", "Previous", "to the last difference", false);
    return open == 0
        ? List.of(before, back)
        : List.of(
            before, new KeyedChoice("→", "Review again", "from the first open one", false), back);
  }

  private Button button(KeyedChoice choice) {
    Label key = Nodes.label(choice.key(), "choice-key");
    key.setMinSize(Region.USE_PREF_SIZE, look.px(40));
    key.setPrefWidth(look.px(choice.key().length() > 1 ? 58 : 40));
    key.setMaxHeight(look.px(40));
    Label words = Nodes.label(choice.words(), "big");
    words.setWrapText(true);
    Label more = Nodes.label(choice.more(), "choice-more");
    more.setWrapText(true);
    VBox text = new VBox(look.px(2), words, more);
    text.setAlignment(Pos.CENTER_LEFT);
    text.setMinWidth(0);
    HBox line = Nodes.row(look.px(14), key, text);
    line.setMinWidth(0);
    Button button =
        Nodes.button(
            "choice-" + choice.key(),
            "",
            () -> press.accept(choice.key()),
            "choice",
            "wide-choice");
    button.setGraphic(line);
    Nodes.setStyle(button, "taken-choice", choice.taken());
    button.setAccessibleText(choice.words() + ", " + choice.more());
    button.setFocusTraversable(false);
    button.setMinWidth(0);
    button.setPrefWidth(look.px(328));
    button.setMaxWidth(differences.current() == null ? look.px(328) : Double.MAX_VALUE);
    // Words that wrap would make it as high as if it were one word wide.
    button.setPrefHeight(look.px(HEIGHT));
    Nodes.setHeight(button, look.px(HEIGHT));
    HBox.setHgrow(button, Priority.ALWAYS);
    return button;
  }
}
