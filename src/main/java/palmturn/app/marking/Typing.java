package palmturn.app.marking;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import palmturn.app.stage.Stage;
import palmturn.clip.FrameTable;
import palmturn.trial.Reading;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.TimeScale;
import palmturn.trial.TimedBy;

/**
 * Typing along while the clip plays slowly. Each key leaves a rough mark; when the clip stops, all
 * of them snap to the nearest evidence in one step.
 */
public final class Typing {
  /** A source of evidence for slaps. */
  @FunctionalInterface
  public interface EvidenceSource {
    /** Returns the evidence for slaps in a stretch of media time. */
    List<ContactEvidence> between(double fromS, double toS);

    /** Returns an assumption about the evidence in words; empty for none. */
    default String assumption() {
      return "";
    }
  }

  /** A key is pressed within this of the contact, seconds of the wall clock, its lag apart. */
  private static final double HALF_WIDTH_S = 0.06;

  /** Nobody types along with every slap at full speed. */
  private static final double FASTEST = 0.5;

  private static final double MARGIN_S = 0.5;

  private final Stage stage;
  private final Marking marking;
  private final EvidenceSource evidence;
  private final Consumer<List<Snapping.Move>> onSnap;
  private final ReadOnlyBooleanWrapper active = new ReadOnlyBooleanWrapper(false);
  private Set<Slap> before = Set.of();
  private TimeScale scale = TimeScale.REAL;

  /**
   * Types on a stage.
   *
   * @param shown receives the marks that snap, before they do
   */
  public Typing(
      Stage stage, Marking marking, EvidenceSource evidences, Consumer<List<Snapping.Move>> shown) {
    this.stage = stage;
    this.marking = marking;
    this.evidence = evidences;
    this.onSnap = shown;
    stage
        .playingProperty()
        .addListener(
            (playing, was, now) -> {
              if (!now && active.get()) {
                end();
              }
            });
  }

  /** True while keys are typed along. */
  public ReadOnlyBooleanProperty activeProperty() {
    return active.getReadOnlyProperty();
  }

  /**
   * Plays slowly from here, and takes keys for rough marks until it stops.
   *
   * @param timeScale how media seconds become real ones
   */
  public void begin(TimeScale timeScale) {
    Reading now = marking.readingProperty().get();
    if (now == null || stage.framesProperty().get() == null) {
      return;
    }
    scale = timeScale;
    before = new HashSet<>(now.slaps());
    stage.stop();
    while (stage.speedProperty().get().factor() > FASTEST) {
      stage.slower();
    }
    active.set(true);
    stage.playOrStop();
  }

  /** Stops playing, so that the marks snap. */
  public void stop() {
    stage.stop();
  }

  /** Leaves a rough mark at the frame that is shown. */
  public void typeSlap(Side side, boolean fault) {
    double halfS = HALF_WIDTH_S * stage.speedProperty().get().factor();
    double timeS = stage.timeS();
    marking.apply((marks, table) -> FastEdits.addTyped(marks, timeS, halfS, side, fault));
  }

  private void end() {
    active.set(false);
    Reading now = marking.readingProperty().get();
    if (now == null) {
      return;
    }
    List<Slap> typed = now.slaps().stream().filter(this::isNew).toList();
    if (typed.isEmpty()) {
      return;
    }
    Snapping settling = Snapping.of(typed, freeEvidence(now, typed), scale);
    onSnap.accept(settling.moves());
    marking.apply((marks, table) -> FastEdits.snap(marks, settling));
    String taken = evidence.assumption();
    marking.setStep(FastEdits.summary(settling) + (taken.isEmpty() ? "" : "; " + taken));
  }

  private boolean isNew(Slap slap) {
    return slap.timedBy() == TimedBy.TYPED && !before.contains(slap);
  }

  /** Evidence on frames without another mark. */
  private List<ContactEvidence> freeEvidence(Reading now, List<Slap> typed) {
    FrameTable table = stage.framesProperty().get();
    List<Slap> others = now.slaps().stream().filter(slap -> !typed.contains(slap)).toList();
    double fromS = typed.get(0).timeS() - MARGIN_S;
    double toS = typed.get(typed.size() - 1).timeS() + MARGIN_S;
    return evidence.between(fromS, toS).stream()
        .filter(
            found ->
                table == null
                    || others.stream()
                        .noneMatch(
                            other -> table.nearest(other.timeS()) == table.nearest(found.timeS())))
        .toList();
  }
}
