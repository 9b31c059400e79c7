package palmturn.work.pack;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import palmturn.json.PackManifest;
import palmturn.store.PackReader;
import palmturn.store.SessionFolder;
import palmturn.store.StoreException;
import palmturn.trial.Block;
import palmturn.trial.Message;
import palmturn.trial.Session;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.trial.UserError;

/** The unpacking of a pack into a new session, or into the one that it was made from. */
public final class Unpacking {
  private Unpacking() {}

  /**
   * The session that a pack became.
   *
   * @param session where it lies
   * @param fresh whether the session was not there before
   * @param notes a line for each thing that a person should know
   */
  public record Unpacked(Path session, boolean fresh, List<String> notes) {
    public Unpacked {
      notes = List.copyOf(notes);
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
   * @throws UserError if the pack can't be trusted or is of another session, or something can't be
   *     written; a session that was there is then as it was
   */
  public static Unpacked unpack(Path file, Path into) throws UserError {
    Path beside = into.resolveSibling("." + into.getFileName() + ".unpacked");
    try (PackReader pack = PackReader.open(file)) {
      delete(beside);
      pack.layOut(beside);
      boolean fresh = !Files.exists(into.resolve("session.json"));
      List<String> notes = new ArrayList<>();
      try (SessionFolder packed = SessionFolder.open(beside)) {
        packed.requireWhole();
        if (fresh) {
          markReceived(packed);
        } else {
          merge(packed, into, notes);
        }
      }
      if (fresh) {
        refuseOccupied(into);
        Files.deleteIfExists(into);
        Files.move(beside, into, StandardCopyOption.ATOMIC_MOVE);
      }
      return new Unpacked(into, fresh, notes);
    } catch (IOException e) {
      throw new UserError(into + " can't be written: " + e.getMessage(), e);
    } finally {
      deleteQuietly(beside);
    }
  }

  private static void markReceived(SessionFolder packed) throws StoreException {
    for (Trial trial : packed.trials()) {
      packed.save(MergedTrial.received(trial));
    }
  }

  private static void merge(SessionFolder packed, Path into, List<String> notes)
      throws StoreException, UserError, IOException {
    try (SessionFolder here = SessionFolder.open(into)) {
      refuseOther(here.session(), packed.session());
      for (Trial trial : packed.trials()) {
        Trial known =
            here.trials().stream()
                .filter(each -> each.id().equals(trial.id()))
                .findFirst()
                .orElse(null);
        if (known == null) {
          here.save(brought(here, packed, trial));
        } else {
          MergedTrial merged = MergedTrial.of(known, trial);
          notes.addAll(merged.notes());
          if (!merged.trial().equals(known)) {
            here.save(merged.trial());
          }
        }
      }
      Session both = both(here.session(), packed.session());
      if (!both.equals(here.session())) {
        here.change(now -> both);
      }
      Path reports = packed.folder().resolve("report");
      try (Stream<Path> files = Files.list(reports)) {
        for (Path report : files.sorted().toList()) {
          here.importReport(report);
        }
      }
    }
  }

  private static void refuseOther(Session here, Session packed) throws UserError {
    if (!here.athlete().equals(packed.athlete()) || !here.date().equals(packed.date())) {
      throw new UserError(
          "the pack is of %s, %s, and this session of %s, %s: unpack it into a new folder"
              .formatted(packed.athlete(), packed.date(), here.athlete(), here.date()));
    }
  }

  private static Trial brought(SessionFolder here, SessionFolder packed, Trial trial)
      throws StoreException {
    Trial received = MergedTrial.received(trial);
    Path clip = packed.clipPath(trial);
    if (!Files.exists(clip)) {
      return received;
    }
    String path = here.importClip(clip);
    return received.withClip(
        new palmturn.trial.ClipRef(
            path,
            trial.clip().sha256(),
            trial.clip().originalSha256(),
            trial.clip().medianFrameS(),
            trial.clip().extra()));
  }

  /** Keeps equal entries once; where they differ, the receiver's own stays. */
  private static Session both(Session here, Session packed) {
    List<Block> blocks = new ArrayList<>(here.blocks());
    packed.blocks().stream()
        .filter(block -> here.block(block.name()).isEmpty())
        .forEach(blocks::add);
    blocks.sort(Comparator.comparingInt(block -> Block.order(block.name())));
    Set<TrialId> filmed = new LinkedHashSet<>(here.filmed());
    filmed.addAll(packed.filmed());
    Set<Message> messages = new LinkedHashSet<>(here.messages());
    messages.addAll(packed.messages());
    return here.withBlocks(blocks)
        .withFilmed(List.copyOf(filmed))
        .withMessages(messages.stream().sorted(Comparator.comparing(Message::at)).toList())
        .withFacts(here.facts().equals(Session.Facts.NONE) ? packed.facts() : here.facts());
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

  private static void deleteQuietly(Path folder) {
    try {
      delete(folder);
    } catch (IOException e) {
      // What is left over is hidden beside the session, and goes at the next unpacking.
    }
  }

  private static void delete(Path folder) throws IOException {
    if (!Files.exists(folder)) {
      return;
    }
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }
}
