package palmturn.lab.draw;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.DoubleConsumer;
import org.jspecify.annotations.Nullable;
import palmturn.clip.Progress;
import palmturn.report.MarksCsv;
import palmturn.report.MarksFormatException;
import palmturn.trial.Extra;
import palmturn.trial.Reading;
import palmturn.trial.StartedFrom;
import palmturn.trial.UserError;

/**
 * Draws clips with known truth into a folder: the clip, its truth and an invented reader's marks.
 */
public final class SyntheticClips {
  private SyntheticClips() {}

  /** Returns the names of the bundled session's clips, in the order they count as filmed in. */
  public static List<String> demoNames() {
    return DemoSet.clips().stream().map(NamedClip::name).toList();
  }

  /**
   * Draws the bundled session's twelve clips, and a second reader's marks of two of them.
   *
   * @throws UserError if the folder can't be written
   */
  public static void drawDemo(Path folder, Progress progress) throws UserError {
    drawAll(DemoSet.clips(), folder, 1, progress);
    writeSecondReader(folder);
  }

  /**
   * Writes {@code NAME.marks-b.csv}, by a hasty reader B, beside the marks of the careful one.
   *
   * @throws UserError if the marks in the folder can't be read, or none can be written there
   */
  static void writeSecondReader(Path folder) throws UserError {
    for (String name : DemoSet.READ_TWICE) {
      try {
        // The marks were written with their resolution: the default is never taken.
        MarksCsv.Marks careful = MarksCsv.parse(Files.readString(marks(folder, name)), Double.NaN);
        Reading first =
            new Reading(
                "A", true, StartedFrom.NOTHING, careful.slaps(), careful.spans(), Extra.NONE);
        Files.writeString(
            folder.resolve(name + ".marks-b.csv"),
            MarksCsv.write(HastyReader.read(first, "B", DemoSet.SECOND_READER_SEED)));
      } catch (IOException | MarksFormatException e) {
        throw new UserError(
            "can't write a second reader's marks of %s into %s: %s"
                .formatted(name, folder, e.getMessage()),
            e);
      }
    }
  }

  /**
   * Draws the clips that the estimate is measured on; those that are whole already are left alone.
   *
   * @param jobs how many are drawn at the same time
   * @return how many there are
   * @throws UserError if the folder can't be written
   */
  public static int drawGrid(Path folder, int jobs, Progress progress) throws UserError {
    return drawMissing(GridSet.clips(), folder, jobs, progress);
  }

  /**
   * Draws the clips in which the hand comes down off the middle, the wrist is bent or the elbow
   * goes out; as {@link #drawGrid}.
   */
  public static int drawFaults(Path folder, int jobs, Progress progress) throws UserError {
    return drawMissing(FaultSet.clips(), folder, jobs, progress);
  }

  private static int drawMissing(List<NamedClip> clips, Path folder, int jobs, Progress progress)
      throws UserError {
    drawAll(
        clips.stream().filter(clip -> !isWhole(folder, clip.name())).toList(),
        folder,
        jobs,
        progress);
    return clips.size();
  }

  /** The marks are written last. */
  private static boolean isWhole(Path folder, String name) {
    return Files.exists(marks(folder, name));
  }

  private static Path marks(Path folder, String name) {
    return folder.resolve(name + ".marks.csv");
  }

  private static void drawAll(List<NamedClip> clips, Path folder, int jobs, Progress progress)
      throws UserError {
    AtomicInteger next = new AtomicInteger();
    double[] shares = new double[clips.size()];
    Callable<Void> job =
        () -> {
          for (int i = next.getAndIncrement(); i < clips.size(); i = next.getAndIncrement()) {
            if (progress.stopped()) {
              break;
            }
            int at = i;
            NamedClip clip = clips.get(i);
            drawClip(
                folder,
                clip.name(),
                clip.parameters(),
                share -> {
                  synchronized (shares) {
                    shares[at] = share;
                    double done = Arrays.stream(shares).sum() / shares.length;
                    progress.at(done, "drawing " + clip.name());
                  }
                });
          }
          return null;
        };
    ExecutorService pool = Executors.newFixedThreadPool(jobs);
    try {
      for (Future<Void> each : pool.invokeAll(Collections.nCopies(jobs, job))) {
        each.get();
      }
    } catch (ExecutionException e) {
      if (e.getCause() instanceof UserError error) {
        throw error;
      }
      throw new IllegalStateException(e.getCause());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      pool.shutdownNow();
    }
  }

  /**
   * Draws one clip: {@code NAME.mp4}, {@code NAME.truth.json} and {@code NAME.marks.csv}.
   *
   * @param share is told how far the drawing is, 0 to 1
   * @throws UserError if the folder can't be written
   */
  public static void drawClip(Path folder, String name, ClipParameters wanted, DoubleConsumer share)
      throws UserError {
    try {
      Files.createDirectories(folder);
      SyntheticClip clip = SyntheticClip.plan(wanted);
      Truth truth = clip.truth();
      clip.write(folder.resolve(name + ".mp4"), share);
      Files.writeString(
          folder.resolve(name + ".truth.json"),
          form(name + ".mp4", truth).json(),
          StandardCharsets.UTF_8);
      Reading reading = CarefulReader.read(truth, "A", wanted.seed());
      Files.writeString(marks(folder, name), MarksCsv.write(reading), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UserError("can't draw %s into %s: %s".formatted(name, folder, e.getMessage()), e);
    }
  }

  private static TruthForm form(String file, Truth truth) {
    Map<String, Double> numbers = new LinkedHashMap<>();
    if (truth.parameters().sound() != SoundKind.NONE) {
      numbers.put("soundDelayS", truth.soundDelayS());
      numbers.put("soundHz", (double) truth.soundHz());
    }
    numbers.put("exposureS", truth.exposureS());
    Map<String, double[]> points = new LinkedHashMap<>();
    Map<String, double[]> series = new LinkedHashMap<>();
    if (truth.parameters().content() != ClipContent.NOBODY) {
      numbers.put("cmPerPixel", truth.cmPerPixel());
      points.put("elbowPx", truth.elbowPx());
      points.put("targetPx", truth.targetPx());
      series.put("rotationDeg", truth.rotationDeg());
      series.put("bentWristDeg", truth.bentWristDeg());
      series.put("gapCm", truth.gapCm());
      series.put("elbowRightCm", truth.elbowRightCm());
      series.put("elbowUpCm", truth.elbowUpCm());
      series.put("elbowCm", truth.elbowCm());
      series.put("elbowInSpaceCm", truth.elbowInSpaceCm());
    }
    return new TruthForm(
        file,
        parameters(truth.parameters()),
        contacts(truth),
        truth.spans().stream()
            .map(s -> new TruthForm.Span(s.kind().code(), s.startS(), s.endS()))
            .toList(),
        numbers,
        points,
        truth.frameTimesS(),
        truth.seriesHz(),
        series,
        realised(truth.realised()),
        meanings());
  }

  private static List<TruthForm.ContactForm> contacts(Truth truth) {
    List<TruthForm.ContactForm> contacts = new ArrayList<>();
    for (int i = 0; i < truth.contacts().size(); i++) {
      Contact c = truth.contacts().get(i);
      TargetPlace place = truth.places().get(i);
      contacts.add(
          new TruthForm.ContactForm(
              c.timeS(),
              c.side().code(),
              c.zone().code(),
              c.kind().code(),
              c.level(),
              place.alongCm(),
              place.acrossCm()));
    }
    return contacts;
  }

  private static Map<String, Object> parameters(ClipParameters wanted) {
    Map<String, Object> map = new LinkedHashMap<>();
    ClipParameters.Tempo tempo = wanted.tempo();
    map.put("shown", code(wanted.content()));
    map.put("hand", wanted.hand().code());
    map.put("rateSlapsPerS", tempo.rateSlapsPerS());
    map.put("intervalCvPct", tempo.intervalCvPct());
    map.put("turnBiasPct", tempo.turnBiasPct());
    map.put("slowDownPctPerS", tempo.slowDownPctPerS());
    List<Map<String, Object>> faults = new ArrayList<>();
    for (ClipParameters.Fault fault : wanted.faults()) {
      Map<String, Object> each = new LinkedHashMap<>();
      each.put("kind", code(fault.kind()));
      each.put("atS", fault.atS());
      faults.add(each);
    }
    map.put("faults", faults);
    List<Map<String, Object>> stretches = new ArrayList<>();
    for (ClipParameters.FaultStretch stretch : wanted.stretches()) {
      Map<String, Object> each = new LinkedHashMap<>();
      each.put("kind", code(stretch.kind()));
      each.put("fromS", stretch.fromS());
      each.put("toS", stretch.toS());
      each.put("amount", stretch.amount());
      stretches.add(each);
    }
    map.put("stretches", stretches);
    Filming filming = wanted.filming();
    map.put("framesPerS", filming.framesPerS());
    map.put("width", filming.width());
    map.put("height", filming.height());
    map.put("shakePx", filming.shakePx());
    map.put("dropShare", filming.dropShare());
    map.put("sound", code(wanted.sound()));
    map.put("seed", wanted.seed());
    map.put("leadInS", wanted.length().leadInS());
    map.put("slappingS", wanted.length().slappingS());
    map.put("tailS", wanted.length().tailS());
    return map;
  }

  private static String code(Enum<?> kind) {
    return kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static Map<String, @Nullable Object> realised(RealisedMeasures r) {
    Map<String, @Nullable Object> map = new LinkedHashMap<>();
    map.put("slaps", r.slaps());
    map.put("doubles", r.doubles());
    map.put("pauses", r.pauses());
    map.put("rateSlapsPerS", r.rateSlapsPerS());
    map.put("cycleRateHz", r.cycleRateHz());
    map.put("tenCycleS", r.tenCycleS());
    map.put("tenCycleExtrapolated", r.tenCycleExtrapolated());
    map.put("bestTwoSecondsSlapsPerS", r.bestTwoSecondsSlapsPerS());
    map.put("cleanSharePct", r.cleanSharePct());
    map.put("cleanShareLowPct", r.cleanShareLowPct());
    map.put("cleanShareHighPct", r.cleanShareHighPct());
    map.put("cleanRateSlapsPerS", r.cleanRateSlapsPerS());
    map.put("intervalCvPct", r.intervalCvPct());
    map.put("steadyCvPct", r.steadyCvPct());
    map.put("turnBiasPct", r.turnBiasPct());
    map.put("sameTurnCvPct", r.sameTurnCvPct());
    map.put("npvi", r.npvi());
    map.put("slowDownPctPerS", r.slowDownPctPerS());
    return map;
  }

  private static Map<String, String> meanings() {
    Map<String, String> map = new LinkedHashMap<>();
    map.put("timeS", "the exact moment of contact, on the picture's clock");
    map.put(
        "offsetAlongTargetCm",
        "at a contact, from the middle of the target palm to the middle of the moving one, in the"
            + " target's plane: along the target arm, over 0 to its fingertips");
    map.put("offsetAcrossTargetCm", "the same across it, over 0 to its little finger");
    map.put("frameTimesS", "the middle of each picture's exposure");
    map.put("soundDelayS", "the sound of a contact comes this much later than the contact");
    map.put("rotationDeg", "0 with the palm down on the target, 180 with the palm up");
    map.put(
        "bentWristDeg",
        "bend of the moving hand against its forearm: over 0 to the palm, under 0 to the back; a"
            + " bent-wrist span bends it down to the target, over 0 at palm slaps and under 0 at"
            + " back slaps");
    map.put("gapCm", "height of the moving hand over where it would touch");
    map.put(
        "elbowCm",
        "way of the moving elbow in the picture from its place before the first slap, by cmPerPixel");
    map.put("elbowInSpaceCm", "way of the moving elbow in space from that place");
    map.put("cmPerPixel", "in the picture plane at the moving elbow");
    map.put("elbowPx", "place in the first picture, without the camera's shake");
    map.put("level", "loudness of the slap: 1 for a square one, 0 for none");
    map.put("realised", "measures of these contacts in the 5 s from the first slap");
    return map;
  }
}
