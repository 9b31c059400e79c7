package palmturn.app.keys;

import java.util.function.UnaryOperator;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;

/** The current keys, observed by every pane, and the dialog that changes them. */
public final class KeyBindings {
  private final ReadOnlyObjectWrapper<KeyMap> map = new ReadOnlyObjectWrapper<>(KeyMap.DEFAULT);
  private final KeyChange change = new KeyChange(this);

  /** The current keys. */
  public ReadOnlyObjectProperty<KeyMap> mapProperty() {
    return map.getReadOnlyProperty();
  }

  /** Returns the current keys. */
  public KeyMap map() {
    return map.get();
  }

  /** Returns an action's key. */
  public String of(Action action) {
    return map().of(action);
  }

  /** Returns the dialog that changes keys. */
  public KeyChange change() {
    return change;
  }

  /** Replaces all keys. */
  public void set(KeyMap next) {
    map.set(next);
  }

  void change(UnaryOperator<KeyMap> how) {
    map.set(how.apply(map()));
  }
}
