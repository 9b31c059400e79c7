package palmturn.lab.onsets;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.Sound;
import palmturn.estimate.sound.Onset;
import palmturn.estimate.sound.Onsets;
import palmturn.film.ClipWriter;
import palmturn.settle.Matching;

/**
 * A sound whose onsets are known.
 *
 * @param name for people
 * @param sound the sound
 * @param timesS its onsets, on its own clock
 */
public record KnownSound(String name, Sound sound, double[] timesS) {
  /** The checkout, which the launcher names; tests run in it. */
  private static final Path HOME = Path.of(System.getProperty("palmturn.home", ""));

  private static final Path CLIPS = HOME.resolve("sample-clips-synthetic");

  /** The folder of the real hand drum, among the tests' files. */
  private static final Path DRUM = HOME.resolve("src/test/resources/palmturn/estimate");

  /** Onsets are matched within this. */
  static final double TOLERANCE_S = 0.025;

  /** The real hand drum; README.md beside it names its source. */
  public static KnownSound drum() throws IOException, ClipException {
    double[] timesS =
        Files.readAllLines(DRUM.resolve("hand_drum_loop.times.txt")).stream()
            .mapToDouble(Double::parseDouble)
            .toArray();
    return new KnownSound("real hand drum", soundOf(DRUM.resolve("hand_drum_loop.mkv")), timesS);
  }

  /** The sound of the bundled clips, drawn by another generator than {@link DrawnSound}. */
  public static List<KnownSound> bundled(boolean withDoubles) throws IOException, ClipException {
    List<KnownSound> all = new ArrayList<>();
    try (Stream<Path> files = Files.list(CLIPS)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".mp4")).sorted().toList()) {
        String name = file.getFileName().toString().replace(".mp4", "");
        JsonNode truth = new ObjectMapper().readTree(CLIPS.resolve(name + ".truth.json").toFile());
        double delayS = truth.get("soundDelayS").asDouble();
        List<Double> times = new ArrayList<>();
        for (JsonNode contact : truth.get("contacts")) {
          String kind = contact.get("kind").asText();
          if (!kind.equals("missed") && (withDoubles || !kind.equals("double"))) {
            times.add(contact.get("timeS").asDouble() + delayS);
          }
        }
        double[] timesS = times.stream().mapToDouble(Double::doubleValue).toArray();
        all.add(new KnownSound(name, soundOf(file), timesS));
      }
    }
    return all;
  }

  /** The same through AAC in an MP4. */
  public KnownSound encoded(Path folder, int bitsPerS) throws IOException, ClipException {
    Path file = folder.resolve("coded.mp4");
    ClipWriter.Settings settings =
        new ClipWriter.Settings(64, 48, 10, 100_000, 10, sound.sampleRate(), bitsPerS);
    try (ClipWriter writer = ClipWriter.create(file, settings)) {
      writer.sound(sound.samples());
      int[] black = new int[64 * 48];
      Arrays.fill(black, 0xff000000);
      for (int i = 0; i < 10; i++) {
        writer.picture(i / 10.0, black);
      }
      writer.finish();
    }
    return new KnownSound(name + " in AAC", soundOf(file), timesS);
  }

  /** Returns how the clear onsets match the known ones. */
  public Matching matchClear() {
    return match(onsets().clear());
  }

  /** Returns how the candidates match the known onsets. */
  public Matching matchCandidates() {
    return match(onsets().candidates());
  }

  Onsets onsets() {
    return Onsets.of(sound, sound.firstS(), sound.timeS(sound.samples().length));
  }

  private Matching match(List<Onset> onsets) {
    return Matching.of(timesS, onsets.stream().mapToDouble(Onset::timeS).toArray(), TOLERANCE_S);
  }

  private static Sound soundOf(Path file) throws ClipException {
    return Objects.requireNonNull(ClipFile.open(file).sound());
  }
}
