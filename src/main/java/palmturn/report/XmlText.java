package palmturn.report;

/** Keeps characters out that no page may hold. */
final class XmlText {
  private static final int REPLACEMENT = 0xFFFD;

  private XmlText() {}

  /**
   * Returns a text with U+FFFD for each character that XML 1.0 (fifth edition, production 2) does
   * not allow: control characters and halves of pairs, which a note may hold.
   */
  static String replaceInvalid(String text) {
    if (text.codePoints().allMatch(XmlText::isAllowed)) {
      return text;
    }
    StringBuilder clean = new StringBuilder(text.length());
    text.codePoints().forEach(c -> clean.appendCodePoint(isAllowed(c) ? c : REPLACEMENT));
    return clean.toString();
  }

  private static boolean isAllowed(int c) {
    return c == '\t'
        || c == '\n'
        || c == '\r'
        || c >= 0x20 && c <= 0x7E
        || c >= 0xA0 && c <= 0xD7FF
        || c >= 0xE000 && c <= 0xFFFD
        || c >= 0x10000 && (c & 0xFFFE) != 0xFFFE;
  }
}
