package palmturn.lab.bench;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import palmturn.json.JsonException;
import palmturn.trial.Hand;
import palmturn.trial.Side;
import palmturn.trial.Zone;

class ClipTruthTest {
  private static final String PLAIN =
      """
      {"moving_hand": "left", "mirrored": true,
       "contacts": [
         {"t_s": 1.25, "side": "back", "zone": "centre", "double": true},
         {"t_s": 1.05, "side": "palm", "zone": "wrist", "double": false}],
       "frame_times_s": [0.0, 0.5, 1.0],
       "elbow_px_per_frame": [[100.0, 50.0], [110.0, 50.0], [100.0, 70.0]],
       "cm_per_px_at_elbow_per_frame": [0.2, 0.1, 0.2]}
      """;

  @Test
  void itReadsThePrograms() throws IOException, JsonException {
    ClipTruth truth =
        ClipTruth.read(
            Files.readString(Path.of("sample-clips-synthetic/right-baseline-1.truth.json")));
    assertEquals(Hand.RIGHT, truth.hand());
    assertEquals(28, truth.contacts().size());
    assertEquals(
        new ClipTruth.TrueContact(0.95, Side.PALM, Zone.CENTRE, false), truth.contacts().get(0));
    assertEquals(1, truth.contacts().stream().filter(ClipTruth.TrueContact::isDouble).count());
    ClipTruth.ElbowDisplacement elbow = truth.elbow();
    assertNotNull(elbow);
    assertEquals(120.14, elbow.xPx());
    assertEquals(1.0, elbow.timesS()[120], 1e-12);
    assertEquals(elbow.timesS().length, elbow.upCm().length);
  }

  @Test
  void itReadsThePlainForm() throws JsonException {
    ClipTruth truth = ClipTruth.read(PLAIN);
    assertEquals(Hand.LEFT, truth.hand());
    assertTrue(truth.mirrored());
    assertEquals(
        new ClipTruth.TrueContact(1.05, Side.PALM, Zone.WRIST, false), truth.contacts().get(0));
    assertTrue(truth.contacts().get(1).isDouble());
    ClipTruth.ElbowDisplacement elbow = truth.elbow();
    assertNotNull(elbow);
    assertEquals(0.2, elbow.cmPerPixel());
    assertArrayEquals(new double[] {0, 1, 0}, elbow.rightCm(), 1e-12);
    // Down the picture is negative upwards.
    assertArrayEquals(new double[] {0, 0, -4}, elbow.upCm(), 1e-12);
  }

  @Test
  void theProgramsOwnNamesItsBentWrists() throws JsonException {
    ClipTruth truth =
        ClipTruth.read(
            """
            {"format": "palmturn-truth", "parameters": {"hand": "right"}, "contacts": [],
             "spans": [{"kind": "elbow-out", "startS": 1, "endS": 2},
                       {"kind": "bent-wrist", "startS": 0.5, "endS": 1.5}],
             "seriesHz": 2.0, "bentWristDeg": [3.0, -40.0, 20.0, 50.0, 60.0]}
            """);
    ClipTruth.BentStretch bent = new ClipTruth.BentStretch(0.5, 1.5);
    assertEquals(List.of(bent), truth.bentWrist());
    ClipTruth.AngleSeries bend = truth.bend();
    assertNotNull(bend);
    assertEquals(50, bend.largestDeg(bent));
  }

  @Test
  void inThePlainFormAWristIsBentOver10DegreesFor300Ms() throws JsonException {
    ClipTruth truth =
        ClipTruth.read(
            """
            {"moving_hand": "left", "contacts": [], "series_hz": 10, "series_t0_s": 1.0,
             "bent_wrist_deg": [0, 11, 11, 0, -12, 13, -14, 10, 0, 20, 20, 20]}
            """);
    assertEquals(2, truth.bentWrist().size());
    assertEquals(1.4, truth.bentWrist().get(0).startS(), 1e-12);
    assertEquals(1.7, truth.bentWrist().get(0).endS(), 1e-12);
    assertEquals(2.2, truth.bentWrist().get(1).endS(), 1e-12);
  }

  @Test
  void anElbowMayBeUntold() throws JsonException {
    assertNull(ClipTruth.read("{\"moving_hand\": \"left\", \"contacts\": []}").elbow());
    String nobody =
        """
        {"format": "palmturn-truth", "parameters": {"hand": "right"}, "contacts": []}
        """;
    assertNull(ClipTruth.read(nobody).elbow());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "[]",
        "{}",
        "{\"moving_hand\": \"left\"}",
        "{\"moving_hand\": \"both\", \"contacts\": []}",
        "{\"moving_hand\": \"left\", \"contacts\": [{\"t_s\": \"1\", \"side\": \"palm\"}]}",
        "{\"format\": \"palmturn-truth\", \"contacts\": []}",
      })
  void whatIsNeitherIsRefused(String text) {
    assertThrows(JsonException.class, () -> ClipTruth.read(text));
  }
}
