package palmturn.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import palmturn.wording.Figures;

/**
 * Shares of the long texts on the first printed page, which is the athlete's; what is left out
 * there follows in full after it.
 *
 * @param style class of the page's body; empty on screen, where nothing has an end
 * @param openLines how many lines of what is open
 * @param coachLetters how much of the coach's words
 */
public record FirstPage(String style, int openLines, int coachLetters) {
  /** The whole, as on screen. */
  static final FirstPage WHOLE = new FirstPage("", Integer.MAX_VALUE, Integer.MAX_VALUE);

  /** Shorter and shorter, for the first that fits. */
  static final List<FirstPage> SHORTER =
      List.of(
          new FirstPage("printed", Integer.MAX_VALUE, Integer.MAX_VALUE),
          new FirstPage("printed tight", Integer.MAX_VALUE, Integer.MAX_VALUE),
          new FirstPage("printed tight", 3, 320),
          new FirstPage("printed tight", 1, 160),
          new FirstPage("printed tight", 1, 0),
          new FirstPage("printed tight", 0, 0));

  /** Returns whether it is laid out for paper. */
  public boolean printed() {
    return !style.isEmpty();
  }

  /** Returns the lines of what is open that stand here. */
  public List<String> open(Page page) {
    return page.open().subList(0, Math.min(openLines, page.open().size()));
  }

  /** Returns how many lines of what is open do not stand here. */
  public int openLeft(Page page) {
    return page.open().size() - open(page).size();
  }

  /** Returns what is said of those lines, before the number of their page. */
  public String openWords(Page page) {
    int left = openLeft(page);
    return open(page).isEmpty()
        ? Figures.count(left, "thing") + ": see "
        : String.format(Locale.ROOT, "And %d more: see ", left);
  }

  /** Returns the coach's words that stand here, cut between two words. */
  public List<String> coach(Page.CoachPart part) {
    List<String> shown = new ArrayList<>();
    int left = coachLetters;
    for (String paragraph : part.paragraphs()) {
      if (paragraph.length() > left) {
        int end = paragraph.lastIndexOf(' ', left);
        if (end > 0) {
          shown.add(paragraph.substring(0, end) + " …");
        }
        break;
      }
      shown.add(paragraph);
      left -= paragraph.length();
    }
    return shown;
  }

  /** Returns whether more of the coach's words follow later. */
  public boolean coachCut(Page.CoachPart part) {
    return !coach(part).equals(part.paragraphs());
  }
}
