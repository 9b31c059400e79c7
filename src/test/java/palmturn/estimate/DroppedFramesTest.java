package palmturn.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameReader;
import palmturn.clip.FrameTable;
import palmturn.clip.Picture;
import palmturn.clip.Progress;
import palmturn.estimate.request.Request;
import palmturn.film.ClipWriter;
import palmturn.lab.bench.ClipTruth;
import palmturn.settle.Matching;
import palmturn.trial.Estimate;
import palmturn.trial.Estimate.Source;
import palmturn.trial.EstimatedSlap;
import palmturn.trial.Hand;
import palmturn.trial.TimedBy;

/** A bundled clip from which every fifth frame was taken, as a phone in poor light drops them. */
class DroppedFramesTest {
  private static final Path BUNDLED = Path.of("sample-clips-synthetic");

  @TempDir Path folder;

  private ClipFile thinned(String name) throws Exception {
    ClipFile whole = ClipFile.open(BUNDLED.resolve(name + ".mp4"));
    Path file = folder.resolve("thinned.mp4");
    ClipWriter.Settings settings =
        new ClipWriter.Settings(
            whole.facts().width(), whole.facts().height(), 60, 2_000_000, 240, 0, 0);
    try (ClipWriter writer = ClipWriter.create(file, settings);
        FrameReader reader = whole.newReader()) {
      for (int i = 0; i < whole.frames().size(); i++) {
        if (i % 5 != 4) {
          Picture picture = reader.read(i);
          writer.picture(picture.timeS(), picture.argb());
        }
      }
      writer.finish();
    }
    return ClipFile.open(file);
  }

  @Test
  void aSlapSeenInAGapIsKnownToThatGap() throws Exception {
    String name = "left-baseline-2";
    ClipFile clip = thinned(name);
    Estimate estimate = Estimator.estimate(clip, Request.of(Hand.LEFT, 3), null, Progress.NONE);
    assertTrue(estimate.basis().variableRate());
    double[] found = estimate.slaps().stream().mapToDouble(EstimatedSlap::timeS).toArray();
    double[] wanted =
        ClipTruth.read(Files.readString(BUNDLED.resolve(name + ".truth.json"))).contacts().stream()
            .mapToDouble(ClipTruth.TrueContact::timeS)
            .toArray();
    assertEquals(wanted.length, Matching.of(wanted, found, 0.025).pairs().size());
    FrameTable frames = clip.frames();
    Set<Long> ms = new TreeSet<>();
    for (EstimatedSlap slap : estimate.slaps()) {
      assertEquals(TimedBy.MOTION, slap.timedBy());
      int before = frames.indexAt(slap.timeS());
      double apart = frames.timeS(before + 1) - frames.timeS(before);
      assertEquals(apart, slap.resolutionS(), 1e-6);
      ms.add(Math.round(1000 * slap.resolutionS()));
    }
    assertEquals(Set.of(17L, 33L), ms);
    assertTrue(estimate.sources().equals(Set.of(Source.MOTION)));
  }
}
