package palmturn.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import palmturn.json.SessionJson;
import palmturn.trial.Block;
import palmturn.trial.Estimate;
import palmturn.trial.PlacedPoints;
import palmturn.trial.Reading;
import palmturn.trial.Session;
import palmturn.trial.Settlement;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

/**
 * A session on the disk: {@code session.json}, {@code trials/}, {@code clips/}, {@code report/}.
 * One program at a time writes; an edit survives a loss of power once {@link #keep} has returned.
 * Methods may be called from any thread.
 */
public final class SessionFolder implements AutoCloseable {
  private static final String JSON = ".json";
  private static final String JOURNAL = ".journal";

  /** The order of the trial board: by block, by repeat, left before right. */
  private static final Comparator<TrialId> BOARD_ORDER =
      Comparator.comparingInt((TrialId id) -> Block.order(id.block()))
          .thenComparingInt(TrialId::repeat)
          .thenComparing(TrialId::hand);

  private final Path folder;
  private final ReplaceableFile<Session> file;
  private final Clock clock;
  private final Disk disk;
  private final @Nullable WriterLock lock;
  private final Map<TrialId, TrialFile> trials = new TreeMap<>(BOARD_ORDER);
  private final List<String> notices = new ArrayList<>();
  private Session session;
  private boolean closed;

  private SessionFolder(
      Path folder,
      ReplaceableFile<Session> file,
      Session session,
      Clock clock,
      Disk disk,
      @Nullable WriterLock lock) {
    this.folder = folder;
    this.file = file;
    this.session = session;
    this.clock = clock;
    this.disk = disk;
    this.lock = lock;
  }

  /**
   * Creates a session's folder and opens it for writing.
   *
   * @throws StoreException if there is something in the folder already, or it can't be written
   */
  public static SessionFolder create(Path folder, Session session) throws StoreException {
    return create(folder, session, Clock.systemUTC(), Disk.REAL);
  }

  static SessionFolder create(Path folder, Session session, Clock clock, Disk disk)
      throws StoreException {
    Layout.requireVacant(folder);
    Layout.createFolder(folder, disk);
    WriterLock lock = WriterLock.acquire(folder, disk);
    try {
      Layout.requireVacant(folder);
      for (String name : Layout.FOLDERS) {
        Layout.createFolder(folder.resolve(name), disk);
      }
      ReplaceableFile<Session> file = sessionFile(folder, disk);
      file.save(session);
      return new SessionFolder(folder, file, session, clock, disk, lock);
    } catch (StoreException e) {
      throw released(lock, e);
    }
  }

  private static ReplaceableFile<Session> sessionFile(Path folder, Disk disk) {
    return new ReplaceableFile<>(
        folder.resolve(Layout.SESSION), disk, SessionJson::write, SessionJson::read);
  }

  /**
   * Opens a session for writing.
   *
   * @throws StoreException if it is no session, is open elsewhere, can't be written, or a file in
   *     it is damaged or newer than this program; every file is then as it was
   */
  public static SessionFolder open(Path folder) throws StoreException {
    return open(folder, Clock.systemUTC());
  }

  /** As {@link #open(Path)}, with the clock that dates the edits. */
  public static SessionFolder open(Path folder, Clock clock) throws StoreException {
    return open(folder, clock, Disk.REAL);
  }

  static SessionFolder open(Path folder, Clock clock, Disk disk) throws StoreException {
    Layout.requireSession(folder);
    WriterLock lock = WriterLock.acquire(folder, disk);
    try {
      return load(folder, clock, disk, lock);
    } catch (StoreException e) {
      throw released(lock, e);
    }
  }

  /**
   * Opens a session for reading only; another program may be writing it.
   *
   * @throws StoreException if it is no session, or a file in it is damaged or newer than this
   *     program
   */
  public static SessionFolder openReadOnly(Path folder) throws StoreException {
    Layout.requireSession(folder);
    return load(folder, Clock.systemUTC(), Disk.REAL, null);
  }

  private static SessionFolder load(Path folder, Clock clock, Disk disk, @Nullable WriterLock lock)
      throws StoreException {
    ReplaceableFile<Session> sessionFile = sessionFile(folder, disk);
    Session session = sessionFile.read();
    SessionFolder opened = new SessionFolder(folder, sessionFile, session, clock, disk, lock);
    Path trials = folder.resolve(Layout.TRIALS);
    for (Path file : Files.isDirectory(trials) ? Layout.list(trials) : List.<Path>of()) {
      opened.loadTrial(trials, file);
    }
    return opened;
  }

  private void loadTrial(Path folderOfTrials, Path file) throws StoreException {
    String fileName = file.getFileName().toString();
    if (fileName.endsWith(JOURNAL)) {
      String name = fileName.substring(0, fileName.length() - JOURNAL.length());
      if (!Files.exists(folderOfTrials.resolve(name + JSON))) {
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
      trials.put(id, TrialFile.open(folderOfTrials, name, disk, notices));
    }
  }

  private static StoreException released(WriterLock lock, StoreException e) {
    try {
      lock.close();
    } catch (IOException left) {
      e.addSuppressed(left);
    }
    return e;
  }

  /** Returns where the session lies. */
  public Path folder() {
    return folder;
  }

  /** Returns whether it was opened for reading only. */
  public boolean readOnly() {
    return lock == null;
  }

  /** Returns notices of what opening ignored, a line each. */
  public List<String> notices() {
    return List.copyOf(notices);
  }

  public synchronized Session session() {
    return session;
  }

  /** Returns all trials in the order of the board: by block, by repeat, left before right. */
  public synchronized List<Trial> trials() {
    return trials.values().stream().map(TrialFile::trial).toList();
  }

  /**
   * Returns a trial.
   *
   * @throws StoreException if the session has no such trial
   */
  public synchronized Trial trial(TrialId id) throws StoreException {
    return requireTrial(id).trial();
  }

  private TrialFile requireTrial(TrialId id) throws StoreException {
    TrialFile known = trials.get(id);
    if (known == null) {
      throw new StoreException("%s: there is no trial %s".formatted(folder, id.name()));
    }
    return known;
  }

  /** Returns where a trial's clip lies; whether it is there is for {@link #checkClip} to say. */
  public Path clipPath(Trial trial) {
    return folder.resolve(trial.clip().path());
  }

  /**
   * Refuses a trial whose clip is missing, or has changed since it was added.
   *
   * @throws StoreException saying which
   */
  public void checkClip(Trial trial) throws StoreException {
    Clips.check(folder, trial);
  }

  /** Returns a line for each trial whose clip is missing, or has changed since it was added. */
  public List<String> checkClips() {
    return Clips.problems(folder, trials());
  }

  /**
   * Copies a clip into the session under its own name, made harmless and unique; a clip that is
   * there already, byte for byte, is used again.
   *
   * @return its path in the session, as {@code ClipRef} holds it
   * @throws StoreException if it can't be read or copied
   */
  public synchronized String importClip(Path source) throws StoreException {
    requireWritable();
    return Clips.copyIn(folder, Layout.CLIPS, source, disk);
  }

  /**
   * Copies a file into the session's reports under its own name, or a numbered one where another
   * file has it; one that is there already, byte for byte, is left alone.
   *
   * @throws StoreException if it can't be read or copied
   */
  public synchronized void importReport(Path source) throws StoreException {
    requireWritable();
    Clips.copyIn(folder, Layout.REPORT, source, disk);
  }

  /**
   * Changes the session's file from what it is at that moment.
   *
   * @throws StoreException if it can't be written; the old file is then whole
   */
  public synchronized void change(UnaryOperator<Session> how) throws StoreException {
    requireWritable();
    Session changed = how.apply(session);
    file.save(changed);
    session = changed;
  }

  /**
   * Writes a new trial, or replaces one with all its readings.
   *
   * @throws StoreException if it can't be written; the old file is then whole
   */
  public synchronized void save(Trial trial) throws StoreException {
    requireWritable();
    TrialFile known = trials.get(trial.id());
    if (known != null) {
      known.replace(trial);
    } else {
      Path folderOfTrials = folder.resolve(Layout.TRIALS);
      Layout.createFolder(folderOfTrials, disk);
      trials.put(trial.id(), TrialFile.create(folderOfTrials, trial, disk));
    }
  }

  /**
   * Saves a reading after an edit; on return it is on the disk.
   *
   * @param sentence what the edit did, as the history shows it
   * @throws StoreException if it could not be saved; all that was saved before is still there
   */
  public synchronized void keep(TrialId id, Reading reading, String sentence)
      throws StoreException {
    requireWritable();
    requireTrial(id).keep(reading, sentence, clock.instant());
  }

  /**
   * Saves an estimate in place of an older one, beside the readings of that moment.
   *
   * @throws StoreException if it can't be written; the old file is then whole
   */
  public synchronized void keep(TrialId id, Estimate estimate) throws StoreException {
    requireWritable();
    TrialFile known = requireTrial(id);
    known.replace(known.trial().withEstimate(estimate));
  }

  /**
   * Saves the settling of two readings in place of an older one of the same two, beside the
   * readings of that moment.
   *
   * @throws StoreException if it can't be written; the old file is then whole
   */
  public synchronized void keep(TrialId id, Settlement settlement) throws StoreException {
    requireWritable();
    TrialFile known = requireTrial(id);
    known.replace(known.trial().withSettlement(settlement));
  }

  /**
   * Saves the points placed in a trial's picture, in place of older ones.
   *
   * @throws StoreException if it can't be written; the old file is then whole
   */
  public synchronized void keep(TrialId id, PlacedPoints places) throws StoreException {
    requireWritable();
    TrialFile known = requireTrial(id);
    known.replace(known.trial().withPlaces(places));
  }

  private void requireWritable() throws StoreException {
    if (lock == null) {
      throw new StoreException("%s is open to look only".formatted(folder));
    }
    if (closed) {
      throw new StoreException("%s is closed".formatted(folder));
    }
  }

  /**
   * Folds the journals into the trials' files and lets others write.
   *
   * @throws StoreException if a journal could not be folded; nothing is lost, and the next opening
   *     reads it
   */
  @Override
  public synchronized void close() throws StoreException {
    if (closed || lock == null) {
      return;
    }
    closed = true;
    StoreException failure = file.isUncertain() ? failure(() -> file.save(session)) : null;
    for (TrialFile trial : trials.values()) {
      StoreException next = failure(trial::foldJournal);
      failure = failure == null ? next : failure;
    }
    try {
      lock.close();
    } catch (IOException e) {
      throw new StoreException("%s: can't be closed: %s".formatted(folder, IoErrors.reason(e)), e);
    }
    if (failure != null) {
      throw failure;
    }
  }

  /**
   * Closes a session without trials and deletes its folder.
   *
   * @throws StoreException if it holds a trial, or can't be deleted
   */
  public synchronized void discard() throws StoreException {
    requireWritable();
    if (!trials.isEmpty()) {
      throw new StoreException("%s: holds trials, so it stays".formatted(folder));
    }
    close();
    Layout.delete(folder, disk);
  }

  private interface Step {
    void go() throws StoreException;
  }

  private static @Nullable StoreException failure(Step step) {
    try {
      step.go();
      return null;
    } catch (StoreException e) {
      return e;
    }
  }
}
