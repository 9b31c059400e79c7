package palmturn.app.desk;

import java.time.Clock;
import java.time.format.DateTimeFormatter;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.app.tasks.Tasks;
import palmturn.store.ForeignChangeException;
import palmturn.store.SessionFolder;
import palmturn.store.StoreException;
import palmturn.trial.Message;
import palmturn.trial.PlacedPoints;
import palmturn.trial.Reading;
import palmturn.trial.Session;
import palmturn.trial.Settlement;
import palmturn.trial.TrialId;
import palmturn.work.session.Notes;

/** Writes each edit to the disk in order, and says when it is there. */
public final class Saving {
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);
  private static final String NOT_SAVED = "Not saved, the marks are still here: ";

  private final Tasks keeping;
  private final Clock clock;
  private final Notices notices;
  private final ReadOnlyStringWrapper words = new ReadOnlyStringWrapper("");
  private final ReadOnlyObjectWrapper<@Nullable UnsavedMarks> unsaved =
      new ReadOnlyObjectWrapper<>();

  /** The latest marks of each trial that are not on the disk, tried once more on closing. */
  private final Map<TrialId, UnsavedMarks> left = new HashMap<>();

  Saving(Tasks keeping, Clock clock, Notices notices) {
    this.keeping = keeping;
    this.clock = clock;
    this.notices = notices;
  }

  /** The time at which the last edit came to the disk; empty while one is on its way. */
  public ReadOnlyStringProperty wordsProperty() {
    return words.getReadOnlyProperty();
  }

  /** The marks that another program's change keeps from being saved; null where all are. */
  ReadOnlyObjectProperty<@Nullable UnsavedMarks> unsavedProperty() {
    return unsaved.getReadOnlyProperty();
  }

  void forget() {
    words.set("");
  }

  /**
   * Writes a reading.
   *
   * @param shown returns the marks that are shown by the time these are on the disk
   */
  void keep(
      SessionFolder to,
      TrialId id,
      Reading marks,
      String sentence,
      Supplier<@Nullable Reading> shown) {
    words.set("");
    keeping.run(
        () -> {
          to.keep(id, marks, sentence);
          return marks;
        },
        kept -> {
          left.remove(id);
          if (kept.equals(shown.get())) {
            saved();
            if (notices.text().startsWith(NOT_SAVED)) {
              notices.clear();
            }
          }
        },
        problem -> {
          notices.fail(NOT_SAVED + Notices.message(problem));
          left.put(id, new UnsavedMarks(to, id, marks));
          if (problem instanceof ForeignChangeException) {
            unsaved.set(left.get(id));
          }
        });
  }

  /**
   * Writes unsaved marks as a reading beside what another program has put there.
   *
   * @param done gets the reading once it is on the disk
   */
  void keepBeside(UnsavedMarks which, Consumer<Reading> done) {
    keeping.run(
        which::saveBeside,
        kept -> {
          left.remove(which.trial());
          unsaved.set(null);
          notices.clear();
          done.accept(kept);
        },
        problem -> notices.fail(NOT_SAVED + Notices.message(problem)));
  }

  /** Writes the places that were set in a trial's picture. */
  void keep(SessionFolder to, TrialId id, PlacedPoints places) {
    write(() -> to.keep(id, places), () -> {}, failing("places are"));
  }

  /** Writes the decisions between two readings. */
  void keep(SessionFolder to, TrialId id, Settlement settlement) {
    write(() -> to.keep(id, settlement), () -> {}, failing("decisions are"));
  }

  /**
   * Writes all messages between athlete and coach.
   *
   * @param done gets it once it is on the disk
   */
  void keep(SessionFolder to, List<Message> messages, Consumer<List<Message>> done) {
    write(() -> Notes.messages(to, messages), () -> done.accept(messages), failing("message is"));
  }

  /**
   * Writes the facts about the athlete.
   *
   * @param done runs once it is on the disk
   * @param failed gets the reason in one line if it is not
   */
  public void keep(SessionFolder to, Session.Facts facts, Runnable done, Consumer<String> failed) {
    write(() -> Notes.facts(to, facts), done, problem -> failed.accept(Notices.message(problem)));
  }

  /** A step that writes to the disk. */
  private interface Write {
    void run() throws Exception;
  }

  private void write(Write step, Runnable done, Consumer<Exception> failed) {
    words.set("");
    keeping.run(
        () -> {
          step.run();
          return true;
        },
        kept -> {
          done.run();
          saved();
        },
        failed);
  }

  private Consumer<Exception> failing(String what) {
    return problem ->
        notices.fail("Not saved, the %s still here: %s".formatted(what, Notices.message(problem)));
  }

  private void saved() {
    words.set("Saved " + TIME.format(clock.instant().atZone(clock.getZone())));
  }

  /** Lets go of a session after its last mark is on the disk, those that were not saved too. */
  void close(SessionFolder old) {
    List<UnsavedMarks> last = left.values().stream().filter(each -> each.folder() == old).toList();
    left.clear();
    unsaved.set(null);
    keeping.run(
        () -> {
          Exception failure = null;
          for (UnsavedMarks each : last) {
            try {
              each.save();
            } catch (StoreException e) {
              failure = e;
            }
          }
          old.close();
          if (failure != null) {
            throw failure;
          }
          return true;
        },
        done -> {},
        notices::fail);
  }
}
