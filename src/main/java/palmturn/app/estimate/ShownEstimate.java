package palmturn.app.estimate;

import javafx.beans.binding.Bindings;
import javafx.beans.binding.ObjectBinding;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.value.ObservableValue;
import org.jspecify.annotations.Nullable;
import palmturn.trial.Estimate;
import palmturn.trial.Reading;
import palmturn.trial.Trial;

/** The estimate of the trial on the stage, hidden or shown. */
public final class ShownEstimate {
  private final ReadOnlyObjectWrapper<@Nullable Estimate> estimate = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyBooleanWrapper hidden = new ReadOnlyBooleanWrapper(false);
  private final ObjectBinding<@Nullable Estimate> visible =
      Bindings.createObjectBinding(() -> hidden.get() ? null : estimate.get(), estimate, hidden);

  /** The estimate; null before the trial is estimated. */
  public ReadOnlyObjectProperty<@Nullable Estimate> estimateProperty() {
    return estimate.getReadOnlyProperty();
  }

  /** Whether it is hidden. */
  public ReadOnlyBooleanProperty hiddenProperty() {
    return hidden.getReadOnlyProperty();
  }

  /** The estimate as it is shown; null where there is none or it is hidden. */
  public ObservableValue<@Nullable Estimate> visibleProperty() {
    return visible;
  }

  /** Takes another estimate, hidden or not as before. */
  public void set(@Nullable Estimate found) {
    estimate.set(found);
  }

  /** Hides the estimate, or shows it. */
  public void setHidden(boolean hide) {
    hidden.set(hide);
  }

  /**
   * Returns whether somebody reads a trial that another has read: such a reader does it blind, so
   * that the two can be compared.
   *
   * @param reader who reads; null while nobody said so
   */
  public static boolean readsBlind(Trial trial, @Nullable String reader) {
    if (reader == null) {
      return false;
    }
    boolean others = trial.readings().stream().anyMatch(each -> !each.reader().equals(reader));
    return others && trial.reading(reader).map(Reading::independent).orElse(true);
  }
}
