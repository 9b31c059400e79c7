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

/** The visible part of the picture, and the overlay drawn on it. */
public final class Viewport {
  private static final double ZOOM = 1.25;
  private static final double STEP = 0.1;

  private final ReadOnlyObjectWrapper<Framing> framing = new ReadOnlyObjectWrapper<>(Framing.WHOLE);
  private final BooleanProperty previousFrame = new SimpleBooleanProperty(false);
  private final BooleanProperty overlayShown = new SimpleBooleanProperty(true);
  private final ReadOnlyObjectWrapper<Set<OverlayItem>> hidden =
      new ReadOnlyObjectWrapper<>(Set.of());
  private Framing.@Nullable Sizes sizes;

  /** The visible part of the picture. */
  ReadOnlyObjectProperty<Framing> framingProperty() {
    return framing.getReadOnlyProperty();
  }

  /** Returns an observable that changes with the visible part. */
  public Observable changed() {
    return framingProperty();
  }

  /** True if the previous frame is overlaid. */
  public BooleanProperty previousFrameProperty() {
    return previousFrame;
  }

  /** True if the overlay is shown. */
  public BooleanProperty overlayShownProperty() {
    return overlayShown;
  }

  /** Hidden items of the overlay. */
  ReadOnlyObjectProperty<Set<OverlayItem>> hiddenProperty() {
    return hidden.getReadOnlyProperty();
  }

  /** Hides or shows one item of the overlay. */
  public void toggle(OverlayItem what) {
    Set<OverlayItem> now = EnumSet.noneOf(OverlayItem.class);
    now.addAll(hidden.get());
    if (!now.remove(what)) {
      now.add(what);
    }
    hidden.set(Set.copyOf(now));
  }

  /** Returns whether an item is drawn. */
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

  /** Pans by tenths of the pane, to the left and up if negative. */
  public void pan(int right, int down) {
    if (sizes != null) {
      shift(-right * STEP * sizes.width(), -down * STEP * sizes.height());
    }
  }

  /** Zooms to a region, or back to the whole picture if that is shown already. */
  public void toggleZoomTo(Estimate.Region region) {
    if (sizes != null) {
      Framing close = Framing.zoomedTo(region, sizes);
      framing.set(framing.get().equals(close) ? Framing.WHOLE : close);
    }
  }
}
