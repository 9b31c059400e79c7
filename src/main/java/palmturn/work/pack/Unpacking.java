package palmturn.work.pack;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import palmturn.clip.ClipException;
import palmturn.json.PackManifest;
import palmturn.store.IoErrors;
import palmturn.store.PackReader;
import palmturn.store.SessionFolder;
import palmturn.store.StoreException;
import palmturn.trial.Session;
import palmturn.trial.Trial;
import palmturn.trial.UserError;
import palmturn.work.WorkFile;

/**
 * The unpacking of a pack into a new session, or into the one that it was made from. Nothing here
 * gives way to what a pack brings, and a page is never taken from one.
 */
public final class Unpacking {
  private final PackReader pack;
  private final Path into;
  private final Arrival arrival;
  private final boolean takeStandards;
  private final List<String> brought = new ArrayList<>();
  private final List<String> left = new ArrayList<>();

  private Unpacking(PackReader pack, Path into, boolean takeStandards, Clock clock) {
    this.pack = pack;
    this.into = into;
    PackManifest manifest = pack.manifest();
    arrival = new Arrival(manifest.at(), manifest.date(), clock.instant());
    this.takeStandards = takeStandards;
  }

  /**
   * The session that a pack became.
   *
   * @param session where it lies
   * @param fresh whether the session was not there before
   * @param pack its day in words
   * @param brought a line for each thing that was not there before
   * @param left a line for each thing that was left out or does not count, and why
   * @param standards the limits and drills that the pack has of its own and that were not taken
   */
  public record Unpacked(
      Path session,
      boolean fresh,
      String pack,
      List<String> brought,
      List<String> left,
      PackedStandards standards) {
    public Unpacked {
      brought = List.copyOf(brought);
      left = List.copyOf(left);
    }
  }

  /** Returns the name of the folder that a pack's session has if nothing else is said. */
  public static String folderName(Path file) throws UserError {
    try (PackReader pack = PackReader.open(file)) {
      PackManifest manifest = pack.manifest();
      return manifest.athlete().replaceAll("[^\\p{L}\\p{N}._-]+", "-") + "-" + manifest.date();
    }
  }

  /**
   * Unpacks.
   *
   * @param into a session's folder, or one that is not there yet
   * @param takeStandards whether the pack's own limits and drills are to count, where the session
   *     has none
   * @param clock tells which dates in the pack can't have come yet
   * @throws UserError if the pack can't be trusted or is of another session, or something can't be
   *     written; a session that was there has then lost nothing
   */
  public static Unpacked unpack(Path file, Path into, boolean takeStandards, Clock clock)
      throws UserError {
    try (PackReader pack = PackReader.open(file);
        WorkFile scratch = WorkFile.folder(into)) {
      return new Unpacking(pack, into, takeStandards, clock).unpackBy(scratch);
    } catch (IOException e) {
      throw new UserError(into + " can't be written: " + IoErrors.reason(e), e);
    }
  }

  /** Unpacks; an error names a file by its place in the pack. */
  private Unpacked unpackBy(WorkFile scratch) throws UserError, IOException {
    try {
      return unpack(scratch);
    } catch (UserError e) {
      String place = scratch.path() + into.getFileSystem().getSeparator();
      throw new UserError(String.valueOf(e.getMessage()).replace(place, "in the pack: "), e);
    }
  }

  private Unpacked unpack(WorkFile scratch)
      throws StoreException, UserError, IOException, ClipException {
    pack.layOut(scratch.path());
    boolean fresh = !Files.exists(into.resolve("session.json"));
    PackedStandards standards = PackedStandards.of(scratch.path(), into, takeStandards);
    try (SessionFolder packed = SessionFolder.open(scratch.path())) {
      packed.requireWhole();
      PackedClips.check(packed);
      if (fresh) {
        receive(packed);
      } else {
        merge(packed);
      }
    }
    standards.apply(scratch.path(), into);
    standards.taken().forEach(name -> brought.add("the session: " + name));
    if (pack.hasReports()) {
      left.add("its reports, which anyone may have written: palmturn report makes one anew");
    }
    if (fresh) {
      refuseOccupied(into);
      Files.deleteIfExists(into);
      Files.move(scratch.path(), into, StandardCopyOption.ATOMIC_MOVE);
    }
    return new Unpacked(into, fresh, arrival.pack(), brought, left, standards);
  }

  private void receive(SessionFolder packed) throws StoreException {
    MergedSession session = MergedSession.of(packed.session(), packed.session(), arrival);
    left.addAll(session.left());
    if (session.session().windowS() != Session.DEFAULT_WINDOW_S) {
      brought.add("the session: the window of %s s".formatted(session.session().windowS()));
    }
    packed.change(now -> session.session());
    for (Trial trial : packed.trials()) {
      packed.save(said(MergedTrial.received(trial, arrival)));
    }
  }

  private Trial said(MergedTrial merged) {
    brought.addAll(merged.brought());
    left.addAll(merged.left());
    return merged.trial();
  }

  private void merge(SessionFolder packed) throws StoreException, UserError {
    try (SessionFolder here = SessionFolder.open(into)) {
      refuseOther(here.session(), packed.session());
      for (Trial trial : packed.trials()) {
        merge(here, packed, trial);
      }
      MergedSession session = MergedSession.of(here.session(), packed.session(), arrival);
      brought.addAll(session.brought());
      left.addAll(session.left());
      if (!session.session().equals(here.session())) {
        here.change(now -> session.session());
      }
    }
  }

  private void merge(SessionFolder here, SessionFolder packed, Trial trial) throws StoreException {
    if (here.damaged().containsKey(trial.id())) {
      left.add(trial.id().name() + ": the trial here is damaged: see palmturn verify");
      return;
    }
    Trial known =
        here.trials().stream()
            .filter(each -> each.id().equals(trial.id()))
            .findFirst()
            .orElse(null);
    if (known == null) {
      here.save(withClip(said(MergedTrial.received(trial, arrival)), here, packed, trial));
      return;
    }
    Trial merged = said(MergedTrial.of(known, trial, arrival));
    if (Files.exists(packed.clipPath(trial))
        && !Files.exists(here.clipPath(known))
        && known.clip().sameFilm(trial.clip())) {
      merged = withClip(merged, here, packed, trial);
      brought.add(trial.id().name() + ": the clip");
    }
    if (!merged.equals(known)) {
      here.save(merged);
    }
  }

  private static Trial withClip(Trial merged, SessionFolder here, SessionFolder packed, Trial trial)
      throws StoreException {
    Path clip = packed.clipPath(trial);
    if (!Files.exists(clip)) {
      return merged;
    }
    return merged.withClip(trial.clip().withPath(here.importClip(clip)));
  }

  private static void refuseOther(Session here, Session packed) throws UserError {
    if (!here.athlete().equals(packed.athlete()) || !here.date().equals(packed.date())) {
      throw new UserError(
          "the pack is of %s, %s, and this session of %s, %s: unpack it into a new folder"
              .formatted(packed.athlete(), packed.date(), here.athlete(), here.date()));
    }
  }

  private static void refuseOccupied(Path into) throws IOException, UserError {
    if (Files.isDirectory(into)) {
      try (Stream<Path> files = Files.list(into)) {
        if (files.findAny().isPresent()) {
          throw new UserError(into + " is not empty, and no session: name a new folder");
        }
      }
    } else if (Files.exists(into)) {
      throw new UserError(into + " is a file: name a new folder");
    }
  }
}
