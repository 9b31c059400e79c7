package palmturn.store;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import palmturn.json.SessionJson;
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
  private final Path folder;
  private final ReplaceableFile<Session> file;
  private final Clock clock;
  private final Disk disk;
  private final @Nullable WriterLock lock;
  private TrialFiles trials;
  private Session session;
  private boolean closed;

  private SessionFolder(
      Path folder,
      ReplaceableFile<Session> file,
      Session session,
      TrialFiles trials,
      Clock clock,
      Disk disk,
      @Nullable WriterLock lock) {
    this.folder = folder;
    this.file = file;
    this.session = session;
    this.trials = trials;
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
      TrialFiles none = TrialFiles.load(folder, disk);
      return new SessionFolder(folder, file, session, none, clock, disk, lock);
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
      SessionFolder opened = load(folder, clock, disk, lock);
      opened.trials.foldForeignJournals();
      return opened;
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
    TrialFiles trials = TrialFiles.load(folder, disk);
    return new SessionFolder(folder, sessionFile, session, trials, clock, disk, lock);
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
  public synchronized List<String> notices() {
    return trials.notices();
  }

  /** Refuses a session of which a trial can't be read, as one that comes from a stranger. */
  public synchronized void requireWhole() throws StoreException {
    for (String why : trials.damaged().values()) {
      throw new StoreException(why);
    }
  }

  /** Returns what can be read back of trials whose files are damaged. */
  public synchronized List<Recoverable> recoverable() {
    return trials.recoverable();
  }

  /** Writes what can be read back of a damaged trial; its damaged files are put aside. */
  public synchronized void recover(Recoverable what) throws StoreException {
    requireWritable();
    trials.recover(what);
  }

  /** Returns the trials whose files can't be read, each with the reason in one line. */
  public synchronized Map<TrialId, String> damaged() {
    return Map.copyOf(trials.damaged());
  }

  public synchronized Session session() {
    return session;
  }

  /** Returns all trials in the order of the board: by block, by repeat, left before right. */
  public synchronized List<Trial> trials() {
    return trials.all().stream().map(TrialFile::trial).toList();
  }

  /**
   * Returns a trial.
   *
   * @throws StoreException if the session has no such trial
   */
  public synchronized Trial trial(TrialId id) throws StoreException {
    return trials.require(id).trial();
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
    trials.save(trial);
  }

  /**
   * Saves a reading after an edit; on return it is on the disk.
   *
   * @param sentence what the edit did, as the history shows it
   * @throws ForeignChangeException if another program has changed the trial's files meanwhile:
   *     {@link #keepBeside} saves the reading all the same
   * @throws StoreException if it could not be saved; all that was saved before is still there
   */
  public synchronized void keep(TrialId id, Reading reading, String sentence)
      throws StoreException {
    requireWritable();
    trials.require(id).keep(reading.changedHere(), sentence, clock.instant());
  }

  /**
   * Reads the session again as another program has left it, and puts beside it, as readings of
   * their own, all marks made here that it does not hold.
   *
   * @param unsaved marks that could not be saved
   * @return the reading that holds them now, under another name where theirs is taken
   * @throws StoreException if the session can't be read or written
   */
  public synchronized Reading keepBeside(TrialId id, Reading unsaved, String sentence)
      throws StoreException {
    requireWritable();
    Trial known = trials.require(id).trial();
    reload(trial -> trial.id().equals(id) ? unsaved.reader() : "");
    Reading put = trials.keepBeside(known, unsaved, sentence, clock.instant());
    return put == null ? unsaved : put;
  }

  /** Reads everything again, and keeps beside it what was marked here. */
  private void reload(Function<Trial, String> superseded) throws StoreException {
    Session now = file.read();
    trials = trials.reload(superseded, clock.instant());
    session = now;
  }

  /** Saves an estimate in place of an older one, beside the readings of that moment. */
  public synchronized void keep(TrialId id, Estimate estimate) throws StoreException {
    change(id, trial -> trial.withEstimate(estimate));
  }

  /** Saves a settlement in place of an older one of the same two readings, beside all readings. */
  public synchronized void keep(TrialId id, Settlement settlement) throws StoreException {
    change(id, trial -> trial.withSettlement(settlement));
  }

  /** Saves the points placed in a trial's picture, in place of older ones. */
  public synchronized void keep(TrialId id, PlacedPoints places) throws StoreException {
    change(id, trial -> trial.withPlaces(places));
  }

  private void change(TrialId id, UnaryOperator<Trial> how) throws StoreException {
    requireWritable();
    TrialFile known = trials.require(id);
    known.replace(how.apply(known.trial()));
  }

  private void requireWritable() throws StoreException {
    if (lock == null) {
      throw new StoreException("%s is open read-only".formatted(folder));
    }
    if (closed) {
      throw new StoreException("%s is closed".formatted(folder));
    }
    lock.renew(disk);
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
    // Whoever has locked the folder meanwhile has read all that was saved here.
    StoreException failure = failure(() -> lock.renew(disk));
    failure = failure == null ? failure(this::fold) : failure;
    if (failure instanceof ForeignChangeException) {
      StoreException lost = failure(() -> reload(trial -> ""));
      failure = lost == null ? failure(this::foldAfterReload) : lost;
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
   * Closes a session that was made just now and deletes its folder.
   *
   * @param trialsToo whether it may hold trials
   * @throws StoreException if it holds a trial that must not go, or can't be deleted
   */
  public synchronized void discard(boolean trialsToo) throws StoreException {
    requireWritable();
    if (!trialsToo && !(trials.all().isEmpty() && trials.damaged().isEmpty())) {
      throw new StoreException("%s: holds trials, so it stays".formatted(folder));
    }
    // What can't be folded, as on a full disk, is deleted all the same.
    failure(this::close);
    Layout.delete(folder, disk);
  }

  private void fold() throws StoreException {
    if (file.isUncertain()) {
      file.save(session);
    }
    trials.fold();
  }

  private void foldAfterReload() throws StoreException {
    fold();
    throw new StoreException(
        "%s: another program has changed it; what was marked here meanwhile is kept beside that"
            .formatted(folder));
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
