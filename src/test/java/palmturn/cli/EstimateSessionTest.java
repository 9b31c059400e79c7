package palmturn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The real estimate, from the command line, on bundled clips. */
class EstimateSessionTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Path CLIPS = Path.of("sample-clips-synthetic");

  @TempDir Path folder;

  @Test
  void aSessionKeepsItsEstimatesAndScoresThem() throws Exception {
    Path session = folder.resolve("s");
    run("new", session, "--athlete", "H-07");
    for (String hand : List.of("right", "left")) {
      run("add", session, CLIPS.resolve(hand + "-baseline-1.mp4"), "--hand", hand);
    }
    Path marks = CLIPS.resolve("right-baseline-1.marks.csv");
    run("marks", "import", session.resolve("right-baseline-1"), marks, "--reader", "AB");
    JsonNode before = trial(session, "right-baseline-1").get("readings");

    String out = run("estimate", session, "--jobs", "2", "--json").out();
    List<String> lines = out.lines().toList();
    assertEquals(2, lines.size(), out);
    JsonNode first = JSON.readTree(lines.get(0));
    boolean leftFirst = first.get("hand").textValue().equals("left");
    JsonNode left = leftFirst ? first : JSON.readTree(lines.get(1));
    JsonNode right = leftFirst ? JSON.readTree(lines.get(1)) : first;
    assertEquals("left-baseline-1", left.get("trial").textValue());
    assertEquals(session.toString(), left.get("session").textValue());
    assertEquals("right", right.get("hand").textValue());

    // The reader's first mark tells palm from back on the right; nobody has marked the left.
    JsonNode truth = JSON.readTree(CLIPS.resolve("right-baseline-1.truth.json").toFile());
    assertEquals(sides(truth.get("contacts")), sides(right.get("slaps")));
    assertEquals("unknown", left.get("slaps").get(0).get("side").textValue());
    assertTrue(right.get("warnings").toString().contains("AB's mark"), right.toString());

    JsonNode kept = trial(session, "right-baseline-1");
    assertEquals(before, kept.get("readings"), "no reading is touched");
    assertEquals(right.get("slaps").size(), kept.get("estimate").get("slaps").size());

    JsonNode score = JSON.readTree(run("score", session, "--reading", "estimate", "--json").out());
    JsonNode scored = score.get("trials").get(1);
    assertEquals("estimate", scored.get("reading").textValue());
    assertEquals(false, scored.get("independent").booleanValue());
    assertTrue(scored.get("cleanSharePct").isNull(), "zones are not told without shape");
    double rate = truth.get("realised").get("rateSlapsPerS").doubleValue();
    assertEquals(rate, scored.get("rateSlapsPerS").doubleValue(), 0.005 * rate);

    JsonNode made = kept.get("estimate");
    run("estimate", session, "--trial", "right-baseline-1", "--use", "motion");
    JsonNode again = trial(session, "right-baseline-1").get("estimate");
    assertNotEquals(made, again, "asked again, it is made again");
    assertEquals("[\"motion\"]", again.get("sources").toString());
    assertEquals(0, run("verify", session).status());
  }

  @Test
  void aClipWithoutASessionTakesTheAthletesLengths() throws Exception {
    String out =
        run(
                "estimate",
                CLIPS.resolve("right-baseline-1.mp4"),
                "--hand",
                "right",
                "--use",
                "motion",
                "--forearm",
                "26",
                "--stature",
                "172",
                "--json")
            .out();
    JsonNode elbow = JSON.readTree(out).get("elbow");
    assertEquals("forearm", elbow.get("scale").textValue());
    assertEquals(
        26 * elbow.get("maxForearms").doubleValue(), elbow.get("maxCm").doubleValue(), 0.05);
  }

  private static Run run(Object... args) {
    Run run = Run.of(args);
    assertEquals(0, run.status(), run.err());
    return run;
  }

  private static JsonNode trial(Path session, String name) throws Exception {
    return JSON.readTree(Files.readString(session.resolve("trials/" + name + ".json")));
  }

  private static String sides(JsonNode slaps) {
    return Stream.iterate(0, i -> i < slaps.size(), i -> i + 1)
        .map(i -> Objects.requireNonNull(slaps.get(i)).get("side").textValue())
        .collect(Collectors.joining(" "));
  }
}
