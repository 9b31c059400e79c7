package palmturn.lab.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.clip.Progress;
import palmturn.estimate.request.Request;
import palmturn.trial.Curve;
import palmturn.trial.ElbowPath;
import palmturn.trial.Estimate;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Extra;
import palmturn.trial.Hand;
import palmturn.trial.Point;
import palmturn.trial.SampleFiles;
import palmturn.trial.Side;
import palmturn.trial.UserError;
import palmturn.trial.Zone;
import palmturn.work.estimate.Estimating;

class BenchTest {
  private static final Path CLIPS = Path.of("sample-clips-synthetic");
  private static final String NAME = "right-baseline-1";

  @TempDir Path folder;

  private static EstimatedSlap slap(double timeS, Side side, boolean isDouble) {
    return new EstimatedSlap(
        EstimatedSlap.Timing.seen(timeS, 0.016),
        new EstimatedSlap.EstimatedSide(1, side, 1),
        EstimatedSlap.EstimatedZone.UNKNOWN,
        isDouble,
        Set.of(Estimate.Source.MOTION),
        1,
        "");
  }

  private static Estimate estimate(
      List<EstimatedSlap> slaps, Double rate, Double cv, Double hz, ElbowPath elbow) {
    return new Estimate(
        new Estimate.Basis(SampleFiles.SHA, Set.of(Estimate.Source.MOTION), 60, false, null),
        new Estimate.Findings(true, slaps, List.of(), List.of()),
        new Estimate.Figures(rate, cv, null, new Estimate.Rotation(hz, Curve.EMPTY, null, null)),
        Estimate.Traces.NONE,
        new Estimate.Limbs(elbow, null),
        List.of(),
        Extra.NONE);
  }

  private static ClipTruth truth(ClipTruth.TrueContact... contacts) {
    return new ClipTruth(Hand.RIGHT, false, List.of(contacts), List.of(), null, null, null);
  }

  private static ClipTruth.TrueContact contact(double timeS, Side side, boolean isDouble) {
    return new ClipTruth.TrueContact(timeS, side, Zone.CENTRE, isDouble);
  }

  @Test
  void aComparisonCountsWhatIsRightMissedAndInvented() throws Exception {
    ClipTruth truth =
        truth(
            contact(1.0, Side.PALM, false),
            contact(1.2, Side.BACK, false),
            contact(1.3, Side.BACK, true),
            contact(1.4, Side.PALM, false));
    List<EstimatedSlap> slaps =
        List.of(
            slap(1.004, Side.PALM, false),
            slap(1.206, Side.PALM, false),
            slap(1.304, Side.BACK, true),
            slap(1.8, Side.BACK, true));
    EstimateComparison found =
        EstimateComparison.of(truth, estimate(slaps, 5.05, 1.0, 2.4, null), 0.025);
    assertEquals(4, found.truth());
    assertEquals(4, found.found());
    assertEquals(3, found.matched());
    assertEquals(2.0 * 3 / 8, found.f(), 1e-12);
    assertEquals(0.004, found.offsetS(), 1e-12);
    assertEquals(0.014, found.errorSumS(), 1e-12);
    assertEquals(0.002, found.errorSumAfterOffsetS(), 1e-12);
    assertEquals(2, found.sidesRight());
    assertEquals(1, found.trueDoubles());
    assertEquals(2, found.doublesFound());
    assertEquals(1, found.doublesMatched());
    // The double left out, two intervals of 0.2 s: 5 slaps/s, even, 2.5 turns there and back.
    assertEquals(1.0, found.rateErrorPct(), 1e-9);
    assertEquals(1.0, found.cvErrorPoints(), 1e-9);
    assertEquals(-4.0, found.frequencyErrorPct(), 1e-9);
  }

  @Test
  void aPauseCountsInTheRateAndNotInTheFrequency() throws Exception {
    ClipTruth truth =
        truth(
            contact(1.0, Side.PALM, false),
            contact(1.2, Side.BACK, false),
            contact(1.4, Side.PALM, false),
            contact(2.0, Side.BACK, false));
    EstimateComparison found =
        EstimateComparison.of(truth, estimate(List.of(), 3.0, null, 2.5, null), 0.025);
    assertEquals(0, found.rateErrorPct(), 1e-9);
    assertEquals(0, found.frequencyErrorPct(), 1e-9);
    assertNull(found.cvErrorPoints());
    assertNull(found.offsetS());
  }

  @Test
  void theElbowIsComparedFromItsPlaceBeforeTheFirstSlap() {
    double[] timesS = {0, 0.8, 0.9, 1.0, 1.1, 1.2};
    ClipTruth truth =
        new ClipTruth(
            Hand.RIGHT,
            false,
            List.of(contact(1.0, Side.PALM, false)),
            List.of(),
            null,
            null,
            new ClipTruth.ElbowDisplacement(
                0,
                0,
                0.1,
                timesS,
                new double[] {-5, 1, 1, 1, 4, 4},
                new double[] {0, 0, 0, 0, 4, 4}));
    // True: 0, 2.5 between samples, 5 and 5 cm.
    ElbowPath path =
        new ElbowPath(
            null,
            null,
            new ElbowPath.PictureScale("given", 0.1, null),
            new Point(0, 0),
            List.of(
                new ElbowPath.Sample(1.0, 0.0, 0.0, 0.0),
                new ElbowPath.Sample(1.05, 0.0, 0.0, 27.0),
                new ElbowPath.Sample(1.1, 0.0, 0.0, 55.0),
                new ElbowPath.Sample(1.2, 0.0, 0.0, 50.0)),
            List.of(),
            List.of());
    ElbowComparison found = ElbowComparison.of(truth, estimate(List.of(), null, null, null, path));
    assertNotNull(found);
    assertEquals(4, found.frames());
    assertEquals(3, found.within());
    assertNull(ElbowComparison.of(truth, estimate(List.of(), null, null, null, null)));
  }

  private void copy() throws IOException {
    for (String end : new String[] {".mp4", ".truth.json"}) {
      Files.copy(CLIPS.resolve(NAME + end), folder.resolve(NAME + end));
    }
  }

  @Test
  void aBenchRunsBothWaysAndGivesTheLabelAndTheElbow() throws Exception {
    copy();
    ClipTruth truth = ClipTruth.read(Files.readString(folder.resolve(NAME + ".truth.json")));
    List<Request> asked = new ArrayList<>();
    Bench bench =
        new Bench(
            new Estimating(
                (clip, request, watch) -> {
                  asked.add(request);
                  boolean all = request.use().contains(Estimate.Source.SOUND);
                  return estimate(
                      truth.contacts().stream()
                          .skip(all ? 0 : 14)
                          .map(c -> slap(c.timeS() + 0.003, c.side(), c.isDouble()))
                          .toList(),
                      null,
                      null,
                      null,
                      null);
                }));
    BenchResult result = bench.run(List.of(folder), Progress.NONE);
    assertEquals(List.of(), result.failed());
    Request last = asked.get(asked.size() - 1);
    assertEquals(Set.of(Estimate.Source.MOTION), last.use());
    Request all = asked.get(asked.size() - 2);
    assertEquals(Set.of(Estimate.Source.SOUND, Estimate.Source.MOTION), all.use());
    assertEquals(0.95, all.known().timeS());
    assertEquals(120.14, all.hints().elbow().x());
    assertEquals(0.12210323176017004, all.hints().scale().cmPerPixel(), 1e-12);
    assertEquals(1.0, row(result, "soundF").value());
    assertEquals(Boolean.TRUE, row(result, "soundF").reached());
    assertEquals(0.0, row(result, "soundErrorMs").value(), 1e-9);
    assertEquals(2.0 * 14 / 42, row(result, "picture60F").value(), 1e-12);
    assertEquals(Boolean.FALSE, row(result, "picture60F").reached());
    assertEquals(NAME, row(result, "picture60F").worstClip());
    assertEquals(3.0, row(result, "picture60ErrorMs").value(), 1e-9);
    assertEquals(100.0, row(result, "sidesPct").value());
    assertEquals(1.0, row(result, "doublesRecall").value());
    assertNull(row(result, "elbowWithinPct").value());
    assertNull(row(result, "elbowWithinPct").reached());
    assertEquals(1.0, row(result, "elbowNotFollowed").value());
    assertEquals(1.0, row(result, "rateNotTold").value());
    assertNull(row(result, "noTrialSlaps").value());
    assertTrue(row(result, "timeOfLength").value() > 0);
    assertTrue(result.json().contains("\"picture60F\""));
    String table = result.markdown();
    assertTrue(table.contains("| 0.667 | ≥ 0.980 | **no** | right-baseline-1, 0.667 |"), table);
  }

  @Test
  void withShapeNothingIsGivenAndWithoutTheNetworksItIsNotAskedFor() throws Exception {
    copy();
    List<Request> asked = new ArrayList<>();
    Bench bench =
        new Bench(
            new Estimating(
                (clip, request, watch) -> {
                  asked.add(request);
                  return estimate(List.of(), null, null, null, null);
                }));
    ShapeResult with = bench.measureShapes(List.of(folder), true, Progress.NONE);
    assertEquals(List.of(), with.failed());
    assertEquals(NAME, with.clips().get(0).name());
    assertEquals(2, asked.size());
    Request without = asked.get(0);
    assertEquals(Set.of(Estimate.Source.SOUND, Estimate.Source.MOTION), without.use());
    assertEquals(0.95, without.known().timeS());
    Request all = asked.get(1);
    assertTrue(all.use().contains(Estimate.Source.SHAPE));
    assertNull(all.known());
    assertNull(all.hints().elbow());
    assertNull(
        bench.measureShapes(List.of(folder), false, Progress.NONE).clips().get(0).withShape());
    assertEquals(3, asked.size());
  }

  @Test
  void slapsInAClipWithoutATrialAreCounted() throws Exception {
    Files.copy(CLIPS.resolve(NAME + ".mp4"), folder.resolve("none.mp4"));
    Files.writeString(
        folder.resolve("none.truth.json"), "{\"moving_hand\": \"left\", \"contacts\": []}");
    Bench bench =
        new Bench(
            new Estimating(
                (clip, request, watch) ->
                    estimate(List.of(slap(1, Side.UNKNOWN, false)), null, null, null, null)));
    BenchFigure row = row(bench.run(List.of(folder), Progress.NONE), "noTrialSlaps");
    assertEquals(1, row.n());
    assertEquals(1.0, row.value());
    assertEquals(Boolean.FALSE, row.reached());
    assertEquals("none", row.worstClip());
  }

  @Test
  void oneThatCantBeMeasuredIsToldAndTheOthersAre() throws Exception {
    copy();
    Files.writeString(folder.resolve("bad.mp4"), "no clip");
    Files.copy(folder.resolve(NAME + ".truth.json"), folder.resolve("bad.truth.json"));
    Bench bench =
        new Bench(
            new Estimating((clip, request, watch) -> estimate(List.of(), null, null, null, null)));
    BenchResult result = bench.run(List.of(folder), Progress.NONE);
    assertEquals(1, result.clips().size());
    assertEquals(1, result.failed().size());
    assertTrue(result.failed().get(0).contains("bad.mp4"), result.failed().get(0));
  }

  @Test
  void aFolderWithoutTruthIsRefused() {
    Bench bench =
        new Bench(
            new Estimating((clip, request, watch) -> estimate(List.of(), null, null, null, null)));
    assertThrows(UserError.class, () -> bench.run(List.of(folder), Progress.NONE));
    assertThrows(UserError.class, () -> bench.run(List.of(folder.resolve("gone")), Progress.NONE));
  }

  private static BenchFigure row(BenchResult result, String id) {
    return result.figures().stream().filter(row -> row.id().equals(id)).findFirst().orElseThrow();
  }
}
