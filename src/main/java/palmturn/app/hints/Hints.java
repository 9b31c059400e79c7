package palmturn.app.hints;

import java.util.ArrayList;
import java.util.List;

/** Every key of the window, in one place for the hints row and the sheet of all keys. */
public final class Hints {
  private static final Hint ALL = Hint.of("all keys", "?");
  private static final Hint ADD = Hint.of("add clips", "A");
  private static final Hint OPEN = Hint.of("open a session", "O");
  private static final Hint DRILL = Hint.of("a drill, then a block", "Ctrl", "B");
  private static final Hint BOARD = Hint.of("move on the board", "←", "→", "↑", "↓");
  private static final Hint PALM = Hint.of("palm", "F");
  private static final Hint BACK = Hint.of("back", "J");
  private static final Hint ZONES = Hint.of("fingers, wrist, edge", "1", "2", "3");
  private static final Hint DOUBLE = Hint.of("double", "4");
  private static final Hint WRIST = Hint.of("bent wrist", "W");
  private static final Hint ELBOW = Hint.of("elbow out", "E");
  private static final Hint FRAME = Hint.of("frame", "←", "→");
  private static final Hint NEXT = Hint.of("next slap", "Shift", "→");
  private static final Hint PLAY = Hint.of("play slowly", "Space");

  /** Goes through the marks. */
  public static final Hint EVERY = Hint.of("look at every slap", "C");

  /** Typing along. */
  public static final List<Hint> TYPING =
      List.of(
          PALM,
          BACK,
          Hint.of("the same with a fault", "D", "K"),
          Hint.of("double", "4"),
          Hint.of("take the last one away", "Del"),
          Hint.of("slower, faster", "[", "]"),
          Hint.of("stop, and the marks settle", "T"),
          ALL);

  /** The pass over the times of doubtful slaps. */
  public static final List<Hint> TIMES =
      List.of(
          Hint.of("right, next", "Space"),
          Hint.of("palm, back, next", "F", "J"),
          Hint.of("double or not, next", "4"),
          Hint.of("take away, next", "Del"),
          Hint.of("move a frame", "←", "→"),
          Hint.of("undo", "Z"),
          Hint.of("go back", "Shift", "←"),
          Hint.of("leave", "Esc"),
          ALL);

  /** The pass over the zone of every slap. */
  public static final List<Hint> ZONES_PASS =
      List.of(
          Hint.of("centre, next", "Space"),
          Hint.of("fingers, wrist, edge, next", "1", "2", "3"),
          Hint.of("double", "4"),
          Hint.of("part turn", "P"),
          Hint.of("palm, back", "F", "J"),
          Hint.of("take away", "Del"),
          Hint.of("undo", "Z"),
          Hint.of("go back", "Shift", "←"),
          Hint.of("leave", "Esc"),
          ALL);

  /** Has the program look for slaps. */
  public static final Hint ESTIMATE = Hint.of("estimate", "L");

  /** Copies what it found. */
  public static final Hint START = Hint.of("start from the estimate", "S");

  /** Hides what it found. */
  public static final Hint HIDE = Hint.of("hide the estimate", "H");

  /** Keys under one heading. */
  public record Group(String name, List<Hint> hints) {}

  /** The marks that have no place in the row. */
  public static final Group MORE =
      new Group(
          "",
          List.of(
              Hint.of("part turn: the current slap's turn was cut short", "P"),
              Hint.of("missed: a turn without contact, at this frame", "X"),
              Hint.of("other fault of the current slap, in words", "N"),
              Hint.of("target moved: begin, again to end", "G"),
              Hint.of("pause: begin, again to end", "R")));

  /** All keys. */
  public static final List<Group> GROUPS =
      List.of(
          new Group(
              "Mark",
              List.of(
                  Hint.of("palm slap at this frame", "F"),
                  Hint.of("back slap at this frame", "J"),
                  Hint.of("the same with a fault, to be named", "D", "K"),
                  Hint.of("fingers, wrist, edge; again: centre", "1", "2", "3"),
                  Hint.of("double", "4"),
                  Hint.of("part turn", "P"),
                  Hint.of("missed turn at this frame", "X"),
                  Hint.of("other fault, in words", "N"),
                  Hint.of("bent wrist, elbow out: begin, end", "W", "E"),
                  Hint.of("target moved, pause: begin, end", "G", "R"),
                  Hint.of("have this trial estimated; again: stop", "L"),
                  Hint.of("start from the estimate", "S"),
                  Hint.of("hide the estimate, or show it", "H"),
                  Hint.of("type along; again: stop, and the marks settle", "T"),
                  Hint.of("go through the marks, every slap", "C"),
                  Hint.of("reading finished, or open again", "Enter"))),
          new Group(
              "Move",
              List.of(
                  Hint.of("one frame", "←", "→"),
                  Hint.of("ten frames", "Ctrl", "←", "→"),
                  Hint.of("ten frames", "PgUp", "PgDn"),
                  Hint.of("slap before, next slap", "Shift", "←", "→"),
                  Hint.of("first and last frame", "Home", "End"),
                  Hint.of("play and stop", "Space"),
                  Hint.of("slower, faster", "[", "]"),
                  Hint.of("strip closer, wider", "+", "−"),
                  Hint.of("board and strip", "Tab"),
                  Hint.of("move on the board", "←", "→", "↑", "↓"))),
          new Group(
              "Picture",
              List.of(
                  Hint.of("hands, whole picture", "V"),
                  Hint.of("larger, smaller, on the picture", "+", "−"),
                  Hint.of("whole picture", "0"),
                  Hint.of("move about, on the picture", "Alt", "←", "→"),
                  Hint.of("frame before shines through", "B"),
                  Hint.of("drawing on the picture", "U"),
                  Hint.of("point at places", "Q"),
                  Hint.of("last slap again and again", "Y"),
                  Hint.of("trial again and again", "Shift", "Y"))),
          new Group(
              "Change",
              List.of(
                  Hint.of("mark a frame earlier, later", "Alt", "←", "→"),
                  Hint.of("take the current mark away", "Del"),
                  Hint.of("undo", "Z"),
                  Hint.of("do again", "Shift", "Z"),
                  Hint.of("give up a span, close", "Esc"),
                  Hint.of("add clips", "A"),
                  Hint.of("open a session", "O"),
                  Hint.of("a drill, and a block after it", "Ctrl", "B"),
                  Hint.of("another reader", "Ctrl", "R"),
                  Hint.of("light or dark", "Ctrl", "T"),
                  Hint.of("less motion, or as before", "Ctrl", "M"),
                  Hint.of("larger text", "Ctrl", "+"),
                  Hint.of("smaller text", "Ctrl", "−"),
                  Hint.of("all keys", "?"))));

  private Hints() {}

  /** Where the keyboard is. */
  public enum Place {
    NOTHING_OPEN,
    BOARD,
    NOT_FILMED,
    READ_ONLY,
    PLACES,
    TRIAL
  }

  /**
   * Returns the keys that are valid in a place, the most wanted first.
   *
   * @param first what is wanted before all others just now
   * @param last what is wanted after them
   */
  public static List<Hint> at(Place place, List<Hint> first, List<Hint> last) {
    List<Hint> all = new ArrayList<>(first);
    List<Hint> of = at(place);
    all.addAll(of.subList(0, of.size() - 1));
    all.addAll(last);
    all.add(of.get(of.size() - 1));
    return all;
  }

  private static List<Hint> at(Place place) {
    return switch (place) {
      case NOTHING_OPEN -> List.of(OPEN, ADD, ALL);
      case BOARD -> List.of(BOARD, Hint.of("to the strip", "Enter"), ADD, DRILL, ALL);
      case NOT_FILMED -> List.of(ADD, OPEN, DRILL, Hint.of("board", "Tab"), ALL);
      case PLACES ->
          List.of(
              Hint.of("keep", "Enter"),
              Hint.of("leave", "Esc"),
              Hint.of("move", "←", "→", "↑", "↓"),
              Hint.of("size", "Alt", "→"),
              Hint.of("take away", "Del"),
              Hint.of("undo", "Z"),
              Hint.of("hide it, show it", "U"),
              ALL);
      case READ_ONLY -> List.of(FRAME, NEXT, PLAY, ALL);
      case TRIAL ->
          List.of(
              PALM,
              BACK,
              ZONES,
              DOUBLE,
              WRIST,
              ELBOW,
              FRAME,
              NEXT,
              PLAY,
              Hint.of("type along", "T"),
              Hint.of("every slap", "C"),
              Hint.of("more", "5"),
              ALL);
    };
  }
}
