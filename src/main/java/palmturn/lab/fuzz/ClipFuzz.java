package palmturn.lab.fuzz;

import static java.util.stream.Collectors.joining;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A run of damaged clips through another process that reads them, and the count of its outcomes.
 */
public final class ClipFuzz {
  /**
   * A limit on the time for one file: processor time, so that other work on the machine doesn't
   * count, and clock time for a process that waits for ever.
   */
  private record TimeLimit(Duration processorTime, Duration clockTime) {
    static final TimeLimit START = new TimeLimit(Duration.ofSeconds(60), Duration.ofSeconds(180));
    static final TimeLimit READ = new TimeLimit(Duration.ofSeconds(10), Duration.ofSeconds(60));
    static final TimeLimit ESTIMATE =
        new TimeLimit(Duration.ofSeconds(60), Duration.ofSeconds(300));
  }

  /** The extensions of clips that the program opens. */
  private static final Pattern KINDS =
      Pattern.compile(
          "\\.(mp4|mov|mkv|webm|avi|ts|mpg|flv|wmv|ogv|3gp)$", Pattern.CASE_INSENSITIVE);

  private final String good;
  private final Path work;
  private final int estimateEvery;
  private final Map<String, Integer> counts = new TreeMap<>();
  private final Map<String, Map<String, Integer>> byKind = new TreeMap<>();
  private final List<String> faults = new ArrayList<>();
  private int estimates;
  private long slowestMs;
  private long peakKb;
  private long first;
  private long last;
  private double tookS;

  /**
   * A run over some clips.
   *
   * @param good folders of good clips, written as a class path is
   * @param work a folder for the damaged ones
   * @param estimateEvery each so-many-th clip is estimated too; 0 for none
   */
  public ClipFuzz(String good, Path work, int estimateEvery) {
    this.good = good;
    this.work = work;
    this.estimateEvery = estimateEvery;
  }

  /** Returns the clips of folders, those of each in order of their names. */
  public static List<Path> goodClips(String folders) throws IOException {
    List<Path> clips = new ArrayList<>();
    for (String folder : folders.split(File.pathSeparator)) {
      try (Stream<Path> files = Files.list(Path.of(folder))) {
        files.filter(file -> KINDS.matcher(file.toString()).find()).sorted().forEach(clips::add);
      }
    }
    return clips;
  }

  /** Returns what went wrong, a line each; empty for nothing. */
  public List<String> faults() {
    return faults;
  }

  /** Returns the number of clips with an outcome: read, in-part, refused, wrong, hang or crash. */
  public int count(String ended) {
    return counts.getOrDefault(ended, 0);
  }

  /** Lets the seeds of a range be read, starting anew after a hang or a crash. */
  public void run(long first, int howMany) throws IOException, InterruptedException {
    long began = System.nanoTime();
    this.first = first;
    last = first + howMany - 1;
    Files.createDirectories(work);
    for (long next = first; next <= last; ) {
      next = runProcess(next, (int) (last + 1 - next));
    }
    tookS = (System.nanoTime() - began) / 1e9;
  }

  /** Returns the seed after the last one that was begun. */
  private long runProcess(long first, int howMany) throws IOException, InterruptedException {
    Process reads =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-Xmx1g",
                "-Dfile.encoding=UTF-8",
                "-XX:ErrorFile=" + work.resolve("crash-%p.log"),
                "-cp",
                System.getProperty("java.class.path"),
                DamagedClipReader.class.getName(),
                good,
                work.toString(),
                Long.toString(first),
                Integer.toString(howMany),
                Integer.toString(estimateEvery))
            .redirectError(ProcessBuilder.Redirect.appendTo(work.resolve("errors.log").toFile()))
            .start();
    BlockingQueue<String> lines = lines(reads);
    TimeLimit patience = TimeLimit.START;
    Duration busy = Duration.ZERO;
    @Nullable String begun = null;
    long next = first;
    try {
      while (next < first + howMany) {
        String line = next(lines, reads, patience, busy);
        if (line == null || line.isEmpty()) {
          String how = line == null ? "hang" : "crash";
          recordOutcome(
              begun == null ? "-\tno clip" : begun, how, line == null ? "" : exitStatus(reads));
          return next + 1;
        }
        patience = TimeLimit.READ;
        busy = processorTime(reads);
        String[] words = line.split("\t", 2);
        if (words[0].equals("begin")) {
          begun = words[1];
        } else if (words[0].equals("estimates")) {
          patience = TimeLimit.ESTIMATE;
          estimates++;
        } else if (words[0].equals("end")) {
          String[] told = words[1].split("\t", 4);
          slowestMs = Math.max(slowestMs, Long.parseLong(told[1]));
          peakKb = Math.max(peakKb, peakKb(reads.pid()));
          recordOutcome(String.valueOf(begun), told[2], told[3]);
          next++;
        }
      }
      return next;
    } finally {
      reads.destroyForcibly().waitFor();
    }
  }

  /** Returns the next line; null if it does not come in time. */
  private static @Nullable String next(
      BlockingQueue<String> lines, Process from, TimeLimit patience, Duration busyBefore)
      throws InterruptedException {
    long end = System.nanoTime() + patience.clockTime().toNanos();
    String line = null;
    while (line == null
        && System.nanoTime() < end
        && processorTime(from).minus(busyBefore).compareTo(patience.processorTime()) < 0) {
      line = lines.poll(500, TimeUnit.MILLISECONDS);
    }
    return line;
  }

  private static Duration processorTime(Process process) {
    return process.info().totalCpuDuration().orElse(Duration.ZERO);
  }

  private static String exitStatus(Process reads) throws InterruptedException {
    return "exit status " + reads.waitFor();
  }

  /** Hands on what a program says; an empty line once it has ended. */
  private static BlockingQueue<String> lines(Process from) {
    BlockingQueue<String> lines = new LinkedBlockingQueue<>();
    Thread thread =
        new Thread(
            () -> {
              try (BufferedReader in = from.inputReader(StandardCharsets.UTF_8)) {
                in.lines().filter(line -> !line.isBlank()).forEach(lines::add);
              } catch (IOException | java.io.UncheckedIOException e) {
                lines.add("");
              } finally {
                lines.add("");
              }
            });
    thread.setDaemon(true);
    thread.start();
    return lines;
  }

  private void recordOutcome(String begun, String how, String what) {
    counts.merge(how, 1, Integer::sum);
    String clip = begun.substring(begun.indexOf('\t') + 1);
    String kind = clip.substring(clip.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    byKind.computeIfAbsent(kind, each -> new TreeMap<>()).merge(how, 1, Integer::sum);
    if (how.equals("wrong") || how.equals("hang") || how.equals("crash")) {
      faults.add("%s: seed %s %s".formatted(how, begun.replace('\t', ' '), what));
      System.err.println(faults.get(faults.size() - 1));
    }
  }

  /** Returns the most memory that a process has held, where the system tells. */
  private static long peakKb(long pid) {
    try (Stream<String> lines = Files.lines(Path.of("/proc/" + pid + "/status"))) {
      return lines
          .filter(line -> line.startsWith("VmHWM:"))
          .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")))
          .findFirst()
          .orElse(0);
    } catch (IOException | java.io.UncheckedIOException e) {
      return 0;
    }
  }

  /** Returns the counts as a table, a line on seeds, time and memory, and the faults. */
  public String report() {
    return table()
        + String.format(
            Locale.ROOT,
            "%nSeeds %d to %d in %.0f s, %d of them estimated; slowest reading %.1f s of processor"
                + " time; most memory %d MB.%n",
            first,
            last,
            tookS,
            estimates,
            slowestMs / 1e3,
            peakKb / 1024)
        + faults.stream().map(fault -> fault + System.lineSeparator()).collect(joining());
  }

  private String table() {
    List<String> ways = List.of("read", "in-part", "refused", "wrong", "hang", "crash");
    StringBuilder table =
        new StringBuilder("| kind | read | in part | refused | wrong | hang | crash |\n");
    table.append("| --- | --- | --- | --- | --- | --- | --- |\n");
    byKind.forEach((kind, ends) -> row(table, kind, ways, ends));
    row(table, "all", ways, counts);
    return table.toString();
  }

  private static void row(
      StringBuilder table, String name, List<String> ways, Map<String, Integer> ends) {
    table.append("| ").append(name);
    ways.forEach(way -> table.append(" | ").append(ends.getOrDefault(way, 0)));
    table.append(" |\n");
  }
}
