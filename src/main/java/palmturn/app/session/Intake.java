package palmturn.app.session;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Executor;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import org.jspecify.annotations.Nullable;
import palmturn.app.tasks.RunningTask;
import palmturn.app.tasks.Tasks;
import palmturn.store.SessionFolder;
import palmturn.trial.Hand;
import palmturn.trial.Mirrored;
import palmturn.trial.Session;
import palmturn.trial.TrialId;
import palmturn.trial.UserError;
import palmturn.work.session.ClipSummary;

/**
 * Clips on their way into a session: each is inspected in the background, a long one is cut into
 * its stretches of slapping, and hands and repeats follow the protocol's order from the first hand.
 */
public final class Intake {
  private final Tasks tasks;
  private final Executor screen;
  private final ClipProbe probe;

  private final ReadOnlyObjectWrapper<List<TrialCandidate>> candidates =
      new ReadOnlyObjectWrapper<>(List.of());
  private final ReadOnlyObjectWrapper<Map<Path, ClipSummary>> looks =
      new ReadOnlyObjectWrapper<>(Map.of());
  private final ReadOnlyObjectWrapper<Map<Path, String>> troubles =
      new ReadOnlyObjectWrapper<>(Map.of());
  private final ReadOnlyObjectWrapper<@Nullable RunningTask> running =
      new ReadOnlyObjectWrapper<>();
  private final ReadOnlyStringWrapper obstacle = new ReadOnlyStringWrapper("");
  private final ObjectProperty<@Nullable Hand> first = new SimpleObjectProperty<>();
  private final ObjectProperty<Mirrored> mirrored = new SimpleObjectProperty<>(Mirrored.UNKNOWN);
  private final StringProperty athlete = new SimpleStringProperty("");
  private final StringProperty date = new SimpleStringProperty("");
  private final StringProperty pace = new SimpleStringProperty("");
  private final ObjectProperty<@Nullable Hand> racket = new SimpleObjectProperty<>();
  private @Nullable Target target;

  /**
   * The place that the clips go to.
   *
   * @param session null for a new one
   * @param block the block that they belong to
   * @param start the place of the first, where it was dropped on one
   * @param guess the hand that would be first by the protocol
   * @param there trials that are there already
   */
  public record Target(
      @Nullable SessionFolder session,
      String block,
      @Nullable TrialId start,
      Hand guess,
      Set<TrialId> there) {}

  /**
   * Starts with no clips.
   *
   * @param tasks runs what is slow
   * @param screen hands progress to the screen's thread
   */
  public Intake(Tasks tasks, Executor screen, ClipProbe eyes) {
    this.tasks = tasks;
    this.screen = screen;
    this.probe = eyes;
  }

  /** The candidates in the order of filming. */
  public ReadOnlyObjectProperty<List<TrialCandidate>> candidatesProperty() {
    return candidates.getReadOnlyProperty();
  }

  /** The facts and stills of each clip so far. */
  public ReadOnlyObjectProperty<Map<Path, ClipSummary>> looksProperty() {
    return looks.getReadOnlyProperty();
  }

  /** The problem of a clip, a sentence. */
  public ReadOnlyObjectProperty<Map<Path, String>> troublesProperty() {
    return troubles.getReadOnlyProperty();
  }

  /** The task that is running; null when none is. */
  public ReadOnlyObjectProperty<@Nullable RunningTask> runningProperty() {
    return running.getReadOnlyProperty();
  }

  /** The obstacle to adding, a sentence; empty where there is none. */
  public ReadOnlyStringProperty obstacleProperty() {
    return obstacle.getReadOnlyProperty();
  }

  /** The moving hand of the first candidate, the athlete's own; null until it is chosen. */
  public ObjectProperty<@Nullable Hand> firstHandProperty() {
    return first;
  }

  /** The mirroring: writing in the picture is back to front, or not. */
  public ObjectProperty<Mirrored> mirroredProperty() {
    return mirrored;
  }

  /** The click track they were filmed to, slaps a second; empty for none. */
  public StringProperty paceProperty() {
    return pace;
  }

  /** The athlete's code. */
  public StringProperty athleteProperty() {
    return athlete;
  }

  /** The day of filming, as 2026-11-14. */
  public StringProperty dateProperty() {
    return date;
  }

  /** The hand that holds the racket; null where it is unknown. */
  public ObjectProperty<@Nullable Hand> racketHandProperty() {
    return racket;
  }

  /** Returns whether a session is to be made for the clips. */
  public boolean newSession() {
    return target != null && target.session() == null;
  }

  /** Returns the hand that would be first by the protocol. */
  public Hand guess() {
    return target == null ? Hand.RIGHT : target.guess();
  }

  /**
   * Takes clips and begins to inspect them.
   *
   * @param today the day to suggest
   */
  public void begin(List<Path> clips, Target where, LocalDate today) {
    giveUp();
    target = where;
    candidates.set(clips.stream().map(TrialCandidate::whole).toList());
    looks.set(Map.of());
    troubles.set(Map.of());
    obstacle.set("");
    first.set(where.start() == null ? null : where.start().hand());
    mirrored.set(Mirrored.UNKNOWN);
    athlete.set("");
    date.set(today.toString());
    pace.set("");
    racket.set(null);
    inspect(clips, 0);
  }

  /** Stops the running task; a clip that is being cut stays one trial. */
  public void stop() {
    RunningTask now = running.get();
    if (now != null) {
      now.stop();
    }
  }

  /** Ends everything; the clips are not asked about any more. */
  public void giveUp() {
    stop();
    running.set(null);
  }

  /** Includes a candidate or leaves it out. */
  public void include(int index, boolean taken) {
    change(index, candidates.get().get(index).withIncluded(taken));
  }

  /** Sets the moving hand of a candidate; those after it alternate from there. */
  public void setHand(int index, Hand hand) {
    change(index, candidates.get().get(index).withHand(hand));
  }

  private void change(int index, TrialCandidate changed) {
    List<TrialCandidate> all = new ArrayList<>(candidates.get());
    all.set(index, changed);
    candidates.set(List.copyOf(all));
  }

  /** Returns the trial that each candidate becomes; null where it is left out. */
  public List<@Nullable TrialId> places() {
    if (target == null) {
      return List.of();
    }
    Hand hand = first.get() == null ? guess() : first.get();
    return TrialAssignment.places(
        candidates.get(), hand, target.block(), target.start(), target.there());
  }

  /**
   * Adds the candidates, or shows the obstacle.
   *
   * @param done gets the session and the last trial, and the reason if not all were added
   */
  public void add(Receiver done) {
    Target where = target;
    ClipAdder.NewSession start = where != null && where.session() == null ? start() : null;
    List<ClipAdder.Wanted> wanted = wanted();
    if (where == null || where.session() == null && start == null) {
      return;
    }
    if (running.get() != null) {
      obstacle.set("The clips are still being looked at: wait, or stop it.");
    } else if (wanted.isEmpty()) {
      obstacle.set("No attempt is left to add.");
    } else if (first.get() == null) {
      obstacle.set("Say which hand moves in the first attempt.");
    } else {
      ClipAdder.FilmingDetails how;
      try {
        how = ClipAdder.FilmingDetails.of(mirrored.get(), pace.get());
      } catch (UserError e) {
        obstacle.set(line(e));
        return;
      }
      obstacle.set("");
      RunningTask run = new RunningTask(screen::execute, "Adding");
      running.set(run);
      tasks.run(
          () -> ClipAdder.add(where.session(), start, wanted, how, done, run),
          added -> {
            ended(run);
            done.added(added.folder(), added.last(), added.problem());
          },
          problem -> {
            ended(run);
            obstacle.set(line(problem));
          });
    }
  }

  /** The receiver of what was added. */
  @FunctionalInterface
  public interface Receiver extends ClipAdder.AdditionLog {
    void added(SessionFolder folder, TrialId last, String problem);

    @Override
    default void begun(Path folder, List<String> trials) {}

    @Override
    default void ended() {}
  }

  private ClipAdder.@Nullable NewSession start() {
    if (athlete.get().isBlank()) {
      obstacle.set("The athlete's code is still missing.");
      return null;
    }
    try {
      LocalDate day = LocalDate.parse(date.get().strip());
      Session.Facts facts =
          new Session.Facts(racket.get(), null, null, null, null, null, null, null);
      return new ClipAdder.NewSession(athlete.get(), day, facts);
    } catch (DateTimeParseException e) {
      obstacle.set("Write the day of filming as 2026-11-14.");
      return null;
    }
  }

  private List<ClipAdder.Wanted> wanted() {
    List<ClipAdder.Wanted> wanted = new ArrayList<>();
    List<@Nullable TrialId> places = places();
    for (int i = 0; i < places.size(); i++) {
      TrialId place = places.get(i);
      if (place != null) {
        wanted.add(new ClipAdder.Wanted(candidates.get().get(i), place));
      }
    }
    return wanted;
  }

  private void inspect(List<Path> clips, int index) {
    if (index == clips.size()) {
      return;
    }
    Path clip = clips.get(index);
    RunningTask run = new RunningTask(screen::execute, "Looking at " + clip.getFileName());
    running.set(run);
    tasks.run(
        () -> probe.inspect(clip, null, null),
        seen -> {
          if (running.get() != run) {
            return;
          }
          looks.set(with(looks.get(), clip, seen));
          if (ClipCutter.mayHoldSeveral(seen.facts().durationS()) && !run.stopped()) {
            cut(clip, seen, () -> next(clips, index));
          } else {
            next(clips, index);
          }
        },
        problem -> {
          if (running.get() == run) {
            refuse(clip, line(problem));
            next(clips, index);
          }
        });
  }

  private void next(List<Path> clips, int index) {
    running.set(null);
    inspect(clips, index + 1);
  }

  private void cut(Path clip, ClipSummary seen, Runnable then) {
    RunningTask run =
        new RunningTask(screen::execute, "Looking for attempts in " + clip.getFileName());
    running.set(run);
    tasks.run(
        () -> ClipCutter.cut(clip, seen, probe, run),
        cut -> {
          if (running.get() == run) {
            looks.set(with(looks.get(), clip, cut.look()));
            replace(clip, cut.attempts());
            if (cut.nothingFound()) {
              note(clip, "No attempts were found in it; it stays one trial.");
            }
            then.run();
          }
        },
        problem -> {
          if (running.get() == run) {
            note(
                clip,
                run.stopped()
                    ? "Not looked for attempts; it stays one trial."
                    : line(problem) + "; it stays one trial.");
            then.run();
          }
        });
  }

  private void refuse(Path clip, String why) {
    note(clip, why);
    List<TrialCandidate> all = new ArrayList<>(candidates.get());
    all.replaceAll(each -> each.clip().equals(clip) ? each.withIncluded(false) : each);
    candidates.set(List.copyOf(all));
  }

  private void note(Path clip, String words) {
    troubles.set(with(troubles.get(), clip, words));
  }

  private void replace(Path clip, List<TrialCandidate> by) {
    List<TrialCandidate> all = new ArrayList<>();
    for (TrialCandidate each : candidates.get()) {
      if (each.clip().equals(clip)) {
        all.addAll(by);
      } else {
        all.add(each);
      }
    }
    candidates.set(List.copyOf(all));
  }

  private void ended(RunningTask run) {
    if (running.get() == run) {
      running.set(null);
    }
  }

  private static <T> Map<Path, T> with(Map<Path, T> there, Path key, T value) {
    Map<Path, T> more = new HashMap<>(there);
    more.put(key, value);
    return Map.copyOf(more);
  }

  private static String line(Exception problem) {
    String message = problem.getMessage();
    return problem instanceof UserError && message != null
        ? message
        : "something in the program went wrong: " + problem.getClass().getSimpleName();
  }
}
