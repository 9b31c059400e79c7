package palmturn.lab;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.cli.PalmturnCommand;
import palmturn.cli.Run;

class LabTest {
  private static final String TRUTH = "sample-clips-synthetic/left-baseline-2.truth.json";

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(strings = {"draw", "bench", "onsets", "elbow", "networks", "fuzz", "golden"})
  void everyCommandHasHelp(String command) {
    Run run = LabRun.of(command, "--help");
    assertEquals(PalmturnCommand.DONE, run.status());
    assertTrue(run.out().contains("Usage: lab " + command), run.out());
  }

  @Test
  void wrongUseIsOneLineAndAHint() {
    for (String[] words : new String[][] {{}, {"paint"}, {"elbow"}, {"elbow", "scale", "long"}}) {
      Run run = LabRun.of((Object[]) words);
      assertEquals(PalmturnCommand.WRONG_USE, run.status(), String.join(" ", words));
      assertEquals(2, run.errorLines(), run.err());
      assertTrue(run.err().contains("Try 'lab"), run.err());
    }
  }

  @Test
  void anErrorIsOneLineAndComesWithItsTraceOnlyWithDebug() {
    Run run = LabRun.of("bench", "--clips", folder.resolve("none"));
    assertEquals(PalmturnCommand.WRONG_DATA, run.status());
    assertEquals(1, run.errorLines(), run.err());
    Run traced = LabRun.of("bench", "--debug", "--clips", folder.resolve("none"));
    assertEquals(PalmturnCommand.WRONG_DATA, traced.status());
    assertTrue(traced.err().contains("\tat palmturn.lab"), traced.err());
  }

  @Test
  void elbowErrorsAreSmallWhereItsPlaceAndScaleAreGiven() {
    Run run = LabRun.of("elbow", "errors", TRUTH);
    assertEquals(PalmturnCommand.DONE, run.status(), run.err());
    assertTrue(run.out().contains("left-baseline-2.mp4"), run.out());
    Matcher p95 = Pattern.compile("all: \\d+ frames, p95 ([0-9.]+) cm").matcher(run.out());
    assertTrue(p95.find(), run.out());
    assertTrue(Double.parseDouble(p95.group(1)) < 1, run.out());
  }

  @Test
  void goldenWritesIntoANewFolderOnly() {
    Run run = LabRun.of("golden", folder);
    assertEquals(PalmturnCommand.WRONG_DATA, run.status());
    assertTrue(run.err().contains("is there already"), run.err());
  }

  @Test
  void aPageIsLeftAsItWasWhereNothingCanBeMeasured() throws Exception {
    Path page = folder.resolve("estimate.md");
    String text = MeasuredPage.BEGIN + "\nold\n" + MeasuredPage.END + "\n";
    Files.writeString(page, text);
    Run run = LabRun.of("bench", "--docs", folder, "--clips", folder.resolve("none"));
    assertEquals(PalmturnCommand.WRONG_DATA, run.status());
    assertEquals(text, Files.readString(page));
  }

  @Test
  void aPageThatLostItsMarksIsRefusedBeforeAnythingIsMeasured() throws Exception {
    Files.writeString(folder.resolve("shape.md"), "no marks\n");
    Run run = LabRun.of("bench", "--shape", "--docs", folder);
    assertEquals(PalmturnCommand.WRONG_DATA, run.status());
    assertTrue(run.err().contains("has lost its marks"), run.err());
  }

  @Test
  void pagesAndOtherOutputsExcludeEachOther() {
    assertEquals(
        PalmturnCommand.WRONG_USE, LabRun.of("bench", "--docs", folder, "--json").status());
  }
}
