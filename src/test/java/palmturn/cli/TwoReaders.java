package palmturn.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;

/**
 * Two fictional readers of a drawn clip, A and B. Each has the truth but for mistakes that are
 * known: slaps missed, shifted, of the wrong side or zone, and a double not told.
 */
public final class TwoReaders {
  public static final String TRIAL = "right-baseline-1";
  static final Path CLIPS = Path.of("sample-clips-synthetic");

  /** What a reader got wrong, by the row of the truth: its place in order of time. */
  public final Map<Integer, String> plantedA = new TreeMap<>();

  public final Map<Integer, String> plantedB = new TreeMap<>();

  /** The lines of the true marks as CSV, the header first. */
  public final List<String> truth;

  private final Path folder;
  private final Path session;

  private TwoReaders(Path folder) throws IOException {
    this.folder = folder;
    session = folder.resolve("s");
    truth = Files.readAllLines(CLIPS.resolve(TRIAL + ".marks.csv"));
  }

  /** Makes a session of one trial in a folder, with both readings finished. */
  public static TwoReaders in(Path folder) throws IOException {
    TwoReaders readers = new TwoReaders(folder);
    run("new", readers.session, "--athlete", "H-07");
    readers.plant();
    readers.bring(readers.session, TRIAL, "A", readers.plantedA);
    readers.bring(readers.session, TRIAL, "B", readers.plantedB);
    return readers;
  }

  private void plant() {
    List<Integer> rows = new ArrayList<>();
    for (int row = 2; row < truth.size() - 1; row += 2) {
      rows.add(row);
    }
    // Every second row at most, so that no mistake lies beside another.
    Collections.shuffle(rows, new Random(41));
    String[] mistakes = {"missed", "shifted", "side", "zone"};
    for (int i = 0; i < 8; i++) {
      (i % 2 == 0 ? plantedA : plantedB).put(rows.get(i), mistakes[i / 2]);
    }
    plantedB.put(row("double"), "no double");
  }

  private int row(String kind) {
    for (int row = 1; row < truth.size(); row++) {
      if (truth.get(row).contains("," + kind + ",")) {
        return row;
      }
    }
    throw new IllegalStateException("no " + kind + " in the marks of the drawn clip");
  }

  /** Returns the session's folder. */
  public Path session() {
    return session;
  }

  /** Returns the row of the truth whose time is nearest. */
  public int nearest(double timeS) {
    int best = 1;
    for (int row = 1; row < truth.size(); row++) {
      if (Math.abs(timeS(row) - timeS) < Math.abs(timeS(best) - timeS)) {
        best = row;
      }
    }
    return best;
  }

  private double timeS(int row) {
    return Double.parseDouble(truth.get(row).split(",", -1)[0]);
  }

  /** Brings the marks of a reader with some mistakes into a trial, which is added if need be. */
  public void bring(Path into, String trial, String reader, Map<Integer, String> planted)
      throws IOException {
    if (!Files.exists(into.resolve("trials/" + trial + ".json"))) {
      run("add", into, CLIPS.resolve(trial + ".mp4"), "--hand", "right");
    }
    List<String> lines = Files.readAllLines(CLIPS.resolve(trial + ".marks.csv"));
    List<String> marked = new ArrayList<>();
    for (int row = 0; row < lines.size(); row++) {
      String[] cells = lines.get(row).split(",", -1);
      switch (planted.getOrDefault(row, "")) {
        case "missed" -> {
          continue;
        }
        case "shifted" ->
            cells[0] = String.format(Locale.ROOT, "%.5f", Double.parseDouble(cells[0]) + 0.06);
        case "side" -> cells[3] = cells[3].equals("palm") ? "back" : "palm";
        case "zone" -> cells[4] = cells[4].equals("edge") ? "wrist" : "edge";
        case "no double" -> cells[2] = "slap";
        default -> {}
      }
      marked.add(String.join(",", cells));
    }
    Path csv = folder.resolve(reader + ".csv");
    Files.write(csv, marked);
    run("marks", "import", into.resolve(trial), csv, "--reader", reader);
  }

  private static void run(Object... words) {
    Run run = Run.of(words);
    assertEquals(0, run.status(), run.err());
  }
}
