package palmturn.app.stage;

import java.util.EnumSet;
import java.util.Set;
import javafx.beans.Observable;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Estimate;

/** How the picture is looked at: which part of it, with what drawn on it. */
public final class Viewing {
  private static final double ZOOM = 1.25;
  private static final double STEP = 0.1;

  private final ReadOnlyObjectWrapper<Framing> framing = new ReadOnlyObjectWrapper<>(Framing.WHOLE);
  private final BooleanProperty ghost = new SimpleBooleanProperty(false);
  private final BooleanProperty drawn = new SimpleBooleanProperty(true);
  private final ReadOnlyObjectWrapper<Set<Drawn>> hidden = new ReadOnlyObjectWrapper<>(Set.of());
  private Framing.@Nullable Room room;

  /** Which part of the picture is shown. */
  ReadOnlyObjectProperty<Framing> framingProperty() {
    return framing.getReadOnlyProperty();
  }

  /** Tells whenever another part of the picture is shown. */
  public Observable changed() {
    return framingProperty();
  }

  /** Whether the frame before shines through. */
  public BooleanProperty ghostProperty() {
    return ghost;
  }

  /** Whether anything is drawn on the picture. */
  public BooleanProperty drawnProperty() {
    return drawn;
  }

  /** What is left out of the drawing. */
  ReadOnlyObjectProperty<Set<Drawn>> hiddenProperty() {
    return hidden.getReadOnlyProperty();
  }

  /** Hides one thing that is drawn, or shows it. */
  public void hideOrShow(Drawn what) {
    Set<Drawn> now = EnumSet.noneOf(Drawn.class);
    now.addAll(hidden.get());
    if (!now.remove(what)) {
      now.add(what);
    }
    hidden.set(Set.copyOf(now));
  }

  /** Returns whether a thing is to be drawn. */
  boolean shows(Drawn what) {
    return drawn.get() && !hidden.get().contains(what);
  }

  /** Takes the sizes of the pane and the picture; null without a picture. */
  void setRoom(Framing.@Nullable Room now) {
    room = now;
  }

  /** Returns where the picture lies; null without one. */
  Framing.@Nullable Lie lie() {
    return room == null ? null : framing.get().in(room);
  }

  /** Returns whether more than fits is there to be moved about. */
  public boolean closer() {
    return framing.get().times() > 1;
  }

  /** Shows all of the picture. */
  public void whole() {
    framing.set(Framing.WHOLE);
  }

  /** Shows the middle larger. */
  public void larger() {
    zoomAboutMiddle(ZOOM);
  }

  /** Shows more of the picture. */
  public void smaller() {
    zoomAboutMiddle(1 / ZOOM);
  }

  private void zoomAboutMiddle(double factor) {
    if (room != null) {
      zoom(factor, room.width() / 2, room.height() / 2);
    }
  }

  /** Shows the picture larger or smaller about a place of the pane. */
  public void zoom(double factor, double screenX, double screenY) {
    if (room != null) {
      framing.set(framing.get().zoomed(factor, screenX, screenY, room));
    }
  }

  /** Shifts the picture by pixels of the screen. */
  public void shift(double right, double down) {
    if (room != null) {
      framing.set(framing.get().shifted(right, down, room));
    }
  }

  /** Looks a tenth of the pane further to the right and down, or back where negative. */
  public void look(int right, int down) {
    if (room != null) {
      shift(-right * STEP * room.width(), -down * STEP * room.height());
    }
  }

  /** Shows a region as large as it fits; all of the picture if it is shown so already. */
  public void ontoOrWhole(Estimate.Region region) {
    if (room != null) {
      Framing close = Framing.onto(region, room);
      framing.set(framing.get().equals(close) ? Framing.WHOLE : close);
    }
  }
}
