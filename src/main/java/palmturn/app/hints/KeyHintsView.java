package palmturn.app.hints;

import java.util.List;
import java.util.function.Consumer;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import palmturn.app.keys.KeyMap;
import palmturn.app.look.Look;
import palmturn.app.look.Nodes;

/** The bottom row of hints, 36 high; what does not fit is left out, except the key to all keys. */
public final class KeyHintsView extends HBox {
  private final Look look;
  private final Consumer<String> press;
  private List<KeyHint> shown = List.of();

  /**
   * Builds the row.
   *
   * @param press is told which key was clicked
   */
  public KeyHintsView(Look look, Consumer<String> press) {
    super(look.px(20));
    this.look = look;
    this.press = press;
    getStyleClass().setAll("hints");
    setId("hints");
    setAlignment(Pos.CENTER_LEFT);
    Nodes.setHeight(this, look.px(36));
    setMinWidth(0);
  }

  /** Shows keys, the most wanted first, the key to all of them last. */
  public void show(List<KeyHint> now, KeyMap keys) {
    if (now.equals(shown)) {
      return;
    }
    shown = List.copyOf(now);
    getChildren().clear();
    for (KeyHint hint : now) {
      HBox caps = KeyCaps.of(hint, keys, look, press);
      caps.setMinWidth(Region.USE_PREF_SIZE);
      getChildren().add(caps);
    }
  }

  @Override
  protected void layoutChildren() {
    double room = getWidth() - getInsets().getLeft() - getInsets().getRight();
    List<Node> all = List.copyOf(getChildren());
    double used = all.isEmpty() ? 0 : all.get(all.size() - 1).prefWidth(-1);
    for (Node hint : all.subList(0, Math.max(0, all.size() - 1))) {
      used += hint.prefWidth(-1) + getSpacing();
      boolean fits = used <= room;
      hint.setVisible(fits);
      hint.setManaged(fits);
    }
    super.layoutChildren();
  }
}
