package palmturn.app.stage;

import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.app.look.NumberField;
import palmturn.edit.History;
import palmturn.trial.PlacedPoints;
import palmturn.trial.Point;

/**
 * An editor of places in the picture, by mouse or keys; steps can be undone until they are saved.
 */
public final class PlaceEditor {
  private static final int LONGEST_CM = 6;

  private final ReadOnlyBooleanWrapper active = new ReadOnlyBooleanWrapper(false);
  private final ReadOnlyObjectWrapper<OverlayItem> chosen =
      new ReadOnlyObjectWrapper<>(OverlayItem.HAND);
  private final ReadOnlyObjectWrapper<PlacesDraft> draft =
      new ReadOnlyObjectWrapper<>(PlacesDraft.from(PlacedPoints.NONE));
  private final ReadOnlyStringWrapper words = new ReadOnlyStringWrapper("");
  private History<PlacesDraft> history = History.of(PlacesDraft.from(PlacedPoints.NONE));
  private PlacesDraft saved = history.now();
  private double width = 1;
  private double height = 1;
  private @Nullable Double usualCm;
  private @Nullable Point start;
  private boolean sameStep;
  private boolean lengthIsOld = true;
  private Consumer<PlacedPoints> saver = places -> {};

  /** True while places are being set. */
  public ReadOnlyBooleanProperty activeProperty() {
    return active.getReadOnlyProperty();
  }

  /** The place being set. */
  public ReadOnlyObjectProperty<OverlayItem> chosenProperty() {
    return chosen.getReadOnlyProperty();
  }

  /** The places as they are now, kept or not. */
  ReadOnlyObjectProperty<PlacesDraft> draftProperty() {
    return draft.getReadOnlyProperty();
  }

  /** The help sentence for the chosen place. */
  public ReadOnlyStringProperty wordsProperty() {
    return words.getReadOnlyProperty();
  }

  /** Returns the places that can be kept as they are now. */
  public PlacedPoints places() {
    return draft.get().placed();
  }

  /** Takes the places of a trial. */
  public void open(PlacedPoints there, Consumer<PlacedPoints> newKeeper) {
    active.set(false);
    start = null;
    history = History.of(PlacesDraft.from(there));
    saved = history.now();
    saver = newKeeper;
    draft.set(saved);
    updateWords();
  }

  /** Lets go of the trial. */
  public void close() {
    open(PlacedPoints.NONE, places -> {});
  }

  /**
   * Begins to set places.
   *
   * @param across width of the upright picture, pixels
   * @param down its height
   * @param forearmCm length that a scale is taken to have until another is typed; null for none
   */
  public void begin(double across, double down, @Nullable Double forearmCm) {
    width = across;
    height = down;
    usualCm = forearmCm;
    active.set(true);
    updateWords();
  }

  /** Says which place keys and mouse set from now on. */
  public void choose(OverlayItem what) {
    chosen.set(what);
    start = null;
    lengthIsOld = true;
    updateWords();
  }

  /** Sets the chosen place; a drag from here draws a region or a scale. */
  void press(double x, double y) {
    if (active.get()) {
      Point at = clampedToPicture(new Point(x, y));
      start = at;
      lengthIsOld = true;
      sameStep = !isDragged();
      if (sameStep) {
        addStep(history.now().placedAt(chosen.get(), at));
      }
    }
  }

  /** Draws on from where the mouse was pressed: one step, however far it goes. */
  void drag(double x, double y) {
    Point from = start;
    if (active.get() && from != null) {
      PlacesDraft next =
          withUsualLength(
              history.now().stretched(chosen.get(), from, clampedToPicture(new Point(x, y))));
      if (sameStep) {
        show(history.amended(next));
      } else {
        addStep(next);
        sameStep = true;
      }
    }
  }

  /** Ends a drag. */
  void release() {
    start = null;
  }

  private boolean isDragged() {
    return chosen.get() == OverlayItem.HAND || chosen.get() == OverlayItem.SCALE;
  }

  /** Moves the chosen place; one that is not set appears in the middle. */
  public void move(double right, double down) {
    PlacesDraft now = history.now();
    addStep(
        now.handle(chosen.get()) == null
            ? placedInMiddle(now)
            : now.moved(chosen.get(), right, down));
  }

  /** Makes the chosen region larger, or moves the scale's first end. */
  public void resize(double right, double down) {
    addStep(history.now().resized(chosen.get(), right, down));
  }

  private PlacesDraft placedInMiddle(PlacesDraft now) {
    Point middle = new Point(Math.rint(width / 2), Math.rint(height / 2));
    double third = Math.rint(Math.min(width, height) / 6);
    double up = chosen.get() == OverlayItem.SCALE ? 0 : third;
    return isDragged()
        ? withUsualLength(
            now.stretched(chosen.get(), middle.moved(-third, -up), middle.moved(third, up)))
        : now.placedAt(chosen.get(), middle);
  }

  /** The athlete's forearm is what a scale is drawn along, until another length is typed. */
  private PlacesDraft withUsualLength(PlacesDraft drawn) {
    Double length = usualCm;
    return chosen.get() == OverlayItem.SCALE && drawn.cm().isEmpty() && length != null
        ? drawn.withCm(NumberField.format(length))
        : drawn;
  }

  /** Adds a digit or a point to the scale's length; the first one replaces an older length. */
  public void type(String digit) {
    String cm = lengthIsOld ? "" : history.now().cm();
    if (chosen.get() == OverlayItem.SCALE && cm.length() < LONGEST_CM) {
      lengthIsOld = false;
      addStep(history.now().withCm(cm + digit));
    }
  }

  /** Takes the chosen place away, or the last digit of the scale's length. */
  public void delete() {
    PlacesDraft now = history.now();
    addStep(
        chosen.get() == OverlayItem.SCALE && !now.cm().isEmpty()
            ? now.withCm(now.cm().substring(0, now.cm().length() - 1))
            : now.without(chosen.get()));
  }

  /** Takes one step back. */
  public void undo() {
    show(history.undo());
  }

  /** Does an undone step again. */
  public void redo() {
    show(history.redo());
  }

  /** Keeps the places as they are now; a scale without its length asks for it first. */
  public void save() {
    if (history.now().lacksLength()) {
      choose(OverlayItem.SCALE);
      return;
    }
    active.set(false);
    if (!history.now().equals(saved)) {
      saved = history.now();
      saver.accept(saved.placed());
    }
    updateWords();
  }

  /** Leaves the places as they were kept last. */
  public void cancel() {
    active.set(false);
    if (!history.now().equals(saved)) {
      history = History.of(saved);
      draft.set(saved);
    }
    updateWords();
  }

  private void addStep(PlacesDraft next) {
    show(history.then(next, "Set the " + chosen.get().words()));
  }

  private void show(History<PlacesDraft> next) {
    history = next;
    draft.set(next.now());
    updateWords();
  }

  private Point clampedToPicture(Point spot) {
    return new Point(clampedTenth(spot.x(), width), clampedTenth(spot.y(), height));
  }

  /** Nobody points more finely than that. */
  private static double clampedTenth(double px, double most) {
    return Math.rint(10 * Math.max(0, Math.min(most, px))) / 10;
  }

  private void updateWords() {
    PlacesDraft now = draft.get();
    words.set(
        switch (chosen.get()) {
          case HAND -> "Moving hand: drag a box around it";
          case ELBOW -> "Elbow of the moving arm, before the first slap: click it";
          case TRUNK -> "Trunk: click a point on it";
          case TARGET -> "Target palm: click its centre";
          case SCALE ->
              now.from() == null
                  ? "Scale: drag along a known length near the elbow"
                  : "Scale: "
                      + (now.cm().isEmpty() ? "type its length in cm" : now.cm() + " cm")
                      + (now.lacksLength() && !now.cm().isEmpty() ? ", not a valid length" : "");
        });
  }
}
