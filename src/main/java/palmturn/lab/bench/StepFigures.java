package palmturn.lab.bench;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import palmturn.clip.FrameCache;
import palmturn.numbers.Stats;

/** The figures to reach when stepping through a clip. */
public final class StepFigures {
  /** The goals: a step within a frame of a 60 Hz screen, a jump that feels immediate. */
  private static final double STEP_MS = 16;

  private static final double JUMP_MS = 250;
  private static final double MIB = 1 << 20;

  private StepFigures() {}

  /**
   * Returns the rows of one clip; the goals are for 1920 x 1080 at 60 frames a second with a key
   * frame every 250.
   */
  public static List<BenchFigure> of(StepTimes times, String clip) {
    List<BenchFigure> rows = new ArrayList<>();
    add(rows, clip, "stepForwardMs", "step forward, 95 % within", times.forwardMs(), STEP_MS);
    add(rows, clip, "stepBackMs", "step back, 95 % within", times.backMs(), STEP_MS);
    add(rows, clip, "jumpMs", "jump anywhere, 95 % within", times.jumpMs(), JUMP_MS);
    Double jump = Stats.percentile(times.jumpMs(), 95);
    rows.add(
        row(
            clip,
            "jumpFrames",
            "the same jump in frames, at the time that one takes in order",
            "frames",
            times.jumpMs().length,
            jump == null ? null : jump / times.frameMs(),
            null));
    rows.add(
        row(
            clip,
            "cacheMiB",
            "most frames kept",
            "MiB",
            1,
            times.mostBytes() / MIB,
            FrameCache.DEFAULT_BYTES / MIB));
    return List.copyOf(rows);
  }

  private static void add(
      List<BenchFigure> rows, String clip, String id, String what, double[] ms, double goalMs) {
    rows.add(row(clip, id, what, "ms", ms.length, Stats.percentile(ms, 95), goalMs));
  }

  private static BenchFigure row(
      String clip,
      String id,
      String what,
      String unit,
      int n,
      @Nullable Double value,
      @Nullable Double goal) {
    return new BenchFigure(id, what, unit, n, value, goal, false, clip, value);
  }
}
