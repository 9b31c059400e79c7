package palmturn.report;

import java.util.List;

/**
 * The content of the progress page, in words and drawings.
 *
 * @param css the style sheet
 * @param title whose progress
 * @param intro how many sessions, from when to when
 * @param parts one for each quality
 * @param drills a line for each drill, in order of time
 * @param unread a line for each session that could not be followed
 * @param key how to read the charts
 * @param cautions what every page says
 * @param made when it was made
 */
public record ProgressPage(
    String css,
    String title,
    String intro,
    List<Part> parts,
    List<String> drills,
    List<String> unread,
    String key,
    List<String> cautions,
    String made) {

  /** One quality: its name and unit, a sentence for each hand, and the chart. */
  public record Part(String name, String unit, List<String> sentences, Chart chart) {}
}
