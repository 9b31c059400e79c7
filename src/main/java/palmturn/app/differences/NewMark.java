package palmturn.app.differences;

import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;
import palmturn.app.stage.Stage;
import palmturn.clip.FrameTable;
import palmturn.settle.Difference;
import palmturn.trial.Side;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.Zone;

/** A mark that a reviewer makes where neither reading is right: it lies on the frame shown. */
public final class NewMark {
  private final Stage stage;
  private final Consumer<String> fail;
  private final ReadOnlyBooleanWrapper active = new ReadOnlyBooleanWrapper(false);
  private final ReadOnlyObjectWrapper<@Nullable Slap> slap = new ReadOnlyObjectWrapper<>();
  private final ReadOnlyObjectWrapper<@Nullable Span> span = new ReadOnlyObjectWrapper<>();

  private @Nullable FrameTable table;

  /**
   * Starts without a mark.
   *
   * @param stage shows the frame that a mark lies on
   * @param fail is told in one line what can't be
   */
  NewMark(Stage stage, Consumer<String> fail) {
    this.stage = stage;
    this.fail = fail;
    stage.frameProperty().addListener((frame, before, now) -> moveTo(now.intValue()));
  }

  /** Whether a mark is being made. */
  public ReadOnlyBooleanProperty activeProperty() {
    return active.getReadOnlyProperty();
  }

  /** The mark at a moment as it is so far; null where none, or a stretch, is made. */
  public ReadOnlyObjectProperty<@Nullable Slap> slapProperty() {
    return slap.getReadOnlyProperty();
  }

  /** The stretch as it is so far. */
  public ReadOnlyObjectProperty<@Nullable Span> spanProperty() {
    return span.getReadOnlyProperty();
  }

  /** Begins with what one of the two readings has, the first's before the second's. */
  void begin(ReviewItem item, FrameTable frames, int frame) {
    table = frames;
    Difference<?> difference = item.difference();
    Object from = difference.a() == null ? difference.b() : difference.a();
    if (from instanceof Slap mark) {
      Zone zone = mark.zone() == Zone.UNKNOWN ? Zone.CENTRE : mark.zone();
      slap.set(
          Slap.onFrame(
              mark.kind(), frames.timeS(frame), frames.resolutionS(frame), mark.side(), zone));
    } else if (from instanceof Span stretch) {
      span.set(stretch);
    }
    active.set(true);
  }

  private void moveTo(int frame) {
    FrameTable frames = table;
    Slap now = slap.get();
    if (now != null && frames != null) {
      slap.set(now.movedToFrame(frames.timeS(frame), frames.resolutionS(frame)));
    }
  }

  /** Makes it a slap of a side; lets a stretch begin (palm) or end (back) at the frame shown. */
  public void setSide(Side side) {
    Slap now = slap.get();
    if (now != null) {
      slap.set(now.withSide(side));
    }
    moveEnd(side == Side.PALM);
  }

  /** Names where it touched; the same again: the centre. */
  public void toggleZone(Zone zone) {
    Slap now = slap.get();
    if (now != null) {
      slap.set(now.withZone(now.zone() == zone ? Zone.CENTRE : zone));
    }
  }

  /** Makes it another kind of mark; the same again: a slap. */
  public void toggleKind(Slap.Kind kind) {
    Slap now = slap.get();
    if (now != null) {
      slap.set(now.withKind(now.kind() == kind ? Slap.Kind.SLAP : kind));
    }
  }

  private void moveEnd(boolean start) {
    Span now = span.get();
    if (now == null) {
      return;
    }
    double fromS = start ? stage.timeS() : now.startS();
    double toS = start ? now.endS() : stage.timeS();
    if (toS > fromS) {
      span.set(new Span(now.kind(), fromS, toS, now.note(), now.extra()));
    } else {
      fail.accept("a stretch must end after it begins: go to another frame");
    }
  }

  void close() {
    active.set(false);
    slap.set(null);
    span.set(null);
    table = null;
  }
}
