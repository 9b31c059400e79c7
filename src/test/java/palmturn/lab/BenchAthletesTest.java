package palmturn.lab;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import palmturn.cli.PalmturnCommand;
import palmturn.cli.Run;

class BenchAthletesTest {
  /**
   * Few athletes: 15 of 30 or fewer would be hit once in a million times by intervals of 93.5 %.
   */
  @Test
  void intervalsOfDrawnAthletesHoldTheTruthMoreOftenThanNot() throws Exception {
    Run run = LabRun.of("bench", "--athletes", "30", "--json");
    assertEquals(PalmturnCommand.DONE, run.status(), run.err());
    Map<String, Double> rows = new HashMap<>();
    for (JsonNode row : new ObjectMapper().readTree(run.out()).get("rows")) {
      rows.put(row.get("id").asText(), row.get("value").asDouble());
    }
    for (String comparison : new String[] {"sides", "change", "net"}) {
      for (String quality : new String[] {"speed", "accuracy", "rhythm", "endurance"}) {
        String id = "drill.%s.%s.coveredPct".formatted(comparison, quality);
        assertTrue(rows.get(id) > 50, id);
      }
    }
    assertTrue(rows.get("ceiling.ladder.coveredPct") > 50);
  }
}
