package palmturn.app.keys;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** All actions as lines under headings; related actions share a line. */
public final class KeyLines {
  private static final String PART = ": ";

  private KeyLines() {}

  /**
   * A line of the list.
   *
   * @param actions listed on it
   * @param words what they do, in the same order
   */
  public record KeyLine(List<Action> actions, String words) {
    public KeyLine {
      actions = List.copyOf(actions);
    }
  }

  /** Returns the lines of a group. */
  public static List<KeyLine> of(Action.Group group) {
    List<List<Action>> lines = new ArrayList<>();
    String before = "";
    for (Action action : Action.values()) {
      if (action.group() == group) {
        String head = head(action);
        if (head.isEmpty() || !head.equals(before)) {
          lines.add(new ArrayList<>());
        }
        lines.get(lines.size() - 1).add(action);
        before = head;
      }
    }
    return lines.stream().map(all -> new KeyLine(all, words(all))).toList();
  }

  /** Returns the groups that are listed, in columns of about one height. */
  public static List<List<Action.Group>> columns() {
    return List.of(
        List.of(Action.Group.MARK),
        List.of(Action.Group.MOVE, Action.Group.DIFFERENCES),
        List.of(Action.Group.PICTURE, Action.Group.PLACES, Action.Group.PAIR),
        List.of(Action.Group.CHANGE));
  }

  private static String head(Action action) {
    int at = action.words().indexOf(PART);
    return at < 0 ? "" : action.words().substring(0, at + PART.length());
  }

  private static String words(List<Action> all) {
    if (all.size() == 1) {
      return all.get(0).words();
    }
    String head = head(all.get(0));
    return head
        + all.stream()
            .map(each -> each.words().substring(head.length()))
            .collect(Collectors.joining(", "));
  }
}
