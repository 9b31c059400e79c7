package palmturn.measure;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** docs/measures.md says of each measure what the program says of it. */
class MeasuresDocTest {
  @Test
  void theDocListsEveryMeasureAsDeclared() throws IOException {
    StringBuilder table = new StringBuilder();
    table.append("| key | name, unit | formula | source |\n| --- | --- | --- | --- |\n");
    for (Measure each : Measures.ALL) {
      table.append(
          "| `%s` | %s%s: %s | %s | %s |\n"
              .formatted(
                  each.id(),
                  each.name(),
                  each.unit().isEmpty() ? "" : ", " + each.unit(),
                  each.help(),
                  each.formula().replace("|", "\\|"),
                  each.source()));
    }
    Files.createDirectories(Path.of("target"));
    Files.writeString(Path.of("target", "measures-table.md"), table);
    String doc = Files.readString(Path.of("docs", "measures.md"));
    assertTrue(
        doc.contains(table), "docs/measures.md is not what target/measures-table.md now says");
  }
}
