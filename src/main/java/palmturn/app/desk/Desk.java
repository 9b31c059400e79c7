package palmturn.app.desk;

import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Executor;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleObjectProperty;
import org.jspecify.annotations.Nullable;
import palmturn.app.board.Board;
import palmturn.app.board.Cell;
import palmturn.app.estimate.EstimateRun;
import palmturn.app.keys.KeyBindings;
import palmturn.app.marking.Marking;
import palmturn.app.stage.Stage;
import palmturn.app.strip.Strip;
import palmturn.app.tally.Tally;
import palmturn.app.tasks.Tasks;
import palmturn.clip.Sound;
import palmturn.store.SessionFolder;
import palmturn.trial.Reading;
import palmturn.trial.Session;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;

/** What is open, and what follows from it: the models of all panes and the lines in the header. */
public final class Desk implements AutoCloseable {
  private final Path settings;
  private final Tasks background;
  private final Board board = new Board();
  private final Stage stage;
  private final Marking marking;
  private final Strip strip;
  private final TrialOpener opening;
  private final Estimation estimation;
  private final Notices trouble = new Notices();
  private final Saving saving;
  private final PlacesEditor places;
  private final Tally tally = new Tally();
  private final ScoredTrials trials = new ScoredTrials();
  private final FastMarking fast;
  private final KeyBindings keys = new KeyBindings();
  private final Review reviewing;
  private final Pairing pairing;
  private final Messages messages;
  private final SideEdits steps;
  private final OpenReading reading;

  private final ReadOnlyObjectWrapper<@Nullable SessionFolder> folder =
      new ReadOnlyObjectWrapper<>();
  private final ReadOnlyBooleanWrapper readOnly = new ReadOnlyBooleanWrapper(false);
  private final ReadOnlyStringWrapper heading = new ReadOnlyStringWrapper("");
  private final ObjectProperty<@Nullable Question> question = new SimpleObjectProperty<>();
  private final Readers readers = new Readers();
  private final PendingSession arrival;

  /**
   * Starts with nothing open.
   *
   * @param settings the folder of the user's settings, with drills and limits of their own
   * @param background runs what is slow
   * @param keeping runs what writes marks, in order
   * @param screen hands work to the screen's thread
   * @param clock tells the time of saving
   * @param estimating makes estimates
   */
  public Desk(
      Path settings,
      Tasks background,
      Tasks keeping,
      Executor screen,
      Clock clock,
      EstimateRun estimating) {
    this.settings = settings;
    this.background = background;
    marking = new Marking(clock);
    saving = new Saving(keeping, clock, trouble);
    stage = new Stage(screen);
    estimation = new Estimation(this, estimating, marking, stage);
    strip = new Strip(stage, marking, estimation.found());
    opening = new TrialOpener(background, stage, strip);
    steps = new SideEdits(marking.readingProperty()::get);
    places = new PlacesEditor(this, trials, saving);
    fast = new FastMarking(this);
    reviewing = new Review(this, background, screen, clock, opening, readers, saving);
    reading = new OpenReading(this, readers, opening, saving);
    arrival =
        new PendingSession(
            question, readers, this::opened, unwanted -> saving.close(unwanted.folder()));
    messages = new Messages(this, saving, background, screen, clock);
    pairing = new Pairing(this, background, screen, trials, readers, opening);
    board.chosenProperty().addListener((chosen, before, now) -> chosen(now));
    stage.frameProperty().addListener((frame, before, now) -> marking.chooseSlapOn(now.intValue()));
  }

  /** Returns the folder of the user's settings, which need not be there. */
  public Path settings() {
    return settings;
  }

  public Board board() {
    return board;
  }

  public Stage stage() {
    return stage;
  }

  public Marking marking() {
    return marking;
  }

  public Strip strip() {
    return strip;
  }

  public Tally tally() {
    return tally;
  }

  /** Typing along, and going through the marks one by one. */
  public FastMarking fast() {
    return fast;
  }

  /** Brings what is edited to the disk. */
  public Saving saving() {
    return saving;
  }

  /** Going through where two readings of the open trial differ. */
  public Review reviewing() {
    return reviewing;
  }

  /** Which key stands for what. */
  public KeyBindings keys() {
    return keys;
  }

  /** The open trial and another one at the same moment. */
  public Pairing pairing() {
    return pairing;
  }

  /** Returns the open trial with its marks, null when none is. */
  @Nullable Trial openTrial() {
    return trials.get(trialProperty().get());
  }

  /** What is done with the estimate of the open trial. */
  public Estimation estimation() {
    return estimation;
  }

  /** What is pointed at in the picture of the open trial. */
  public PlacesEditor places() {
    return places;
  }

  /** What athlete and coach say to each other. */
  public Messages messages() {
    return messages;
  }

  /** What was done beside the marks, to be taken back in its turn. */
  public SideEdits steps() {
    return steps;
  }

  /** Returns how far an elbow may go from its place, cm. */
  public double elbowLimitCm() {
    return trials.limits().elbowCm().value();
  }

  /** The open session; null when none is. */
  public ReadOnlyObjectProperty<@Nullable SessionFolder> folderProperty() {
    return folder.getReadOnlyProperty();
  }

  /** The trial on the stage; null when none is. */
  public ReadOnlyObjectProperty<@Nullable TrialId> trialProperty() {
    return opening.trialProperty();
  }

  /** The sound of that trial's clip; null until it is read, or where there is none. */
  public ReadOnlyObjectProperty<@Nullable Sound> soundProperty() {
    return opening.soundProperty();
  }

  /** Whether marks can't be made, because another window writes this session. */
  public ReadOnlyBooleanProperty readOnlyProperty() {
    return readOnly.getReadOnlyProperty();
  }

  /** Whose session, of which day. */
  public ReadOnlyStringProperty headingProperty() {
    return heading.getReadOnlyProperty();
  }

  /** Whose reading, and whether it is finished. */
  public ReadOnlyStringProperty readerProperty() {
    return reading.wordsProperty();
  }

  /** When the marks came to the disk; empty while they are not there. */
  public ReadOnlyStringProperty savedProperty() {
    return saving.wordsProperty();
  }

  /** What went wrong last, in one line; empty when nothing did. */
  public ReadOnlyStringProperty troubleProperty() {
    return trouble.wordsProperty();
  }

  /** What the person is asked just now; null when nothing is. */
  public ObjectProperty<@Nullable Question> questionProperty() {
    return question;
  }

  /** Opens a session; one that another window writes is opened to look only, and says so. */
  public void open(Path path) {
    background.run(() -> LoadedSession.load(settings, path), arrival::receive, this::failed);
  }

  /** The session that waits for who reads it. */
  public PendingSession arrival() {
    return arrival;
  }

  /** Returns who reads, initials; null while nobody said so. */
  public @Nullable String reader() {
    return readers.initials();
  }

  /** Shows a session that has grown, and goes to one of its places. */
  public void take(SessionFolder grown, TrialId place, String problem) {
    opened(new LoadedSession(grown, trials.limits(), ""));
    board.choose(place);
    fail(problem);
  }

  /** Shows a question or a sheet. */
  public void ask(@Nullable Question what) {
    question.set(what);
  }

  /** Takes the line about what went wrong away. */
  public void forgetTrouble() {
    trouble.forget();
  }

  /** Does something to the marks once it is known who marks, and that marking is allowed. */
  public void mark(Runnable edit) {
    TrialId id = trialProperty().get();
    if (id == null || lookOnly()) {
      return;
    }
    reading.mark(id, edit);
  }

  /** Returns whether nothing may be written here, and says so. */
  public boolean lookOnly() {
    if (readOnly.get()) {
      fail("this session is open to look only: close the other window that marks it");
    }
    return readOnly.get();
  }

  /** Returns whether the marks that are shown are those of the person in front of them. */
  boolean ownMarks() {
    return !readOnly.get() && reading.own();
  }

  /** Returns whether the open trial is to be read without the help of what others found. */
  public boolean readsBlind() {
    Trial now = openTrial();
    return now != null && readsBlind(now);
  }

  /** Returns whether a trial is to be read without the help of what others found. */
  boolean readsBlind(Trial trial) {
    return readers.readsBlind(trial);
  }

  /** Returns whether a trial of the session is still to be read blind by who reads. */
  public boolean hasToReadBlind() {
    return trials.all().stream()
        .filter(readers::readsBlind)
        .map(readers::shown)
        .anyMatch(own -> own == null || !own.finished());
  }

  /** Says who is marking. */
  public void setReader(String initials) {
    readers.setInitials(initials.strip());
    TrialId id = trialProperty().get();
    Trial now = trials.get(id);
    if (now != null) {
      estimation.found().setHidden(readers.readsBlind(now));
      reviewing.offer(now);
      messages.onStrip();
    }
  }

  /** Returns the open session's trials as they are by now. */
  ScoredTrials trials() {
    return trials;
  }

  /** Lets go of the session after its last mark is on disk. */
  @Override
  public void close() {
    arrival.discard();
    closeTrial();
    readers.clear();
    estimation.run().stop();
    SessionFolder old = folder.get();
    folder.set(null);
    board.setTrials(List.of(), List.of());
    if (old != null) {
      saving.close(old);
    }
  }

  private void opened(LoadedSession opened) {
    if (folder.get() != opened.folder()) {
      close();
    } else {
      closeTrial();
    }
    SessionFolder now = opened.folder();
    readOnly.set(!opened.whyReadOnly().isEmpty());
    Session session = now.session();
    trials.open(session, now.trials(), opened.limits());
    heading.set(ScoredTrials.heading(session));
    saving.forget();
    fail(opened.whyReadOnly());
    folder.set(now);
    List<Cell> cells = new ArrayList<>();
    trials.all().forEach(each -> cells.add(trials.cell(each, readers.shown(each))));
    TrialId before = board.chosenProperty().get();
    board.setTrials(session.blocks(), cells);
    if (before != null && before.equals(board.chosenProperty().get())) {
      chosen(before);
    }
  }

  private void chosen(@Nullable TrialId id) {
    closeTrial();
    Trial now = trials.get(id);
    SessionFolder from = folder.get();
    if (now == null || from == null) {
      return;
    }
    opening.open(now, from, came -> show(came, from), this::failed);
  }

  private void show(OpenClip came, SessionFolder from) {
    Trial now = Objects.requireNonNull(trials.get(came.id()));
    estimation.show(now.estimate(), readers.readsBlind(now));
    places.show(now);
    reading.show(now);
    strip.open(now.timeScale(), from.session().windowS());
  }

  private void closeTrial() {
    pairing.close();
    opening.close();
    reading.close();
    estimation.show(null, false);
    places.show(null);
    steps.clear();
    reviewing.offer(null);
  }

  /** Brings what follows from the marks up to them. */
  void marked(@Nullable Reading marks) {
    reading.marked(marks);
  }

  void failed(Exception problem) {
    trouble.say(problem);
  }

  /** Says what went wrong, in one line; empty takes the line away. */
  public void fail(String words) {
    trouble.say(words);
  }
}
