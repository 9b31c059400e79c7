package palmturn.lab;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.cli.PalmturnCommand;
import palmturn.cli.Run;

/** The tests run without the landmark networks (palmturn.models names an empty folder). */
class BenchShapeTest {
  @Test
  void withoutTheNetworksItSaysSoAndMeasuresTheRest(@TempDir Path folder) throws Exception {
    for (String end : new String[] {".mp4", ".truth.json"}) {
      String name = "right-baseline-1" + end;
      Files.copy(Path.of("sample-clips-synthetic", name), folder.resolve(name));
    }
    Run run = LabRun.of("bench", "--shape", "--clips", folder.toString());
    assertEquals(PalmturnCommand.DONE, run.status(), run.err());
    assertTrue(run.out().startsWith("shape: not installed"), run.out());
    assertTrue(run.out().contains("one named, without shape"), run.out());
  }

  @Test
  void howTheNetworksLookIsRefusedWhereTheShapeIsNotMeasured() {
    for (String how : new String[] {"--lite", "--around-contacts"}) {
      Run run = LabRun.of("bench", how);
      assertEquals(PalmturnCommand.WRONG_USE, run.status());
      assertTrue(run.err().contains("go with --shape"), run.err());
    }
  }
}
