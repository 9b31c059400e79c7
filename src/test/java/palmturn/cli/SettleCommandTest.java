package palmturn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import palmturn.store.SessionFolder;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.StartedFrom;
import palmturn.trial.TrialId;
import palmturn.trial.Zone;
import palmturn.work.session.Sessions;

/** Two fictional readers whose mistakes are known, settled and compared from the command line. */
class SettleCommandTest {
  private static final Path CLIPS = TwoReaders.CLIPS;
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String TRIAL = TwoReaders.TRIAL;

  @TempDir Path folder;
  private TwoReaders readers;
  private Path session;

  @BeforeEach
  void twoReaders() throws IOException {
    readers = TwoReaders.in(folder);
    session = readers.session();
  }

  private static Run run(Object... words) {
    Run run = Run.of(words);
    assertEquals(0, run.status(), run.err());
    return run;
  }

  private JsonNode settled() throws IOException {
    return JSON.readTree(run("settle", session, "--json").out());
  }

  @Test
  void everyPlantedDifferenceIsListedAndNoOther() throws IOException {
    Set<String> expected = new TreeSet<>();
    readers.plantedA.forEach((row, what) -> expected.add(row + " " + what));
    readers.plantedB.forEach((row, what) -> expected.add(row + " " + what));
    Set<String> listed = new TreeSet<>();
    JsonNode json = settled();
    for (JsonNode difference : json.get("differences")) {
      String worst = difference.get("what").get(0).asText();
      String word =
          switch (worst) {
            case "only-a", "only-b" -> "missed";
            case "apart" -> "shifted";
            case "double" -> "no double";
            default -> worst;
          };
      listed.add(readers.nearest(difference.get("timeS").asDouble()) + " " + word);
      assertEquals(1, difference.get("what").size(), difference.toString());
    }
    assertEquals(expected, listed);
    assertEquals(expected.size(), json.get("open").asInt());
    assertEquals(0, json.get("decided").asInt());
    assertEquals(Set.of(1), Set.of(json.get("differences").get(0).get("id").asInt()));
    assertTrue(json.get("differences").get(0).get("what").get(0).asText().startsWith("only"));
  }

  @Test
  void settlingThemAllGivesTheTruth() throws IOException {
    List<String> takes = new ArrayList<>();
    for (JsonNode difference : settled().get("differences")) {
      int row = readers.nearest(difference.get("timeS").asDouble());
      takes.add(difference.get("id").asInt() + (readers.plantedA.containsKey(row) ? "=b" : "=a"));
    }
    Run partly = run("settle", session, "--take", takes.get(0), "--by", "QM", "--why", "seen");
    assertTrue(partly.out().contains("QM"), partly.out());
    assertTrue(run("score", session).err().contains("still open"));
    assertTrue(run("score", session).out().contains(" A "), "open, so the first finished one");
    run("settle", session, "--take", String.join(",", takes), "--by", "QM");
    JsonNode done = settled();
    assertEquals(0, done.get("open").asInt());
    assertEquals(takes.size(), done.get("decided").asInt());
    assertEquals("finished", done.get("settled").get("state").asText());
    List<String> marks = new ArrayList<>();
    for (JsonNode slap : done.get("settled").get("slaps")) {
      marks.add(
          "%s,,%s,%s,%s"
              .formatted(
                  slap.get("timeS").asDouble(),
                  slap.get("kind").asText(),
                  slap.get("side").asText(),
                  slap.get("zone").asText()));
    }
    List<String> wanted = new ArrayList<>();
    for (String line : readers.truth.subList(1, readers.truth.size())) {
      String[] cells = line.split(",", -1);
      if (cells[1].isEmpty()) {
        wanted.add(
            "%s,,%s,%s,%s".formatted(Double.valueOf(cells[0]), cells[2], cells[3], cells[4]));
      }
    }
    assertEquals(wanted, marks);
    Run score = run("score", session, "--json");
    JsonNode trial = JSON.readTree(score.out()).get("trials").get(0);
    assertEquals("settled", trial.get("reading").asText());
    assertFalse(trial.get("independent").asBoolean());
    assertEquals(score.out(), run("score", session, "--reading", "settled", "--json").out());
    JsonNode file = JSON.readTree(session.resolve("trials/" + TRIAL + ".json").toFile());
    JsonNode kept = file.get("settlements").get(0).get("slaps").get(0);
    assertEquals("QM", kept.get("by").asText());
    assertEquals("seen", kept.get("why").asText());
    assertTrue(kept.has("a") || kept.has("b"), "what both said");
  }

  @Test
  void theReportShowsWhereTheReadingsDifferAndWhatIsOpen() throws IOException {
    run("settle", session, "--take", "1=b", "--by", "QM", "--why", "seen twice");
    run("report", session);
    String page = Files.readString(session.resolve("report/report.html"));
    int open = page.indexOf("Still open");
    String notDecided = "8 of 9\u00A0differences between A and B not yet decided";
    assertTrue(open >= 0 && page.indexOf(notDecided) > open, "at the top");
    assertTrue(page.indexOf(notDecided) < page.indexOf("<main>"), "at the top");
    assertTrue(page.contains("the second (QM, "), "how it was decided");
    assertTrue(page.contains("seen twice"), "and why");
    assertTrue(page.contains("comes from the marks of A"), "which reading it comes from");
    assertTrue(page.contains(">settled</th>"), "counts of the settled reading");
  }

  @Test
  void agreementHasTheFixedForm() throws IOException {
    readers.bring(session, "right-baseline-2", "A", Map.of());
    readers.bring(session, "right-baseline-2", "B", Map.of(5, "missed"));
    JsonNode json = JSON.readTree(run("agree", session, "--readers", "A,B", "--json").out());
    JsonNode trial = json.get("trials").get(0);
    assertEquals(TRIAL, trial.get("trial").asText());
    assertTrue(trial.get("independent").asBoolean());
    int pairs = trial.get("pairs").asInt();
    double precision = (double) pairs / (pairs + trial.get("onlyB").asInt());
    assertEquals(precision, trial.get("precision").asDouble(), 1e-12);
    assertTrue(trial.get("kappaSide").asDouble() < 1);
    JsonNode overall = json.get("overall");
    assertEquals("rateSlapsPerS", overall.get("blandAltman").get("measure").asText());
    assertTrue(overall.get("blandAltman").get("biasLow").isNumber());
    assertTrue(overall.get("icc21").get("low").isNumber());
    String text = run("agree", session, "--readers", "A,B").out();
    assertTrue(text.contains("within ms") && text.contains("ICC(2,1)"), text);
  }

  @Test
  void agreementIsNotGivenForReadingsThatAreNotIndependent() throws IOException {
    Path file = session.resolve("trials/" + TRIAL + ".json");
    String text = Files.readString(file);
    int second = text.lastIndexOf("\"startedFrom\": \"nothing\"");
    Files.writeString(
        file, text.substring(0, second) + "\"estimateSeen\": true, " + text.substring(second));
    JsonNode json = JSON.readTree(run("agree", session, "--readers", "A,B", "--json").out());
    JsonNode trial = json.get("trials").get(0);
    assertFalse(trial.get("independent").asBoolean());
    assertTrue(trial.get("pairs").asInt() > 10, "still compared");
    assertTrue(trial.get("f").isNull() && trial.get("kappaSide").isNull(), trial.toString());
    assertTrue(json.get("overall").get("f").isNull());
    assertTrue(json.get("overall").get("blandAltman").isNull());
    assertTrue(json.get("overall").get("icc21").isNull());
    String said = run("agree", session, "--readers", "A,B").out();
    assertTrue(said.contains("not independent"), said);
    assertTrue(run("settle", session).out().contains("not independent"));
  }

  @Test
  void aMarkMadeAnewStandsWhereNeitherIsRight() throws IOException {
    run("settle", session, "--anew", "1=0.5,,slap,palm,wrist", "--by", "QM", "--why", "both late");
    JsonNode first = settled().get("differences").get(0);
    assertEquals("neither", first.get("choice").asText());
    String marks = run("score", session, "--reading", "settled", "--json").out();
    assertTrue(marks.contains("settled"));
    String file = Files.readString(session.resolve("trials/" + TRIAL + ".json"));
    assertTrue(file.contains("\"anew\""), file);
    assertTrue(file.contains("both late"));
  }

  @Test
  void besideTheEstimateAReadersMistakesAreListedAndItsZonesLeftAside() throws IOException {
    run("estimate", session);
    Set<String> expected = new TreeSet<>();
    readers.plantedA.forEach((row, what) -> expected.add(row + " " + what));
    expected.removeIf(each -> each.endsWith("zone"));
    Set<String> listed = new TreeSet<>();
    JsonNode json =
        JSON.readTree(run("settle", session, "--a", "A", "--b", "estimate", "--json").out());
    for (JsonNode difference : json.get("differences")) {
      String what = difference.get("what").get(0).asText();
      String word = what.equals("only-b") ? "missed" : what.equals("apart") ? "shifted" : what;
      listed.add(readers.nearest(difference.get("timeS").asDouble()) + " " + word);
    }
    assertEquals(expected, listed);

    JsonNode agreed =
        JSON.readTree(run("agree", session, "--readers", "A,estimate", "--json").out());
    long marked =
        readers.truth.size()
            - 1
            - readers.plantedA.values().stream().filter("missed"::equals).count();
    long shifted = readers.plantedA.values().stream().filter("shifted"::equals).count();
    assertEquals(
        (marked - shifted) / (double) marked, agreed.get("overall").get("recall").asDouble(), 1e-9);
  }

  @Test
  void withoutAnEstimateAgreementWithItSaysWhatToDo() {
    Run run = Run.of("agree", session, "--readers", "A,estimate");
    assertEquals(1, run.status());
    assertTrue(run.err().contains("run estimate first"), run.err());
  }

  @Test
  void underTwoTrialsNothingIsSaidOverTrials() throws IOException {
    JsonNode json = JSON.readTree(run("agree", session, "--readers", "A,B", "--json").out());
    assertTrue(json.get("overall").get("f").isNumber());
    assertTrue(json.get("overall").get("blandAltman").isNull());
    assertTrue(json.get("overall").get("icc21").isNull());
  }

  @Test
  void manySessionsAreTakenTogether() throws IOException {
    Path other = folder.resolve("t");
    run("new", other, "--athlete", "H-08");
    readers.bring(other, TRIAL, "A", Map.of());
    readers.bring(other, TRIAL, "B", Map.of(5, "missed"));
    JsonNode json = JSON.readTree(run("agree", session, other, "--readers", "A,B", "--json").out());
    assertEquals(2, json.get("trials").size());
    assertEquals("t", json.get("trials").get(1).get("session").asText());
    assertTrue(json.get("overall").get("blandAltman").isObject());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "1 | settle | --a A --b A | itself",
        "1 | settle | --a A --b C | C",
        "1 | settle | --a A --b estimate | estimate",
        "1 | settle | --trial left-baseline-1 | left-baseline-1",
        "1 | settle | --take 99=a --by QM | 99",
        "1 | agree | --readers A,A | itself",
        "1 | agree | --readers A,C | C",
        "2 | agree | --readers A | two names",
        "2 | settle | --a A | go together",
        "2 | settle | --take 1=a | --by",
        "2 | settle | --anew 1=0.5,,slap,palm,wrist | --by",
        "1 | settle | --anew 1=0.5,,slap,thumb,wrist --by QM | thumb",
        "1 | settle | --anew 1=0.5,0.9,elbow-out,, --by QM | about a mark",
        "2 | settle | --take 1=c --by QM | --take",
        "2 | settle | --by QM | --take",
        "2 | settle | --tolerance 0 | --tolerance",
      })
  void badInputIsOneLine(int status, String command, String options, String named)
      throws IOException {
    Path file = session.resolve("trials/" + TRIAL + ".json");
    String before = Files.readString(file);
    List<Object> words = new ArrayList<>(List.of(command, session));
    words.addAll(List.of(options.split(" ")));
    Run run = Run.of(words.toArray());
    assertEquals(status, run.status(), run.err());
    assertEquals(status, run.errorLines(), run.err());
    assertTrue(run.err().contains(named), run.err());
    assertEquals("", run.out());
    assertEquals(before, Files.readString(file));
  }

  @Test
  void aSessionNamedTwiceIsRefused() {
    Run run = Run.of("agree", session, session, "--readers", "A,B");
    assertEquals(1, run.status());
    assertEquals(1, run.errorLines(), run.err());
  }

  @Test
  void readingsOfAnotherClipAndMarksOutsideItAreExplained() throws Exception {
    // Importing refuses them; a session of an older program may hold some.
    Reading far =
        Reading.begin("C", StartedFrom.NOTHING)
            .plus(Slap.onFrame(Slap.Kind.SLAP, 501.0, 0.02, Side.PALM, Zone.CENTRE))
            .plus(Slap.onFrame(Slap.Kind.SLAP, 501.2, 0.02, Side.BACK, Zone.CENTRE))
            .withFinished(true);
    try (SessionFolder open = Sessions.open(session)) {
      open.keep(TrialId.parse(TRIAL), far, "Import marks");
    }
    Run run = run("settle", session, "--a", "A", "--b", "C", "--json");
    assertTrue(run.err().contains("2 of the marks by C lie outside the clip"), run.err());
    assertTrue(run.err().contains("not one mark of A is near one of C"), run.err());
    assertNull(JSON.readTree(run.out()).get("matched").get(0));
  }

  @Test
  void noReaderMayBeCalledSettled() {
    Run run =
        Run.of(
            "marks",
            "import",
            session.resolve(TRIAL),
            CLIPS.resolve(TRIAL + ".marks.csv"),
            "--reader",
            "settled");
    assertEquals(1, run.status());
    assertEquals(1, run.errorLines(), run.err());
  }
}
