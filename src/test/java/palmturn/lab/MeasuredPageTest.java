package palmturn.lab;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.trial.UserError;

class MeasuredPageTest {
  @TempDir Path folder;

  @Test
  void tablesReplaceTheOldOnesAndNothingElse() throws Exception {
    Path file = folder.resolve("page.md");
    String before = "# Measured\n\nbefore\n" + MeasuredPage.BEGIN + "\n";
    String after = MeasuredPage.END + "\nafter\n";
    Files.writeString(file, before + "\nold table\n\n" + after);
    MeasuredPage.read(file).write("| new & \\ table |\n");
    assertEquals(before + "\n| new & \\ table |\n\n" + after, Files.readString(file));
    MeasuredPage.read(file).write("newer");
    assertEquals(before + "\nnewer\n\n" + after, Files.readString(file));
  }

  @Test
  void aPageWithoutItsMarksInOrderIsRefused() throws Exception {
    Path file = folder.resolve("page.md");
    for (String page :
        List.of(
            "", MeasuredPage.BEGIN + "\n", MeasuredPage.END + "\n" + MeasuredPage.BEGIN + "\n")) {
      Files.writeString(file, page);
      UserError error = assertThrows(UserError.class, () -> MeasuredPage.read(file));
      assertTrue(error.getMessage().contains("lost its marks"), error.getMessage());
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"estimate.md", "shape.md"})
  void thePagesOfThisProjectHaveTheirMarks(String page) throws Exception {
    MeasuredPage.read(Path.of("docs/measured", page));
  }

  @Test
  void theLineOfARunNamesFoldersWithoutWhereTheyLie() throws Exception {
    String line =
        MeasuredRun.line(
            folder,
            "tools/lab bench",
            List.of(folder.resolve("first"), folder.resolve("second")),
            "; load average before 0.10",
            Clock.fixed(Instant.parse("2026-11-30T23:00:00Z"), ZoneOffset.UTC));
    assertTrue(
        line.startsWith(
            "`tools/lab bench`, commit unknown, 2026-11-30; clips of `first`, `second`; "),
        line);
    assertTrue(line.endsWith("cores; load average before 0.10."), line);
    assertFalse(line.contains(folder.toString()), line);
  }
}
