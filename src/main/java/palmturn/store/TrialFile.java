package palmturn.store;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import palmturn.json.JournalLine;
import palmturn.json.TrialJson;
import palmturn.trial.Reading;
import palmturn.trial.Trial;

/** One trial on the disk: its file, and the journal of edits since the file was written. */
final class TrialFile {
  /** A journal longer than this is folded into the trial's file, bytes. */
  static final long LONG_JOURNAL = 1_000_000;

  private final Path file;
  private final Disk disk;
  private final Journal journal;
  private Trial trial;

  private TrialFile(Path file, Disk disk, Journal journal, Trial trial) {
    this.file = file;
    this.disk = disk;
    this.journal = journal;
    this.trial = trial;
  }

  /** Reads a trial; what the reading left out is added to the notices. */
  static TrialFile open(Path folder, String name, Disk disk, List<String> notices)
      throws StoreException {
    Path file = folder.resolve(name + ".json");
    // The journal first: a writer at work may fold it into the trial's file in between.
    Journal journal = Journal.open(folder.resolve(name + ".journal"), disk);
    Trial trial = TextFile.read(file, TrialJson::read);
    if (!trial.id().name().equals(name)) {
      throw new StoreException(
          "%s: holds the trial %s; its name and its content must agree"
              .formatted(file, trial.id().name()));
    }
    if (!Inside.harmless(trial.clip().path())) {
      throw new StoreException(
          "%s: $.clip.path: \"%s\" is not a path inside the session's folder"
              .formatted(file, trial.clip().path().replaceAll("\\p{Cntrl}", " ")));
    }
    for (JournalLine line : journal.lastOfReaders()) {
      trial = trial.withReading(line.reading());
    }
    if (journal.torn()) {
      notices.add(
          "%s: its last line was cut short before it was saved, and is left out"
              .formatted(folder.resolve(name + ".journal")));
    }
    return new TrialFile(file, disk, journal, trial);
  }

  /** Writes a new trial. */
  static TrialFile create(Path folder, Trial trial, Disk disk) throws StoreException {
    String name = trial.id().name();
    Path file = folder.resolve(name + ".json");
    Journal journal = Journal.open(folder.resolve(name + ".journal"), disk);
    if (Files.exists(file) || journal.length() > 0) {
      throw new StoreException("%s: is there already; open the session again".formatted(file));
    }
    write(disk, file, trial);
    return new TrialFile(file, disk, journal, trial);
  }

  private static void write(Disk disk, Path file, Trial trial) throws StoreException {
    if (!Inside.harmless(trial.clip().path())) {
      throw new StoreException(
          "%s: not written: the clip \"%s\" is not inside the session's folder"
              .formatted(file, trial.clip().path()));
    }
    TextFile.replace(disk, file, () -> TrialJson.write(trial), TrialJson::read);
  }

  Trial trial() {
    return trial;
  }

  /** Puts a reading on the disk. */
  void keep(Reading reading, String sentence, Instant at) throws StoreException {
    journal.add(new JournalLine(at, sentence, reading));
    trial = trial.withReading(reading);
    if (journal.length() > LONG_JOURNAL) {
      try {
        settleDown();
      } catch (StoreException e) {
        // The edit is on the disk, and the journal holds all; closing tries again and tells.
        return;
      }
    }
  }

  /** Replaces the whole trial. */
  void replace(Trial changed) throws StoreException {
    // An older line left in the journal would win over the new file.
    settleDown();
    write(disk, file, changed);
    trial = changed;
  }

  /** Folds the journal into the trial's file. */
  void settleDown() throws StoreException {
    if (journal.mayHoldAnything()) {
      write(disk, file, trial);
      journal.clear();
    }
  }
}
