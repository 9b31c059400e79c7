package palmturn.app.estimate;

import java.util.Locale;
import java.util.concurrent.Executor;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import org.jspecify.annotations.Nullable;
import palmturn.app.tasks.LongTask;
import palmturn.app.tasks.Tasks;
import palmturn.store.SessionFolder;
import palmturn.trial.Estimate;
import palmturn.trial.TrialId;

/** An estimate being made in the background: one at a time, and it can be stopped. */
public final class EstimateRun {
  private final LongTask run;
  private final EstimateMaker maker;
  private final ReadOnlyObjectWrapper<@Nullable TrialId> trial = new ReadOnlyObjectWrapper<>();

  /**
   * Starts with nothing to do.
   *
   * @param tasks runs the work
   * @param screen hands its progress to the screen's thread
   */
  public EstimateRun(Tasks tasks, Executor screen, EstimateMaker maker) {
    run = new LongTask(tasks, screen);
    this.maker = maker;
  }

  /** The trial that is being estimated; null when none is. */
  public ReadOnlyObjectProperty<@Nullable TrialId> trialProperty() {
    return trial.getReadOnlyProperty();
  }

  /** The share that is done, 0 to 1. */
  public ReadOnlyDoubleProperty shareProperty() {
    return run.shareProperty();
  }

  /** The trial that is being estimated and the progress, in words; empty when none is. */
  public ReadOnlyStringProperty wordsProperty() {
    return run.wordsProperty();
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
    trial.set(id);
    run.start(
        share ->
            String.format(
                Locale.ROOT,
                "Estimating %s hand %d, %.0f %%",
                id.hand().code(),
                id.repeat(),
                Math.floor(share * 100)),
        progress -> maker.make(folder, id, progress),
        () -> trial.set(null),
        found -> done.accept(id, found),
        failed);
  }

  /** Asks it to stop; what is not finished is not stored. */
  public void stop() {
    run.stop();
  }
}
