package palmturn.report;

import java.util.Locale;

/**
 * A paper size of the PDF. Both have columns of one width, so that charts are drawn at one size.
 */
public enum Paper {
  /** 210 × 297 mm. */
  A4("A4", 15),
  /** 8.5 × 11 inches. */
  LETTER("letter", 17.95);

  private final String css;
  private final double sideMm;

  Paper(String css, double sideMm) {
    this.css = css;
    this.sideMm = sideMm;
  }

  /** Returns the style sheet's lines for a page of this size. */
  String pageRule() {
    return String.format(
        Locale.ROOT, "@page{size:%s;margin-left:%smm;margin-right:%smm}\n", css, sideMm, sideMm);
  }
}
