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
public final class Viewport {
  private static final double ZOOM = 1.25;
  private static final double STEP = 0.1;

  private final ReadOnlyObjectWrapper<Framing> framing = new ReadOnlyObjectWrapper<>(Framing.WHOLE);
  private final BooleanProperty previousFrame = new SimpleBooleanProperty(false);
  private final BooleanProperty overlayShown = new SimpleBooleanProperty(true);
  private final ReadOnlyObjectWrapper<Set<OverlayItem>> hidden =
      new ReadOnlyObjectWrapper<>(Set.of());
  private Framing.@Nullable Sizes sizes;

  /** Which part of the picture is shown. */
  ReadOnlyObjectProperty<Framing> framingProperty() {
    return framing.getReadOnlyProperty();
  }

  /** Tells whenever another part of the picture is shown. */
  public Observable changed() {
    return framingProperty();
  }

  /** Whether the frame before shines through. */
  public BooleanProperty previousFrameProperty() {
    return previousFrame;
  }

  /** Whether anything is drawn on the picture. */
  public BooleanProperty overlayShownProperty() {
    return overlayShown;
  }

  /** What is left out of the drawing. */
  ReadOnlyObjectProperty<Set<OverlayItem>> hiddenProperty() {
    return hidden.getReadOnlyProperty();
  }

  /** Hides one thing that is drawn, or shows it. */
  public void toggle(OverlayItem what) {
    Set<OverlayItem> now = EnumSet.noneOf(OverlayItem.class);
    now.addAll(hidden.get());
    if (!now.remove(what)) {
      now.add(what);
    }
    hidden.set(Set.copyOf(now));
  }

  /** Returns whether a thing is to be drawn. */
  boolean shows(OverlayItem what) {
    return overlayShown.get() && !hidden.get().contains(what);
  }

  /** Takes the sizes of the pane and the picture; null without a picture. */
  void setSizes(Framing.@Nullable Sizes now) {
    sizes = now;
  }

  /** Returns where the picture lies; null without one. */
  Framing.@Nullable Placement placement() {
    return sizes == null ? null : framing.get().place(sizes);
  }

  /** Returns whether more than fits is there to be moved about. */
  public boolean isZoomed() {
    return framing.get().zoom() > 1;
  }

  /** Shows all of the picture. */
  public void showWhole() {
    framing.set(Framing.WHOLE);
  }

  /** Shows the middle larger. */
  public void zoomIn() {
    zoomAboutMiddle(ZOOM);
  }

  /** Shows more of the picture. */
  public void zoomOut() {
    zoomAboutMiddle(1 / ZOOM);
  }

  private void zoomAboutMiddle(double factor) {
    if (sizes != null) {
      zoom(factor, sizes.width() / 2, sizes.height() / 2);
    }
  }

  /** Shows the picture larger or smaller about a place of the pane. */
  public void zoom(double factor, double screenX, double screenY) {
    if (sizes != null) {
      framing.set(framing.get().zoomed(factor, screenX, screenY, sizes));
    }
  }

  /** Shifts the picture by pixels of the screen. */
  public void shift(double right, double down) {
    if (sizes != null) {
      framing.set(framing.get().shifted(right, down, sizes));
    }
  }

  /** Looks a tenth of the pane further to the right and down, or back where negative. */
  public void pan(int right, int down) {
    if (sizes != null) {
      shift(-right * STEP * sizes.width(), -down * STEP * sizes.height());
    }
  }

  /** Shows a region as large as it fits; all of the picture if it is shown so already. */
  public void toggleZoomTo(Estimate.Region region) {
    if (sizes != null) {
      Framing close = Framing.zoomedTo(region, sizes);
      framing.set(framing.get().equals(close) ? Framing.WHOLE : close);
    }
  }
}
