package palmturn.app.look;

import javafx.scene.control.Tooltip;

/** Tooltips in the colours of the theme. */
public final class Tooltips {
  private Tooltips() {}

  /** Returns a tooltip in the colours of the theme; it has a window and a root of its own. */
  public static Tooltip of(String words, Look look) {
    Tooltip tip = new Tooltip(words);
    tip.getScene().getRoot().setStyle(look.rootStyle());
    return tip;
  }
}
