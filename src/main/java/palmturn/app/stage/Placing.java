package palmturn.app.stage;

import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.app.look.Typed;
import palmturn.edit.History;
import palmturn.trial.Placed;
import palmturn.trial.Point;

/** Setting places in the picture, by mouse or keys: every step can be undone until it is kept. */
public final class Placing {
  private static final int LONGEST_CM = 6;

  private final ReadOnlyBooleanWrapper active = new ReadOnlyBooleanWrapper(false);
  private final ReadOnlyObjectWrapper<Drawn> chosen = new ReadOnlyObjectWrapper<>(Drawn.HAND);
  private final ReadOnlyObjectWrapper<Draft> draft =
      new ReadOnlyObjectWrapper<>(Draft.of(Placed.NONE));
  private final ReadOnlyStringWrapper words = new ReadOnlyStringWrapper("");
  private History<Draft> history = History.of(Draft.of(Placed.NONE));
  private Draft kept = history.now();
  private double width = 1;
  private double height = 1;
  private @Nullable Double usualCm;
  private @Nullable Point start;
  private boolean sameStep;
  private boolean lengthIsOld = true;
  private Consumer<Placed> keeper = places -> {};

  /** Whether keys and mouse set places. */
  public ReadOnlyBooleanProperty activeProperty() {
    return active.getReadOnlyProperty();
  }

  /** Which place they set. */
  public ReadOnlyObjectProperty<Drawn> chosenProperty() {
    return chosen.getReadOnlyProperty();
  }

  /** The places as they are now, kept or not. */
  ReadOnlyObjectProperty<Draft> draftProperty() {
    return draft.getReadOnlyProperty();
  }

  /** What can be done with the chosen place, as a sentence. */
  public ReadOnlyStringProperty wordsProperty() {
    return words.getReadOnlyProperty();
  }

  /** Returns the places that can be kept as they are now. */
  public Placed places() {
    return draft.get().placed();
  }

  /** Takes the places of a trial. */
  public void open(Placed there, Consumer<Placed> newKeeper) {
    active.set(false);
    start = null;
    history = History.of(Draft.of(there));
    kept = history.now();
    keeper = newKeeper;
    draft.set(kept);
    tell();
  }

  /** Lets go of the trial. */
  public void close() {
    open(Placed.NONE, places -> {});
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
    tell();
  }

  /** Says which place keys and mouse set from now on. */
  public void choose(Drawn what) {
    chosen.set(what);
    start = null;
    lengthIsOld = true;
    tell();
  }

  /** Sets the chosen place; a drag from here draws a region or a scale. */
  void press(double x, double y) {
    if (active.get()) {
      Point at = inside(new Point(x, y));
      start = at;
      lengthIsOld = true;
      sameStep = !stretches();
      if (sameStep) {
        step(history.now().at(chosen.get(), at));
      }
    }
  }

  /** Draws on from where the mouse was pressed: one step, however far it goes. */
  void drag(double x, double y) {
    Point from = start;
    if (active.get() && from != null) {
      Draft next = usual(history.now().stretched(chosen.get(), from, inside(new Point(x, y))));
      if (sameStep) {
        show(history.amended(next));
      } else {
        step(next);
        sameStep = true;
      }
    }
  }

  /** Ends a drag. */
  void release() {
    start = null;
  }

  private boolean stretches() {
    return chosen.get() == Drawn.HAND || chosen.get() == Drawn.SCALE;
  }

  /** Moves the chosen place; one that is not set appears in the middle. */
  public void move(double right, double down) {
    Draft now = history.now();
    step(
        now.handle(chosen.get()) == null ? inTheMiddle(now) : now.moved(chosen.get(), right, down));
  }

  /** Makes the chosen region larger, or moves the scale's first end. */
  public void resize(double right, double down) {
    step(history.now().resized(chosen.get(), right, down));
  }

  private Draft inTheMiddle(Draft now) {
    Point middle = new Point(Math.rint(width / 2), Math.rint(height / 2));
    double third = Math.rint(Math.min(width, height) / 6);
    double up = chosen.get() == Drawn.SCALE ? 0 : third;
    return stretches()
        ? usual(now.stretched(chosen.get(), middle.moved(-third, -up), middle.moved(third, up)))
        : now.at(chosen.get(), middle);
  }

  /** The athlete's forearm is what a scale is drawn along, until another length is typed. */
  private Draft usual(Draft drawn) {
    Double length = usualCm;
    return chosen.get() == Drawn.SCALE && drawn.cm().isEmpty() && length != null
        ? drawn.withCm(Typed.plain(length))
        : drawn;
  }

  /** Adds a digit or a point to the scale's length; the first one replaces an older length. */
  public void type(String digit) {
    String cm = lengthIsOld ? "" : history.now().cm();
    if (chosen.get() == Drawn.SCALE && cm.length() < LONGEST_CM) {
      lengthIsOld = false;
      step(history.now().withCm(cm + digit));
    }
  }

  /** Takes the chosen place away, or the last digit of the scale's length. */
  public void delete() {
    Draft now = history.now();
    step(
        chosen.get() == Drawn.SCALE && !now.cm().isEmpty()
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
  public void keep() {
    if (history.now().lacksLength()) {
      choose(Drawn.SCALE);
      return;
    }
    active.set(false);
    if (!history.now().equals(kept)) {
      kept = history.now();
      keeper.accept(kept.placed());
    }
    tell();
  }

  /** Leaves the places as they were kept last. */
  public void leave() {
    active.set(false);
    if (!history.now().equals(kept)) {
      history = History.of(kept);
      draft.set(kept);
    }
    tell();
  }

  private void step(Draft next) {
    show(history.then(next, "Set the " + chosen.get().words()));
  }

  private void show(History<Draft> next) {
    history = next;
    draft.set(next.now());
    tell();
  }

  private Point inside(Point spot) {
    return new Point(tenth(spot.x(), width), tenth(spot.y(), height));
  }

  /** Nobody points more finely than that. */
  private static double tenth(double px, double most) {
    return Math.rint(10 * Math.max(0, Math.min(most, px))) / 10;
  }

  private void tell() {
    Draft now = draft.get();
    words.set(
        switch (chosen.get()) {
          case HAND -> "Moving hand: drag a box around it";
          case ELBOW -> "Elbow of the moving arm, before the first slap: click it";
          case TRUNK -> "A place on the trunk: click it";
          case TARGET -> "Centre of the target palm: click it";
          case SCALE ->
              now.from() == null
                  ? "Scale: drag along a known length near the elbow"
                  : "Scale: "
                      + (now.cm().isEmpty() ? "type its length in cm" : now.cm() + " cm")
                      + (now.lacksLength() && !now.cm().isEmpty() ? ", which is no length" : "");
        });
  }
}
