package palmturn.lab.onsets;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import java.util.stream.DoubleStream;
import org.jspecify.annotations.Nullable;
import palmturn.clip.Sound;
import palmturn.numbers.Stats;
import palmturn.settle.Matching;

/**
 * A comparison of clear onsets, and of those that aubio's {@code aubioonset} finds, with known
 * ones: F at ±25 ms and the mean absolute error of the matched in milliseconds, as it is and with
 * the median lag taken out.
 */
public final class OnsetComparison {
  /**
   * The options of aubioonset: its defaults, and the best of eight tried on drum and bundled clips.
   */
  private static final List<String> AUBIO_OPTIONS = List.of("-O hfc", "-O hfc -s -50 -t 0.7");

  /** The least interval between onsets, as for Palmturn's clear ones. */
  private static final String MIN_INTERVAL_S = "0.08";

  private record SoundSet(String name, List<KnownSound> sounds) {}

  private OnsetComparison() {}

  /** Returns whether {@code aubioonset} can be started. */
  public static boolean aubioInstalled() throws InterruptedException {
    try {
      new ProcessBuilder("aubioonset", "--help")
          .redirectErrorStream(true)
          .redirectOutput(ProcessBuilder.Redirect.DISCARD)
          .start()
          .waitFor();
      return true;
    } catch (IOException e) {
      return false;
    }
  }

  /**
   * Prints the comparison as a Markdown table.
   *
   * @param aubio whether aubioonset is compared too
   */
  public static void print(PrintWriter out, boolean aubio) throws Exception {
    Path folder = Files.createTempDirectory("onsets");
    List<String> allOptions = aubio ? AUBIO_OPTIONS : List.of();
    StringBuilder head = new StringBuilder("| sounds | onsets | Palmturn F | error ms | lag out |");
    StringBuilder rule = new StringBuilder("| --- | --- | --- | --- | --- |");
    for (String options : allOptions) {
      head.append(" aubioonset %s F | error ms | lag out |".formatted(options));
      rule.append(" --- | --- | --- |");
    }
    out.println(head);
    out.println(rule);
    for (SoundSet one : cases(folder)) {
      StringBuilder row = new StringBuilder("| " + one.name() + " | " + known(one) + " |");
      row.append(columns(one.sounds().stream().map(KnownSound::matchClear).toList()));
      for (String options : allOptions) {
        List<Matching> found = new ArrayList<>();
        for (KnownSound heard : one.sounds()) {
          found.add(aubio(heard, options, folder.resolve("sound.wav")));
        }
        row.append(columns(found));
      }
      out.println(row);
    }
  }

  private static List<SoundSet> cases(Path folder) throws Exception {
    KnownSound drum = KnownSound.drum();
    List<KnownSound> bundled = KnownSound.bundled(true);
    List<KnownSound> both = new ArrayList<>(List.of(drum));
    both.addAll(bundled);
    List<SoundSet> cases = new ArrayList<>();
    cases.add(new SoundSet("real hand drum", List.of(drum)));
    cases.add(new SoundSet("twelve bundled clips, doubles too", bundled));
    cases.add(new SoundSet("twelve bundled clips, without doubles", KnownSound.bundled(false)));
    cases.add(new SoundSet("all 13, peak at −35 dBFS", mixed(both, s -> s.scaleToPeak(0.0178))));
    cases.add(
        new SoundSet(
            "all 13, cut off at a quarter of the peak", mixed(both, s -> s.scaleToPeak(4))));
    double[] echoS = {0.043, 0.071, 0.113};
    cases.add(new SoundSet("all 13, echoes of −9 dB", mixed(both, s -> s.addEchoes(0.355, echoS))));
    for (int decibels : new int[] {-6, 0, 6}) {
      String how = String.format(Locale.ROOT, " at %+d dB", decibels).replace('-', '−');
      cases.add(
          new SoundSet(
              "all 13, talk" + how, mixed(both, s -> s.add(blank().addTalk(1), decibels))));
      cases.add(
          new SoundSet(
              "all 13, metronome" + how,
              mixed(both, s -> s.add(blank().addMetronome(1), decibels))));
      cases.add(
          new SoundSet(
              "all 13, white noise" + how, mixed(both, s -> s.add(blank().addNoise(1), decibels))));
    }
    List<KnownSound> coded = new ArrayList<>();
    for (KnownSound heard : both) {
      coded.add(heard.encoded(folder, 32_000));
    }
    cases.add(new SoundSet("all 13, through AAC of 32 kbit/s", coded));
    for (int rate : new int[] {8_000, 16_000, 96_000}) {
      cases.add(
          new SoundSet(
              String.format(Locale.ROOT, "ten drawn trials at %d kHz", rate / 1_000),
              drawn(rate, 0)));
    }
    cases.add(new SoundSet("ten drawn trials, puffs of air", drawn(48_000, 0.12)));
    return cases;
  }

  private static DrawnSound blank() {
    return new DrawnSound(48_000, 11, 77);
  }

  private static List<KnownSound> mixed(List<KnownSound> sounds, UnaryOperator<DrawnSound> how) {
    return sounds.stream()
        .map(
            h ->
                new KnownSound(
                    h.name(), how.apply(new DrawnSound(h.sound(), 7)).sound(), h.timesS()))
        .toList();
  }

  private static List<KnownSound> drawn(int rate, double puffs) {
    List<KnownSound> all = new ArrayList<>();
    for (int seed = 101; seed <= 110; seed++) {
      double[] timesS = DrawnSound.onsetTimes(0.6, 0.14 + 0.012 * (seed - 101), 0.07, 22, seed);
      DrawnSound drawn =
          new DrawnSound(rate, 7, seed).addSlaps(timesS, 0.8).addPuffs(timesS, puffs);
      all.add(new KnownSound("", drawn.addNoise(3e-4).sound(), timesS));
    }
    return all;
  }

  private static int known(SoundSet one) {
    return one.sounds().stream().mapToInt(heard -> heard.timesS().length).sum();
  }

  private static String columns(List<Matching> found) {
    int pairs = found.stream().mapToInt(m -> m.pairs().size()).sum();
    int single = found.stream().mapToInt(m -> m.onlyA().size() + m.onlyB().size()).sum();
    double[] asIs = found.stream().flatMapToDouble(m -> Arrays.stream(m.differencesS())).toArray();
    double[] lagOut = found.stream().flatMapToDouble(m -> withoutLag(m.differencesS())).toArray();
    return String.format(
        Locale.ROOT,
        " %.3f | %s | %s |",
        2.0 * pairs / (2 * pairs + single),
        meanMs(asIs),
        meanMs(lagOut));
  }

  private static DoubleStream withoutLag(double[] differencesS) {
    Double lag = Stats.median(differencesS);
    return lag == null ? DoubleStream.empty() : Arrays.stream(differencesS).map(d -> d - lag);
  }

  private static String meanMs(double[] differencesS) {
    @Nullable Double mean = Stats.mean(Arrays.stream(differencesS).map(Math::abs).toArray());
    return mean == null ? "–" : String.format(Locale.ROOT, "%.2f", 1_000 * mean);
  }

  private static Matching aubio(KnownSound heard, String options, Path wav)
      throws IOException, InterruptedException {
    write(heard.sound(), wav);
    List<String> command =
        new ArrayList<>(List.of("aubioonset", "-i", wav.toString(), "-M", MIN_INTERVAL_S));
    command.addAll(List.of(options.split(" ")));
    // Its own default window of 512 samples is meant for 44.1 kHz.
    int window = Integer.highestOneBit(heard.sound().sampleRate() / 80);
    command.addAll(List.of("-B", Integer.toString(window), "-H", Integer.toString(window / 2)));
    Process process =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD).start();
    String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    if (process.waitFor() != 0) {
      throw new IOException("aubioonset failed on " + heard.name());
    }
    double[] timesS = printed.lines().mapToDouble(Double::parseDouble).sorted().toArray();
    double firstS = heard.sound().firstS();
    return Matching.of(
        heard.timesS(),
        Arrays.stream(timesS).map(t -> t + firstS).toArray(),
        KnownSound.TOLERANCE_S);
  }

  /** Writes 16-bit mono WAV. */
  private static void write(Sound sound, Path file) throws IOException {
    float[] samples = sound.samples();
    ByteBuffer bytes = ByteBuffer.allocate(44 + 2 * samples.length).order(ByteOrder.LITTLE_ENDIAN);
    bytes.put("RIFF".getBytes(StandardCharsets.US_ASCII)).putInt(36 + 2 * samples.length);
    bytes.put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII)).putInt(16);
    bytes.putShort((short) 1).putShort((short) 1).putInt(sound.sampleRate());
    bytes.putInt(2 * sound.sampleRate()).putShort((short) 2).putShort((short) 16);
    bytes.put("data".getBytes(StandardCharsets.US_ASCII)).putInt(2 * samples.length);
    for (float sample : samples) {
      bytes.putShort((short) Math.round(32_767 * Math.max(-1, Math.min(1, sample))));
    }
    Files.write(file, bytes.array());
  }
}
