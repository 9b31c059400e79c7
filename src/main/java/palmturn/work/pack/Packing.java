package palmturn.work.pack;

import java.awt.Rectangle;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import palmturn.clip.ClipException;
import palmturn.clip.ClipFile;
import palmturn.clip.ClipHash;
import palmturn.clip.Progress;
import palmturn.film.ClipCropper;
import palmturn.film.Remuxer;
import palmturn.film.SoundFilter;
import palmturn.json.SessionJson;
import palmturn.json.TrialJson;
import palmturn.store.IoErrors;
import palmturn.store.PackWriter;
import palmturn.store.SessionFolder;
import palmturn.trial.ClipRef;
import palmturn.trial.Reading;
import palmturn.trial.Settlement;
import palmturn.trial.Slap;
import palmturn.trial.Trial;
import palmturn.trial.UserError;
import palmturn.work.WorkFile;
import palmturn.work.reel.HandsRegion;
import palmturn.work.score.Drills;
import palmturn.work.score.LimitsInForce;

/** The writing of a session into one file to be sent, its clips stripped of place and device. */
public final class Packing {
  private static final Pattern ENDING = Pattern.compile("\\.[A-Za-z0-9]{1,5}$");

  private final SessionFolder folder;
  private final ClipsAs as;
  private final SoundAs sound;
  private final PackWriter pack;
  private final Path scratch;
  private final Progress progress;
  private final Map<String, ClipRef> packed = new HashMap<>();

  /** The form in which clips go into a pack. */
  public enum ClipsAs {
    /** Picture and sound to the last bit, and nothing else: no place, device, name or moment. */
    CLEARED,
    /** All but hands and elbow black, so that no face is in them, and coded anew. */
    HANDS,
    /** Not in the pack. */
    LEFT_OUT
  }

  /** The sound kept in clips that are cut to the hands. */
  public enum SoundAs {
    /** {@link SoundFilter#AROUND_S} around each slap, the rest silent: no speech. */
    SLAPS("of the sound, only %.0f ms around each slap are kept"),
    /** All of it. */
    WHOLE("the sound is whole: all that was said can be heard"),
    /** None of it. */
    NONE("the clips are silent");

    private final String words;

    SoundAs(String words) {
      this.words = words;
    }
  }

  private Packing(
      SessionFolder folder,
      ClipsAs as,
      SoundAs sound,
      PackWriter pack,
      Path scratch,
      Progress progress) {
    this.folder = folder;
    this.as = as;
    this.sound = sound;
    this.pack = pack;
    this.scratch = scratch;
    this.progress = progress;
  }

  /**
   * Writes a pack.
   *
   * @param sound of clips that are cut to the hands
   * @return a line for each thing that was left out or that its sender should know
   * @throws UserError if a clip can't be cleared or cut, something can't be read or written, or it
   *     was stopped; then there is no pack
   */
  public static List<String> write(
      SessionFolder folder, ClipsAs as, SoundAs sound, Path file, Clock clock, Progress progress)
      throws UserError {
    try (WorkFile part = WorkFile.file(file);
        WorkFile scratch = WorkFile.folder(file);
        PackWriter pack = PackWriter.create(part.path())) {
      Packing packing = new Packing(folder, as, sound, pack, scratch.path(), progress);
      packing.all();
      pack.finish(folder.session(), clock.instant().truncatedTo(ChronoUnit.SECONDS));
      part.moveTo(file);
      return packing.notes();
    } catch (IOException e) {
      throw new UserError(file + " can't be written: " + IoErrors.reason(e), e);
    }
  }

  private void all() throws IOException, ClipException, UserError {
    pack.add("session.json", SessionJson.write(folder.session()));
    List<Trial> trials = folder.trials();
    for (int i = 0; i < trials.size(); i++) {
      checkStop();
      Trial trial = trials.get(i);
      progress.at(i / (double) trials.size(), trial.id().name());
      pack.add("trials/" + trial.id().name() + ".json", TrialJson.write(sent(trial, clip(trial))));
    }
    for (String own : List.of(Drills.FILE, LimitsInForce.FILE)) {
      Path file = folder.folder().resolve(own);
      if (Files.isRegularFile(file)) {
        pack.add(own, file);
      }
    }
    progress.at(1, "done");
  }

  /** A report shows whole pictures and the clips' own names, and no page is taken from a pack. */
  private List<String> notes() throws IOException {
    List<String> notes = new ArrayList<>();
    if (as == ClipsAs.HANDS) {
      notes.add(String.format(Locale.ROOT, sound.words, 1000 * SoundFilter.AROUND_S));
    }
    Path reports = folder.folder().resolve("report");
    if (Files.isDirectory(reports)) {
      try (Stream<Path> files = Files.list(reports)) {
        if (files.findAny().isPresent()) {
          notes.add(
              "the reports are left out, as they show whole pictures and the clips' own names;"
                  + " whoever unpacks it makes one with palmturn report");
        }
      }
    }
    return notes;
  }

  private void checkStop() throws UserError {
    if (progress.stopped() || WorkFile.isEnding()) {
      throw new UserError("stopped; nothing was packed");
    }
  }

  /** Packs the facts that the estimate was made from along with the clip. */
  private static Trial sent(Trial trial, ClipRef clip) {
    Trial sent = trial.withClip(clip);
    return trial.estimate() == null || clip.equals(trial.clip())
        ? sent
        : sent.withEstimate(trial.estimate().forClip(clip.sha256()));
  }

  private ClipRef clip(Trial trial) throws IOException, ClipException, UserError {
    String key = as == ClipsAs.HANDS ? trial.id().name() : trial.clip().path();
    ClipRef known = packed.get(key);
    if (known != null) {
      return known;
    }
    Path from = folder.clipPath(trial);
    String name = name(trial, from);
    if (as == ClipsAs.LEFT_OUT) {
      return trial.clip().withPath("clips/" + name);
    }
    Path made = scratch.resolve(name);
    if (as == ClipsAs.HANDS) {
      ClipFile clip = ClipFile.open(from);
      Rectangle part = HandsRegion.of(trial, clip.facts().width(), clip.facts().height(), false);
      cut(trial, from, part, made);
    } else {
      Remuxer.write(from, made);
    }
    pack.add("clips/" + name, made);
    String path = "clips/" + name;
    String sha256 = ClipHash.sha256(made);
    ClipRef sent =
        as == ClipsAs.HANDS
            ? trial.clip().croppedAs(path, sha256)
            : trial.clip().sentAs(path, sha256);
    Files.delete(made);
    packed.put(key, sent);
    return sent;
  }

  private void cut(Trial trial, Path from, Rectangle part, Path made)
      throws IOException, ClipException, UserError {
    try {
      ClipCropper.write(from, part, made, filter(trial), share -> goOn());
    } catch (Stopped e) {
      throw new UserError("stopped; nothing was packed", e);
    }
  }

  private SoundFilter filter(Trial trial) {
    return switch (sound) {
      case SLAPS -> SoundFilter.around(heardAt(trial));
      case WHOLE -> SoundFilter.WHOLE;
      case NONE -> SoundFilter.NONE;
    };
  }

  /** Returns when each contact that anyone marked or the program found is heard, seconds. */
  private static List<Double> heardAt(Trial trial) {
    double offsetS = trial.soundOffsetS() == null ? 0 : trial.soundOffsetS();
    List<Reading> readings = new ArrayList<>(trial.readings());
    if (trial.estimate() != null) {
      readings.add(trial.estimate().toReading(Settlement.ESTIMATE));
    }
    return readings.stream()
        .flatMap(reading -> reading.slaps().stream())
        .filter(slap -> slap.kind() == Slap.Kind.SLAP || slap.kind() == Slap.Kind.DOUBLE)
        .map(slap -> slap.soundS() == null ? slap.timeS() + offsetS : slap.soundS())
        .distinct()
        .toList();
  }

  private void goOn() {
    if (progress.stopped() || WorkFile.isEnding()) {
      throw new Stopped();
    }
  }

  private static final class Stopped extends RuntimeException {
    private static final long serialVersionUID = 1L;
  }

  /** A phone's own names tell the day and the minute, and some the place. */
  private String name(Trial trial, Path from) {
    Matcher ending = ENDING.matcher(from.getFileName().toString());
    return trial.id().name() + (as == ClipsAs.HANDS || !ending.find() ? ".mp4" : ending.group());
  }
}
