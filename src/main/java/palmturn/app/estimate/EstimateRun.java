package palmturn.app.estimate;

import java.util.Locale;
import java.util.concurrent.Executor;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.app.tasks.Tasks;
import palmturn.store.SessionFolder;
import palmturn.trial.Estimate;
import palmturn.trial.TrialId;
import palmturn.work.Progress;

/** The making of an estimate beside everything else: one at a time, and it can be stopped. */
public final class EstimateRun {
  private static final double SHOWN_STEP = 0.01;

  private final Tasks tasks;
  private final Executor screen;
  private final Maker maker;
  private final ReadOnlyObjectWrapper<@Nullable TrialId> trial = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyDoubleWrapper share = new ReadOnlyDoubleWrapper(0);
  private final ReadOnlyStringWrapper words = new ReadOnlyStringWrapper("");
  private @Nullable Told told;

  /**
   * Starts with nothing to do.
   *
   * @param tasks runs the work
   * @param screen hands its progress to the screen's thread
   */
  public EstimateRun(Tasks tasks, Executor screen, Maker maker) {
    this.tasks = tasks;
    this.screen = screen;
    this.maker = maker;
  }

  /** The trial that is being estimated; null when none is. */
  public ReadOnlyObjectProperty<@Nullable TrialId> trialProperty() {
    return trial.getReadOnlyProperty();
  }

  /** How much is done, 0 to 1. */
  public ReadOnlyDoubleProperty shareProperty() {
    return share.getReadOnlyProperty();
  }

  /** Which trial is being estimated and how far; empty when none is. */
  public ReadOnlyStringProperty wordsProperty() {
    return words.getReadOnlyProperty();
  }

  /** Estimates a trial; does nothing while another is being estimated. */
  public void start(
      SessionFolder folder,
      TrialId id,
      BiConsumer<TrialId, Estimate> done,
      Consumer<Exception> failed) {
    if (trial.get() != null) {
      return;
    }
    Told run = new Told();
    told = run;
    trial.set(id);
    progress(run, 0);
    tasks.run(
        () -> maker.make(folder, id, run),
        found -> {
          end(run);
          done.accept(id, found);
        },
        problem -> {
          end(run);
          if (!run.stopped()) {
            failed.accept(problem);
          }
        });
  }

  /** Asks it to stop; what is not finished is not stored. */
  public void stop() {
    Told run = told;
    if (run != null) {
      run.stop = true;
      words.set("Stopping");
    }
  }

  private void end(Told run) {
    if (told == run) {
      told = null;
      trial.set(null);
      share.set(0);
      words.set("");
    }
  }

  private void progress(Told run, double done) {
    TrialId id = trial.get();
    if (told == run && id != null && !run.stopped()) {
      share.set(done);
      words.set(
          String.format(
              Locale.ROOT,
              "Estimating %s hand %d, %.0f %%",
              id.hand().code(),
              id.repeat(),
              Math.floor(done * 100)));
    }
  }

  /** Hears the work on its own thread, and tells the screen when there is something new to see. */
  private final class Told implements Progress {
    private volatile boolean stop;
    private double shown = -1;

    @Override
    public void at(double done, String what) {
      if (done - shown >= SHOWN_STEP) {
        shown = done;
        screen.execute(() -> progress(this, done));
      }
    }

    @Override
    public boolean stopped() {
      return stop;
    }
  }
}
