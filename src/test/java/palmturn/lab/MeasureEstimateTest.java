package palmturn.lab;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The script writes between its marks and nowhere else, here with a bench that only prints. */
@DisabledOnOs(OS.WINDOWS)
class MeasureEstimateTest {
  private static final String PAGE =
      """
      # Measured

      before
      <!-- measure-estimate: from here -->
      old table
      <!-- measure-estimate: to here -->
      after
      """;
  private static final String SHAPE_PAGE =
      """
      # Shape

      <!-- measure-estimate --shape: from here -->
      old shape
      <!-- measure-estimate --shape: to here -->
      """;

  @TempDir Path home;

  @BeforeEach
  void makeHome() throws IOException {
    for (String folder : List.of("tools", "docs/measured", "sample-clips-synthetic", "more")) {
      Files.createDirectories(home.resolve(folder));
    }
    Files.copy(Path.of("tools/measure-estimate"), home.resolve("tools/measure-estimate"));
    Files.writeString(home.resolve("docs/measured/estimate.md"), PAGE);
    Files.writeString(home.resolve("docs/measured/shape.md"), SHAPE_PAGE);
  }

  private int run(String bench, String... folders) throws Exception {
    return run(bench, List.of(), folders);
  }

  private int run(String bench, List<String> options, String... folders) throws Exception {
    Path program = home.resolve("tools/palmturn");
    Files.writeString(program, "#!/bin/sh\n" + bench + "\n");
    assertTrue(program.toFile().setExecutable(true));
    List<String> command = new ArrayList<>();
    command.add("bash");
    command.add(home.resolve("tools/measure-estimate").toString());
    command.addAll(options);
    for (String folder : folders) {
      command.add(home.resolve(folder).toString());
    }
    Process process =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(home.resolve("said.txt").toFile())
            .start();
    return process.waitFor();
  }

  private String page() throws IOException {
    return Files.readString(home.resolve("docs/measured/estimate.md"), StandardCharsets.UTF_8);
  }

  private String shapePage() throws IOException {
    return Files.readString(home.resolve("docs/measured/shape.md"), StandardCharsets.UTF_8);
  }

  @Test
  void theTablesReplaceTheOldOnes() throws Exception {
    assertEquals(0, run("echo '| new & \\\\ table |'", "more"));
    String page = page();
    assertTrue(page.startsWith("# Measured\n\nbefore\n<!-- measure-estimate: from"), page);
    assertTrue(page.contains("| new & \\ table |"), page);
    assertTrue(page.contains("`sample-clips-synthetic`, `more`"), page);
    assertTrue(page.contains("<!-- measure-estimate: to here -->\nafter\n"), page);
    assertEquals(SHAPE_PAGE, shapePage());
    assertTrue(!page.contains("old table") && !page.contains(home.toString()), page);
    assertEquals(0, run("echo newer"));
    assertTrue(page().contains("newer") && !page().contains("new &"), page());
  }

  @Test
  void shapeHasAPageOfItsOwnWithAHeadingForEachFolder() throws Exception {
    assertEquals(0, run("echo \"| $* |\"", List.of("--shape"), "more"));
    assertEquals(PAGE, page());
    String page = shapePage();
    assertTrue(!page.contains("old shape"), page);
    assertTrue(page.contains("## Clips of `sample-clips-synthetic`\n\n| bench --shape"), page);
    assertTrue(page.contains("## Clips of `more`\n\n| bench --shape --markdown"), page);
  }

  @Test
  void aBenchThatFailsOutrightLeavesThePageAsItWas() throws Exception {
    assertEquals(1, run("exit 1"));
    assertEquals(PAGE, page());
  }

  @Test
  void oneBadClipIsWrittenAndToldByTheStatus() throws Exception {
    assertEquals(1, run("echo partly; exit 1"));
    assertTrue(page().contains("partly"), page());
  }

  @Test
  void aFolderThatIsNotThereIsWrongUse() throws Exception {
    assertEquals(2, run("echo x", "gone"));
    assertEquals(PAGE, page());
  }
}
