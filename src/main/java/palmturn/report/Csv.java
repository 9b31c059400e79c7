package palmturn.report;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Comma-separated values by RFC 4180; a lone line feed ends a row too. A text that a spreadsheet
 * would take for a formula is written behind an apostrophe, and read without it.
 */
final class Csv {
  /** A cell that begins so is taken for a formula; a number is none. */
  private static final Pattern FORMULA = Pattern.compile("'*[=+\\-@\t\r].*", Pattern.DOTALL);

  private static final Pattern NUMBER = Pattern.compile("[+-]?[\\d.]+([eE][+-]?\\d+)?");

  private final String text;
  private int at;
  private int line = 1;

  private Csv(String text) {
    this.text = text;
  }

  /** A row and the line it begins on, from 1. */
  record Row(int line, List<String> cells) {}

  /** Returns one row as text, quoted where that is needed, with its line end. */
  static String write(List<String> cells) {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < cells.size(); i++) {
      out.append(i == 0 ? "" : ",").append(quoted(asText(cells.get(i))));
    }
    return out.append("\r\n").toString();
  }

  private static String asText(String cell) {
    return isFormula(cell) ? "'" + cell : cell;
  }

  private static String fromText(String cell) {
    return cell.startsWith("'") && isFormula(cell.substring(1)) ? cell.substring(1) : cell;
  }

  private static boolean isFormula(String cell) {
    return FORMULA.matcher(cell).matches() && !NUMBER.matcher(cell).matches();
  }

  private static String quoted(String cell) {
    boolean plain = cell.chars().noneMatch(c -> c == ',' || c == '"' || c == '\r' || c == '\n');
    boolean edges = cell.equals(cell.strip());
    return plain && edges ? cell : '"' + cell.replace("\"", "\"\"") + '"';
  }

  /** Returns the rows of a text, empty lines left out. */
  static List<Row> read(String text) throws MarksFormatException {
    Csv csv = new Csv(text.startsWith("\uFEFF") ? text.substring(1) : text);
    List<Row> rows = new ArrayList<>();
    while (csv.at < csv.text.length()) {
      Row row = csv.row();
      if (row.cells().size() > 1 || !row.cells().get(0).isBlank()) {
        rows.add(row);
      }
    }
    return rows;
  }

  private Row row() throws MarksFormatException {
    int start = line;
    List<String> cells = new ArrayList<>();
    while (true) {
      cells.add(fromText(isQuote(at) ? quotedCell() : plainCell()));
      if (at >= text.length()) {
        return new Row(start, cells);
      }
      char next = text.charAt(at++);
      if (next == ',') {
        continue;
      }
      if (next == '\r' && at < text.length() && text.charAt(at) == '\n') {
        at++;
      }
      line++;
      return new Row(start, cells);
    }
  }

  private boolean isQuote(int where) {
    return where < text.length() && text.charAt(where) == '"';
  }

  private String plainCell() throws MarksFormatException {
    int from = at;
    while (at < text.length() && ",\r\n".indexOf(text.charAt(at)) < 0) {
      if (text.charAt(at) == '"') {
        throw new MarksFormatException(line, "a quote stands inside a cell that is not quoted");
      }
      at++;
    }
    return text.substring(from, at).strip();
  }

  private String quotedCell() throws MarksFormatException {
    int start = line;
    StringBuilder cell = new StringBuilder();
    at++;
    while (at < text.length()) {
      char c = text.charAt(at++);
      if (c == '"') {
        if (isQuote(at)) {
          at++;
        } else if (at == text.length() || ",\r\n".indexOf(text.charAt(at)) >= 0) {
          return cell.toString();
        } else {
          throw new MarksFormatException(line, "text follows the closing quote of a cell");
        }
      }
      boolean loneReturn = c == '\r' && !(at < text.length() && text.charAt(at) == '\n');
      line += c == '\n' || loneReturn ? 1 : 0;
      cell.append(c);
    }
    throw new MarksFormatException(start, "a quote is opened and never closed");
  }
}
