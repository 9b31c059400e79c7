package palmturn.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Block;
import palmturn.trial.Reading;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

/** The trials of a session on the disk; a damaged one keeps no other from being read. */
final class TrialFiles {
  private static final String JSON = ".json";
  private static final String JOURNAL = ".journal";

  /** The order of the trial board: by block, by repeat, left before right. */
  private static final Comparator<TrialId> BOARD_ORDER =
      Comparator.comparingInt((TrialId id) -> Block.order(id.block()))
          .thenComparingInt(TrialId::repeat)
          .thenComparing(TrialId::hand);

  private final Path folder;
  private final Disk disk;
  private final Map<TrialId, TrialFile> trials = new TreeMap<>(BOARD_ORDER);
  private final Map<TrialId, String> damaged = new TreeMap<>(BOARD_ORDER);
  private final List<String> notices = new ArrayList<>();

  private TrialFiles(Path folder, Disk disk) {
    this.folder = folder;
    this.disk = disk;
  }

  /**
   * Reads all trials of a session.
   *
   * @throws StoreException if the folder can't be looked into
   */
  static TrialFiles load(Path session, Disk disk) throws StoreException {
    Path folder = session.resolve(Layout.TRIALS);
    TrialFiles read = new TrialFiles(folder, disk);
    for (Path file : Files.isDirectory(folder) ? Layout.list(folder) : List.<Path>of()) {
      read.load(file);
    }
    return read;
  }

  private void load(Path file) {
    String fileName = file.getFileName().toString();
    if (fileName.endsWith(JOURNAL)) {
      String name = fileName.substring(0, fileName.length() - JOURNAL.length());
      if (!Files.exists(folder.resolve(name + JSON))) {
        notices.add("%s: a journal without its trial; left alone".formatted(file));
      }
    } else if (fileName.endsWith(JSON)) {
      String name = fileName.substring(0, fileName.length() - JSON.length());
      TrialId id;
      try {
        id = TrialId.parse(name);
      } catch (IllegalArgumentException e) {
        notices.add("%s: not named as a trial; left alone".formatted(file));
        return;
      }
      try {
        trials.put(id, TrialFile.open(folder, name, disk, notices));
      } catch (StoreException e) {
        String why = String.valueOf(e.getMessage());
        damaged.put(id, why);
        notices.add(why + "; this trial is left out and its files are left alone");
      }
    }
  }

  /** Writes what came with a journal of another state of its trial into the trial's file. */
  void foldForeignJournals() throws StoreException {
    for (TrialFile each : trials.values()) {
      if (each.hasForeignJournal()) {
        each.foldJournal();
      }
    }
  }

  /** Returns notices of what reading ignored, a line each. */
  List<String> notices() {
    return List.copyOf(notices);
  }

  /** Returns the trials that can't be read, each with the reason in one line. */
  Map<TrialId, String> damaged() {
    return damaged;
  }

  /** Returns what can be read back of the damaged trials. */
  List<Recoverable> recoverable() {
    return damaged.entrySet().stream()
        .map(each -> Recoverable.of(folder, each.getKey(), each.getValue(), disk))
        .toList();
  }

  /**
   * Puts a damaged trial's files aside, and writes what could be read back in their place.
   *
   * @throws StoreException if that can't be done; what was damaged is still there
   */
  void recover(Recoverable what) throws StoreException {
    Trial trial = what.trial();
    if (trial == null) {
      throw new StoreException(
          "%s: its clip can't be read back, so the trial must be added anew"
              .formatted(what.id().name()));
    }
    putAside(what.id());
    save(trial);
  }

  private void putAside(TrialId id) throws StoreException {
    try {
      for (String ending : List.of(JOURNAL, JSON)) {
        Path file = folder.resolve(id.name() + ending);
        if (Files.exists(file)) {
          disk.moveOver(file, Layout.vacant(file, ".damaged"));
        }
      }
    } catch (IOException e) {
      throw new StoreException(
          "%s: can't be put aside: %s".formatted(id.name(), IoErrors.reason(e)), e);
    }
    damaged.remove(id);
  }

  /** Returns all trials that can be read, in the order of the board. */
  Collection<TrialFile> all() {
    return trials.values();
  }

  /**
   * Returns a trial.
   *
   * @throws StoreException if there is none, or it can't be read
   */
  TrialFile require(TrialId id) throws StoreException {
    TrialFile known = trials.get(id);
    if (known == null) {
      String why = damaged.get(id);
      throw new StoreException(
          why != null ? why : "%s: there is no trial %s".formatted(folder.getParent(), id.name()));
    }
    return known;
  }

  /**
   * Reads all trials again as another program has left them, and keeps beside them what was marked
   * here.
   *
   * @param superseded returns the reader of a trial whose marks here are no longer the newest
   */
  TrialFiles reload(Function<Trial, String> superseded, Instant at) throws StoreException {
    Path session = Objects.requireNonNull(folder.getParent());
    TrialFiles there = load(session, disk);
    for (TrialFile each : trials.values()) {
      List<Reading> newest = new ArrayList<>(each.readingsKept());
      newest.removeIf(kept -> kept.reader().equals(superseded.apply(each.trial())));
      for (Reading kept : newest) {
        there.keepBeside(each.trial(), kept, "Kept beside a foreign change", at);
      }
    }
    return there;
  }

  /** Folds all journals; one that can't be keeps no other from it. */
  void fold() throws StoreException {
    StoreException failure = null;
    for (TrialFile trial : trials.values()) {
      try {
        trial.foldJournal();
      } catch (StoreException e) {
        failure = failure == null || e instanceof ForeignChangeException ? e : failure;
      }
    }
    if (failure != null) {
      throw failure;
    }
  }

  /** Writes a new trial, or replaces one with all its readings. */
  void save(Trial trial) throws StoreException {
    TrialFile known = trials.get(trial.id());
    if (known != null) {
      known.replace(trial);
    } else if (damaged.containsKey(trial.id())) {
      throw new StoreException("%s; nothing was written".formatted(damaged.get(trial.id())));
    } else {
      Layout.createFolder(folder, disk);
      trials.put(trial.id(), TrialFile.create(folder, trial, disk));
    }
  }

  /** Returns a reading under a free name of a trial; null where the trial has it already. */
  static @Nullable Reading named(Trial trial, Reading reading) {
    Reading named = reading;
    for (int i = 2; trial.reading(named.reader()).isPresent(); i++) {
      if (trial.readings().contains(named)) {
        return null;
      }
      named = reading.by(reading.reader() + "-" + i);
    }
    return named;
  }

  /**
   * Puts a reading beside those of its trial, under a name of its own where another one has its
   * name.
   *
   * @param of the trial as it is known here; written again where its file is gone or damaged
   * @return the reading as it was put; null where the trial has it already
   */
  @Nullable Reading keepBeside(Trial of, Reading reading, String sentence, Instant at)
      throws StoreException {
    if (damaged.containsKey(of.id())) {
      putAside(of.id());
    }
    if (!trials.containsKey(of.id())) {
      save(of);
    }
    TrialFile there = require(of.id());
    Reading put = named(there.trial(), reading);
    if (put == null) {
      return null;
    }
    there.keep(put, sentence, at);
    return put;
  }
}
