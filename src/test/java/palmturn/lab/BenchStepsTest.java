package palmturn.lab;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import palmturn.cli.PalmturnCommand;
import palmturn.cli.Run;

class BenchStepsTest {
  @Test
  void benchTimesStepsThroughAClipAndNothingElse() throws Exception {
    Run run =
        LabRun.of("bench", "--steps", "sample-clips-synthetic/right-baseline-1.mp4", "--json");
    assertEquals(PalmturnCommand.DONE, run.status(), run.err());
    JsonNode rows = new ObjectMapper().readTree(run.out()).get("rows");
    Set<String> ids = new HashSet<>();
    for (JsonNode row : rows) {
      ids.add(row.get("id").asText());
      assertTrue(row.get("value").asDouble() > 0, row.toString());
    }
    assertEquals(Set.of("stepForwardMs", "stepBackMs", "jumpMs", "jumpFrames", "cacheMiB"), ids);
  }

  @Test
  void aClipThatIsNotThereIsSaidInOneLine() {
    Run run = LabRun.of("bench", "--steps", "none.mp4");
    assertEquals(PalmturnCommand.WRONG_DATA, run.status());
    assertEquals(1, run.errorLines());
  }
}
