package palmturn.lab.fuzz;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.FrameCache;
import palmturn.clip.FrameReader;
import palmturn.clip.Picture;
import palmturn.clip.Progress;
import palmturn.film.Remuxer;
import palmturn.trial.Estimate;
import palmturn.trial.Hand;
import palmturn.trial.Mirrored;
import palmturn.trial.UserError;
import palmturn.work.estimate.Estimating;

/**
 * A program of its own that damages clips by seed, reads each as the app and the commands do, and
 * says how it ended: a crash of it is seen by the one that started it.
 *
 * <p>Arguments: folders of good clips, folder for damaged ones, first seed, how many, and an
 * estimate of every so many (0 for none).
 */
final class DamagedClipReader {
  /** Frames read across the clip, each after a seek, and in order from its start. */
  private static final int SPREAD_FRAMES = 8;

  private static final int NEXT_FRAMES = 6;

  /** Small, so that the cache also evicts. */
  private static final long SMALL_CACHE = 32L << 20;

  private final Path work;
  private final int estimateEvery;
  private final PrintStream out;
  private int damagedFrames;
  private long readMs;

  private DamagedClipReader(Path work, int estimateEvery, PrintStream out) {
    this.work = work;
    this.out = out;
    this.estimateEvery = estimateEvery;
  }

  public static void main(String[] args) throws Exception {
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    List<Path> good = ClipFuzz.goodClips(args[0]);
    DamagedClipReader reads =
        new DamagedClipReader(Path.of(args[1]), Integer.parseInt(args[4]), out);
    long first = Long.parseLong(args[2]);
    ClipFile.open(good.get(0)).facts();
    out.println("ready");
    for (long seed = first; seed < first + Long.parseLong(args[3]); seed++) {
      Random random = new Random(seed);
      Path clip = good.get(random.nextInt(good.size()));
      out.printf(Locale.ROOT, "begin\t%d\t%s%n", seed, clip.getFileName());
      reads.readMs = 0;
      long fromMs = processorMs();
      String ended = reads.readOne(clip, seed, random);
      long readMs = reads.readMs == 0 ? processorMs() : reads.readMs;
      out.printf(Locale.ROOT, "end\t%d\t%d\t%s%n", seed, readMs - fromMs, ended);
    }
  }

  /** Returns the processor time that this program has taken, milliseconds. */
  private static long processorMs() {
    return ProcessHandle.current().info().totalCpuDuration().orElse(Duration.ZERO).toMillis();
  }

  private String readOne(Path clip, long seed, Random random) throws IOException {
    String name = seed + "-" + clip.getFileName();
    Path damaged = work.resolve(name);
    Files.write(damaged, Mutation.of(Files.readAllBytes(clip), random));
    damagedFrames = 0;
    try {
      read(damaged, seed);
      Files.delete(damaged);
      return damagedFrames == 0 ? "read\t" : "in-part\t" + damagedFrames;
    } catch (UserError e) {
      Files.delete(damaged);
      String fault = messageFault(e, name);
      return fault == null ? "refused\t" + e.getMessage() : "wrong\t" + fault;
    } catch (Exception | StackOverflowError | OutOfMemoryError e) {
      StackTraceElement[] trace = e.getStackTrace();
      return "wrong\t%s at %s"
          .formatted(e.toString().replaceAll("\\R", "; "), trace.length == 0 ? "?" : trace[0]);
    }
  }

  /** Returns what is wrong with an error for a user; null if it is one line that names the clip. */
  private static @Nullable String messageFault(Exception e, String name) {
    String message = String.valueOf(e.getMessage());
    if (message.lines().count() != 1 || !message.contains(name)) {
      return "says: " + message.replaceAll("\\R", "; ");
    }
    return message.contains("something went wrong inside") ? message : null;
  }

  private void read(Path file, long seed) throws Exception {
    ClipFile clip = ClipFile.open(file);
    int frames = clip.frames().size();
    clip.facts();
    clip.sound();
    try (FrameReader reader = clip.newReader()) {
      for (int i = 0; i < SPREAD_FRAMES; i++) {
        readFrame(reader, (int) ((long) i * (frames - 1) / (SPREAD_FRAMES - 1)));
      }
      for (int i = 0; i < Math.min(NEXT_FRAMES, frames); i++) {
        readFrame(reader, i);
      }
    }
    try (FrameReader small = clip.newReader(160)) {
      readFrame(small, frames / 2);
    }
    readThroughCache(clip, frames);
    rewrite(file);
    if (estimateEvery > 0 && seed % estimateEvery == 0 && frames > 1) {
      // Longer than reading: it looks at all pictures.
      readMs = processorMs();
      out.println("estimates");
      estimate(file);
    }
  }

  private void readFrame(FrameReader reader, int index) throws IOException {
    try {
      Picture picture = reader.read(index);
      if (picture.index() != index || picture.argb().length != picture.width() * picture.height()) {
        throw new IOException("another picture than asked for");
      }
    } catch (ClipException e) {
      countDamagedFrame(e);
    }
  }

  private void countDamagedFrame(ClipException e) throws IOException {
    damagedFrames++;
    if (String.valueOf(e.getMessage()).lines().count() != 1) {
      throw new IOException("not one line: " + e.getMessage());
    }
  }

  private void readThroughCache(ClipFile clip, int frames) throws Exception {
    try (FrameCache cache = new FrameCache(clip, SMALL_CACHE)) {
      for (int index : new int[] {0, 1, frames / 2, frames - 1}) {
        if (index >= 0 && index < frames) {
          try {
            cache.frame(index).get(30, TimeUnit.SECONDS);
          } catch (ExecutionException e) {
            if (e.getCause() instanceof ClipException told) {
              countDamagedFrame(told);
            } else {
              throw e;
            }
          }
        }
      }
    }
  }

  /** As packing does; that it can't be told anew is said in one line and leaves no file. */
  private void rewrite(Path file) throws IOException, ClipException {
    Path to = work.resolve("anew-" + file.getFileName());
    try {
      Remuxer.write(file, to);
      Files.delete(to);
    } catch (ClipException | IOException e) {
      if (String.valueOf(e.getMessage()).lines().count() != 1 || Files.exists(to)) {
        throw new IOException("rewriting left a file or said: " + e.getMessage(), e);
      }
    }
  }

  private static void estimate(Path file) throws UserError {
    Estimate found =
        Estimating.standard()
            .clip(
                new Estimating.Clip(file, Hand.RIGHT, Mirrored.UNKNOWN, null, null, null),
                Estimating.Options.ALL,
                Progress.NONE);
    if (found.warnings().stream().anyMatch(String::isBlank)) {
      throw new IllegalStateException("a blank warning");
    }
  }
}
