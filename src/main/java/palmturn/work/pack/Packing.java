package palmturn.work.pack;

import java.awt.Rectangle;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
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
import palmturn.json.SessionJson;
import palmturn.json.TrialJson;
import palmturn.store.IoErrors;
import palmturn.store.PackWriter;
import palmturn.store.SessionFolder;
import palmturn.trial.ClipRef;
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

  private Packing(
      SessionFolder folder, ClipsAs as, PackWriter pack, Path scratch, Progress progress) {
    this.folder = folder;
    this.as = as;
    this.pack = pack;
    this.scratch = scratch;
    this.progress = progress;
  }

  /**
   * Writes a pack.
   *
   * @return a line for each thing that was left out or that its sender should know
   * @throws UserError if a clip can't be cleared or cut, something can't be read or written, or it
   *     was stopped; then there is no pack
   */
  public static List<String> write(
      SessionFolder folder, ClipsAs as, Path file, Clock clock, Progress progress)
      throws UserError {
    try (WorkFile part = WorkFile.file(file);
        WorkFile scratch = WorkFile.folder(file);
        PackWriter pack = PackWriter.create(part.path())) {
      Packing packing = new Packing(folder, as, pack, scratch.path(), progress);
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
    Path reports = folder.folder().resolve("report");
    if (!Files.isDirectory(reports)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(reports)) {
      return files.findAny().isEmpty()
          ? List.of()
          : List.of(
              "the reports are left out, as they show whole pictures and the clips' own names;"
                  + " whoever unpacks it makes one with palmturn report");
    }
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
      cut(from, part, made);
    } else {
      Remuxer.write(from, made);
    }
    pack.add("clips/" + name, made);
    ClipRef sent = trial.clip().sentAs("clips/" + name, ClipHash.sha256(made));
    Files.delete(made);
    packed.put(key, sent);
    return sent;
  }

  private void cut(Path from, Rectangle part, Path made)
      throws IOException, ClipException, UserError {
    try {
      ClipCropper.write(from, part, made, share -> goOn());
    } catch (Stopped e) {
      throw new UserError("stopped; nothing was packed", e);
    }
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
