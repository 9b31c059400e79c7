package palmturn.app;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import palmturn.app.desk.FastMarking;
import palmturn.app.hints.Hint;
import palmturn.app.hints.Hints;
import palmturn.app.marking.Pass;
import palmturn.app.stage.Stage;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Zone;

/** Which key does what while keys are typed along, or while marks are gone through one by one. */
final class FastKeys {
  /** What works in the middle of a pass as it does everywhere. */
  private static final Set<String> EVERYWHERE =
      Set.of("?", "Ctrl+T", "Ctrl++", "Ctrl+−", "Ctrl+M", "H", "V", "0", "B", "U");

  private final FastMarking marking;
  private final Map<String, Runnable> typing = new HashMap<>();
  private final Map<String, Runnable> pass = new HashMap<>();

  FastKeys(FastMarking marking, Consumer<Boolean> zoom, Stage stage) {
    this.marking = marking;
    typing.put("F", () -> marking.typing().type(Side.PALM, false));
    typing.put("J", () -> marking.typing().type(Side.BACK, false));
    typing.put("D", () -> marking.typing().type(Side.PALM, true));
    typing.put("K", () -> marking.typing().type(Side.BACK, true));
    typing.put("Enter", marking.typing()::stop);
    typing.put("Esc", marking.typing()::stop);
    Pass going = marking.pass();
    pass.put("Space", going::keep);
    pass.put("1", () -> going.zone(Zone.FINGERS));
    pass.put("2", () -> going.zone(Zone.WRIST));
    pass.put("3", () -> going.zone(Zone.EDGE));
    pass.put("4", going::doubled);
    pass.put("P", () -> going.kind(Slap.Kind.PART_TURN));
    pass.put("X", () -> going.kind(Slap.Kind.MISSED));
    pass.put("F", () -> going.side(Side.PALM));
    pass.put("J", () -> going.side(Side.BACK));
    pass.put("Del", going::drop);
    pass.put("←", () -> going.move(-1));
    pass.put("→", () -> going.move(1));
    pass.put("Alt+←", () -> going.move(-1));
    pass.put("Alt+→", () -> going.move(1));
    pass.put("Shift+←", () -> going.go(-1));
    pass.put("Shift+→", () -> going.go(1));
    pass.put("Z", going::undo);
    pass.put("Ctrl+Z", going::undo);
    pass.put("Shift+Z", going::redo);
    pass.put("Ctrl+Y", going::redo);
    pass.put("Esc", going::leave);
    pass.put("[", stage::slower);
    pass.put("]", stage::faster);
    pass.put("+", () -> zoom.accept(true));
    pass.put("−", () -> zoom.accept(false));
  }

  /** Returns whether a key belongs to what is going on; in a pass nearly all do. */
  boolean takes(String chord) {
    return passing() != null ? !EVERYWHERE.contains(chord) : typing() && typing.containsKey(chord);
  }

  /** Returns what a key does just now, null for nothing. */
  @Nullable Runnable action(String chord) {
    return passing() != null ? pass.get(chord) : typing.get(chord);
  }

  /** Returns the keys that are valid just now; none while nothing goes on. */
  List<Hint> hints() {
    Pass.Place place = passing();
    if (place != null) {
      return place.about() == Pass.About.TIMES ? Hints.TIMES : Hints.ZONES_PASS;
    }
    return typing() ? Hints.TYPING : List.of();
  }

  private Pass.@Nullable Place passing() {
    return marking.pass().placeProperty().get();
  }

  private boolean typing() {
    return marking.typing().activeProperty().get();
  }
}
