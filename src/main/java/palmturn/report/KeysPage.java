package palmturn.report;

import gg.jte.output.StringOutput;
import java.util.List;

/**
 * Makes the page of all keys: one HTML page to be printed, on A4 or Letter, black on white.
 *
 * @param groups what stands under each heading, in the order in which it is read
 * @param changed how many keys are not as they came
 */
public record KeysPage(List<Group> groups, int changed) {
  public KeysPage {
    groups = List.copyOf(groups);
  }

  /** Lines under a heading. */
  public record Group(String heading, List<Line> lines) {
    public Group {
      lines = List.copyOf(lines);
    }
  }

  /**
   * A line.
   *
   * @param keys as they stand on the keyboard
   * @param words what they do
   */
  public record Line(List<String> keys, String words) {
    public Line {
      keys = List.copyOf(keys);
    }
  }

  /** Returns the page as HTML. */
  public String html() {
    StringOutput out = new StringOutput();
    Report.TEMPLATES.render("keys.jte", this, out);
    return out.toString();
  }

  /** Returns the style sheet with its fonts inside. */
  public String css() {
    return Style.fonts() + Style.resource("keys.css");
  }
}
