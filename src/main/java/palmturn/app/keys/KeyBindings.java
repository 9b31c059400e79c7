package palmturn.app.keys;

import java.util.function.UnaryOperator;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;

/** The keys as they are now, which every pane follows, and the giving of others. */
public final class KeyBindings {
  private final ReadOnlyObjectWrapper<KeyMap> map = new ReadOnlyObjectWrapper<>(KeyMap.DEFAULT);
  private final KeyChange change = new KeyChange(this);

  /** Which key stands for what. */
  public ReadOnlyObjectProperty<KeyMap> mapProperty() {
    return map.getReadOnlyProperty();
  }

  /** Returns which key stands for what now. */
  public KeyMap map() {
    return map.get();
  }

  /** Returns an action's key. */
  public String of(Action action) {
    return map().of(action);
  }

  /** Gives another key to an action. */
  public KeyChange change() {
    return change;
  }

  /** Takes other keys. */
  public void set(KeyMap next) {
    map.set(next);
  }

  void change(UnaryOperator<KeyMap> how) {
    map.set(how.apply(map()));
  }
}
