package palmturn.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import palmturn.json.JournalLine;
import palmturn.json.TrialJson;
import palmturn.trial.Reading;
import palmturn.trial.Trial;

/** One trial on the disk: its file, and the journal of edits since the file was written. */
final class TrialFile {
  /** A journal longer than this is folded into the trial's file, bytes. */
  static final long LONG_JOURNAL = 1_000_000;

  private final ReplaceableFile<Trial> file;
  private final Journal journal;
  private final Set<String> readersKept = new HashSet<>();
  private Trial trial;
  private boolean hasForeignJournal;

  private TrialFile(ReplaceableFile<Trial> file, Journal journal, Trial trial) {
    this.file = file;
    this.journal = journal;
    this.trial = trial;
  }

  private static ReplaceableFile<Trial> file(Path folder, String name, Disk disk) {
    return new ReplaceableFile<>(
        folder.resolve(name + ".json"), disk, TrialJson::write, TrialJson::read);
  }

  /** Reads a trial; anything ignored is added to the notices. */
  static TrialFile open(Path folder, String name, Disk disk, List<String> notices)
      throws StoreException {
    ReplaceableFile<Trial> file = file(folder, name, disk);
    // The journal first: a writer at work may fold it into the trial's file in between.
    Journal journal = Journal.open(folder.resolve(name + ".journal"), disk);
    Trial trial = file.read();
    if (!trial.id().name().equals(name)) {
      throw new StoreException(
          "%s: holds the trial %s; its name and its content must agree"
              .formatted(file.path(), trial.id().name()));
    }
    if (!SessionPaths.isInside(trial.clip().path())) {
      throw new StoreException(
          "%s: $.clip.path: \"%s\" is not a path inside the session's folder"
              .formatted(file.path(), trial.clip().path().replaceAll("\\p{Cntrl}", " ")));
    }
    boolean foreign = false;
    for (JournalLine line : journal.lastOfReaders()) {
      if (line.continues(file.sha256())) {
        trial = trial.withReading(line.reading());
      } else {
        // A sync or a restore brought one of the two back: neither is taken for the newer one.
        Reading beside = TrialFiles.named(trial, line.reading());
        trial = beside == null ? trial : trial.withReading(beside);
        foreign = true;
      }
    }
    if (journal.damagedLines() > 0) {
      notices.add(
          String.format(
              Locale.ROOT,
              "%s: damaged in %d of its lines; all marks in the others are read",
              journal.path(),
              journal.damagedLines()));
    }
    if (journal.isTorn()) {
      notices.add(
          "%s: its last line was cut short before it was saved, and is left out"
              .formatted(journal.path()));
    }
    TrialFile opened = new TrialFile(file, journal, trial);
    opened.hasForeignJournal = foreign;
    return opened;
  }

  /** Writes a new trial. */
  static TrialFile create(Path folder, Trial trial, Disk disk) throws StoreException {
    String name = trial.id().name();
    ReplaceableFile<Trial> file = file(folder, name, disk);
    Journal journal = Journal.open(folder.resolve(name + ".journal"), disk);
    if (Files.exists(file.path()) || journal.length() > 0) {
      throw new StoreException(
          "%s: is there already; open the session again".formatted(file.path()));
    }
    try {
      save(file, trial);
    } catch (StoreException e) {
      try {
        disk.deleteIfExists(file.path());
      } catch (IOException left) {
        e.addSuppressed(left);
      }
      throw e;
    }
    return new TrialFile(file, journal, trial);
  }

  private static void save(ReplaceableFile<Trial> file, Trial trial) throws StoreException {
    if (!SessionPaths.isInside(trial.clip().path())) {
      throw new StoreException(
          "%s: not written: the clip \"%s\" is not inside the session's folder"
              .formatted(file.path(), trial.clip().path()));
    }
    file.save(trial);
  }

  Trial trial() {
    return trial;
  }

  /** Returns whether the journal that was read continues another state of the trial's file. */
  boolean hasForeignJournal() {
    return hasForeignJournal;
  }

  /** Returns the readings that were put on the disk here since the trial was opened. */
  List<Reading> readingsKept() {
    return trial.readings().stream().filter(each -> readersKept.contains(each.reader())).toList();
  }

  /** Puts a reading on the disk. */
  void keep(Reading reading, String sentence, Instant at) throws StoreException {
    file.requireUnchanged();
    journal.add(new JournalLine(at, sentence, reading, file.sha256()));
    trial = trial.withReading(reading);
    readersKept.add(reading.reader());
    if (journal.length() > LONG_JOURNAL) {
      try {
        foldJournal();
      } catch (StoreException e) {
        // The edit is on the disk, and the journal holds all; closing tries again and tells.
        return;
      }
    }
  }

  /** Replaces the whole trial. */
  void replace(Trial changed) throws StoreException {
    // An older line left in the journal would win over the new file.
    foldJournal();
    save(file, changed);
    trial = changed;
  }

  /** Folds the journal into the trial's file. */
  void foldJournal() throws StoreException {
    if (file.isUncertain() || journal.mayHaveContent()) {
      journal.requireUnchanged();
      save(file, trial);
      journal.clear();
    }
  }
}
