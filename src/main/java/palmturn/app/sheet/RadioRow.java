package palmturn.app.sheet;

import java.util.List;
import java.util.Objects;
import javafx.beans.property.ObjectProperty;
import javafx.scene.control.RadioButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.HBox;
import org.jspecify.annotations.Nullable;
import palmturn.app.look.Listeners;
import palmturn.app.look.Look;

/** One of a few answers, side by side. */
final class RadioRow {
  private RadioRow() {}

  /** An answer: the end of its button's id, what it stands for, null for none, its words. */
  record Option<T>(String id, @Nullable T value, String words) {}

  static <T> Option<T> option(String id, @Nullable T value, String words) {
    return new Option<>(id, value, words);
  }

  /** Returns buttons that hold an answer. */
  @SafeVarargs
  static <T> HBox of(String id, Look look, ObjectProperty<T> answer, Option<T>... choices) {
    return of(id, look, answer, List.of(choices));
  }

  /** Returns buttons that hold an answer. */
  static <T> HBox of(String id, Look look, ObjectProperty<T> answer, List<Option<T>> choices) {
    ToggleGroup group = new ToggleGroup();
    HBox row = new HBox(look.px(16));
    for (Option<T> each : choices) {
      RadioButton button = new RadioButton(each.words());
      button.setId(id + "-" + each.id());
      button.setToggleGroup(group);
      button.setUserData(each.value());
      button.setSelected(Objects.equals(each.value(), answer.get()));
      button.setOnAction(event -> answer.set(each.value()));
      row.getChildren().add(button);
    }
    return row;
  }

  /** Lets buttons show an answer that is also given elsewhere. */
  static <T> void follow(HBox row, ObjectProperty<T> answer, Listeners listeners) {
    listeners.onValue(
        answer,
        now ->
            row.getChildren()
                .forEach(
                    each ->
                        ((RadioButton) each).setSelected(Objects.equals(each.getUserData(), now))));
  }
}
