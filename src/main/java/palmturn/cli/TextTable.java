package palmturn.cli;

import java.util.ArrayList;
import java.util.List;

/** Rows of text in columns: the first left-aligned, as words are, numbers to the right. */
public final class TextTable {
  private static final String GAP = "  ";

  private TextTable() {}

  /** Returns the rows with their columns aligned; the first row is the heading. */
  public static List<String> lines(List<List<String>> rows) {
    int columns = rows.get(0).size();
    List<String> lines = new ArrayList<>();
    for (List<String> row : rows) {
      StringBuilder line = new StringBuilder();
      for (int column = 0; column < columns; column++) {
        String cell = row.get(column);
        String space = " ".repeat(width(rows, column) - cell.length());
        line.append(column == 0 ? "" : GAP);
        line.append(words(rows, column) ? cell + space : space + cell);
      }
      lines.add(line.toString().stripTrailing());
    }
    return lines;
  }

  private static int width(List<List<String>> rows, int column) {
    return rows.stream().mapToInt(row -> row.get(column).length()).max().orElse(0);
  }

  /** A column of words has a letter at the start of its cells; one of numbers has not. */
  private static boolean words(List<List<String>> rows, int column) {
    return rows.stream()
        .skip(1)
        .map(row -> row.get(column))
        .anyMatch(cell -> !cell.isEmpty() && Character.isLetter(cell.charAt(0)));
  }
}
