package palmturn.app.desk;

import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import org.jspecify.annotations.Nullable;
import palmturn.app.board.Board;
import palmturn.app.stage.Stage;
import palmturn.app.strip.Strip;
import palmturn.clip.FrameTable;
import palmturn.edit.History;
import palmturn.settings.SeenMessages;
import palmturn.store.SessionFolder;
import palmturn.trial.Extra;
import palmturn.trial.Message;
import palmturn.trial.Trial;
import palmturn.trial.TrialId;
import palmturn.work.session.Notes;

/** The messages between athlete and coach in the open session. */
public final class Messages {
  private final Threads threads;
  private final Clock clock;
  private final OpenSession session;
  private final Stage stage;
  private final Strip strip;
  private final Board board;
  private final SideEdits sideEdits;
  private final Prompts prompts;
  private SeenMessages seen = SeenMessages.inMemory();
  private History<List<Message>> history = History.of(List.of());
  private final ReadOnlyObjectWrapper<List<Message>> all = new ReadOnlyObjectWrapper<>(List.of());
  private final ReadOnlyObjectWrapper<@Nullable Message> chosen = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyIntegerWrapper unseen = new ReadOnlyIntegerWrapper(0);
  private final ObjectProperty<String> from = new SimpleObjectProperty<>(Message.COACH);
  private final ObjectProperty<Moment> about = new SimpleObjectProperty<>(Moment.NONE);
  private Set<Message> fresh = Set.of();
  private @Nullable Message goal;

  /**
   * The subject of a message.
   *
   * @param trial null for the whole session
   * @param timeS media seconds in its clip; null for the whole trial
   */
  public record Moment(@Nullable TrialId trial, @Nullable Double timeS) {
    /** The whole session. */
    public static final Moment NONE = new Moment(null, null);

    /** Returns the subject of a message. */
    public static Moment of(Message message) {
      return new Moment(message.trial(), message.timeS());
    }
  }

  Messages(
      Threads threads,
      Clock clock,
      OpenSession session,
      Stage stage,
      Strip strip,
      Board board,
      SideEdits sideEdits,
      Prompts prompts) {
    this.threads = threads;
    this.clock = clock;
    this.session = session;
    this.stage = stage;
    this.strip = strip;
    this.board = board;
    this.sideEdits = sideEdits;
    this.prompts = prompts;
    session.folderProperty().addListener((folder, before, now) -> opened(before, now));
    session.trialIdProperty().addListener((trial, before, now) -> onStrip());
    session.readers().initialsProperty().addListener(changed -> onStrip());
    stage.framesProperty().addListener((frames, before, now) -> arrive(now));
  }

  /** Sets the memory of messages that were seen. */
  public void setSeen(SeenMessages kept) {
    seen = kept;
  }

  /** Returns whether one is dated in the future. */
  public boolean isAhead(Message message) {
    return message.isAhead(clock.instant());
  }

  /** The time zone in which times are shown. */
  public ZoneId zone() {
    return clock.getZone();
  }

  /** All messages, oldest first. */
  public ReadOnlyObjectProperty<List<Message>> allProperty() {
    return all.getReadOnlyProperty();
  }

  /** The number of messages that have not been seen on this computer. */
  public ReadOnlyIntegerProperty unseenProperty() {
    return unseen.getReadOnlyProperty();
  }

  /** The message that is chosen on the list; null when none is. */
  public ReadOnlyObjectProperty<@Nullable Message> chosenProperty() {
    return chosen.getReadOnlyProperty();
  }

  /** The writer: the reader's initials, or athlete or coach. */
  public ObjectProperty<String> fromProperty() {
    return from;
  }

  /** The subject of the next message: {@link #here}, or the whole session. */
  public ObjectProperty<Moment> aboutProperty() {
    return about;
  }

  /** Returns those who may write here. */
  public List<String> writers() {
    String reader = session.reader();
    return reader == null
        ? List.of(Message.ATHLETE, Message.COACH)
        : List.of(reader, Message.ATHLETE, Message.COACH);
  }

  /** Returns the trial and the moment on the stage; the whole session where none is. */
  public Moment here() {
    boolean filmed = stage.framesProperty().get() != null;
    return filmed ? new Moment(session.trialId(), stage.timeS()) : Moment.NONE;
  }

  /** Returns whether one had not been seen when the list was last brought into sight. */
  public boolean fresh(Message message) {
    return fresh.contains(message);
  }

  /**
   * Returns whether one is kept out of sight: it is about a trial that the one in front of it is to
   * read without the help of what others found.
   */
  public boolean hidden(Message message) {
    Trial trial = session.trials().get(message.trial());
    return trial != null
        && !message.from().equals(session.reader())
        && session.readers().readsBlind(trial);
  }

  /** Shows the messages; with that all of them are seen. */
  public void show() {
    SessionFolder open = session.folder();
    if (open == null) {
      return;
    }
    stage.stop();
    fresh =
        all.get().stream()
            .filter(each -> seen.countUnseen(open.folder(), List.of(each)) > 0)
            .collect(Collectors.toUnmodifiableSet());
    see(open);
    chosen.set(null);
    if (session.readOnly()) {
      move(0);
    }
    about.set(here());
    if (!writers().contains(from.get()) || session.reader() != null) {
      from.set(writers().get(0));
    }
    if (history.changed()) {
      save(open);
    }
    prompts.questions().ask(Question.Page.MESSAGES);
  }

  /** Chooses the one so many further down the list, or up where negative; at first the last. */
  public void move(int by) {
    List<Message> list = all.get();
    if (!list.isEmpty()) {
      Message now = chosen.get();
      int at = now == null ? -1 : list.indexOf(now);
      int to = at < 0 ? list.size() - 1 : Math.max(0, Math.min(list.size() - 1, at + by));
      chosen.set(list.get(to));
    }
  }

  /** Writes a message about the chosen moment. */
  public void write(String text) {
    if (text.isBlank() || session.folder() == null || session.refusesEdits()) {
      return;
    }
    Moment moment = about.get();
    Message said =
        new Message(
            from.get(), clock.instant(), moment.trial(), moment.timeS(), text.strip(), Extra.NONE);
    String sentence =
        moment.timeS() == null
            ? "message written"
            : String.format(Locale.ROOT, "message at %.3f s", moment.timeS());
    put(said, sentence);
    // By its identity: one about another trial may have been written since.
    sideEdits.record(
        () -> remove(said, "Undone: " + sentence), () -> put(said, "Done again: " + sentence));
  }

  private void put(Message said, String sentence) {
    take(history.then(Notes.with(history.now(), said), sentence), sentence);
  }

  private void remove(Message said, String sentence) {
    List<Message> others = history.now().stream().filter(each -> !each.equals(said)).toList();
    take(history.then(others, sentence), sentence);
  }

  private void take(History<List<Message>> next, String sentence) {
    SessionFolder open = session.folder();
    history = next;
    all.set(next.now());
    onStrip();
    sideEdits.announce(sentence);
    if (open != null) {
      see(open);
      save(open);
    }
  }

  private void save(SessionFolder to) {
    session
        .saving()
        .keep(
            to,
            history.now(),
            saved -> {
              if (session.folder() == to) {
                history = history.withSaved(saved);
              }
            });
  }

  private void see(SessionFolder open) {
    List<Message> now = all.get();
    unseen.set(0);
    threads
        .background()
        .run(
            () -> {
              seen.markSeen(open.folder(), now);
              return now;
            },
            done -> {},
            prompts.notices()::fail);
  }

  /** Goes to the trial and the frame that a message is about. */
  public void go(Message to) {
    prompts.questions().close();
    TrialId trial = to.trial();
    if (trial == null) {
      return;
    }
    goal = to;
    if (trial.equals(session.trialId())) {
      arrive(stage.framesProperty().get());
    } else if (session.trials().get(trial) != null) {
      board.choose(trial);
    } else {
      goal = null;
      prompts.notices().warn(trial.name() + " is not in this session");
    }
  }

  private void arrive(@Nullable FrameTable frames) {
    Message to = goal;
    if (to == null || frames == null) {
      return;
    }
    goal = null;
    Double timeS = to.timeS();
    if (timeS != null && Objects.equals(to.trial(), session.trialId()) && !hidden(to)) {
      // The stage asks for its first picture after it has told of its frames.
      threads
          .screen()
          .execute(
              () -> {
                if (stage.framesProperty().get() == frames) {
                  stage.seek(frames.nearest(timeS));
                }
              });
    }
  }

  /** Marks on the strip the moments that messages about the trial on the stage name. */
  void onStrip() {
    TrialId trial = session.trialId();
    strip.setMessageTimes(
        all.get().stream()
            .filter(each -> trial != null && trial.equals(each.trial()) && !hidden(each))
            .map(Message::timeS)
            .filter(Objects::nonNull)
            .toList());
  }

  private void opened(@Nullable SessionFolder before, @Nullable SessionFolder now) {
    if (before != null && history.changed()) {
      save(before);
    }
    List<Message> there = now == null ? List.of() : now.session().messages();
    history = History.of(there);
    goal = null;
    fresh = Set.of();
    chosen.set(null);
    unseen.set(now == null ? 0 : seen.countUnseen(now.folder(), there));
    all.set(there);
    onStrip();
  }
}
