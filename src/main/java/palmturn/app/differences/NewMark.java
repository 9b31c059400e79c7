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

/** A mark made by the reviewer where neither reading is right; it lies on the frame shown. */
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
   * @param fail receives an error in one line
   */
  NewMark(Stage stage, Consumer<String> fail) {
    this.stage = stage;
    this.fail = fail;
    stage.frameProperty().addListener((frame, before, now) -> moveTo(now.intValue()));
  }

  /** True while a mark is being made. */
  public ReadOnlyBooleanProperty activeProperty() {
    return active.getReadOnlyProperty();
  }

  /** The slap so far; null if none or a span is being made. */
  public ReadOnlyObjectProperty<@Nullable Slap> slapProperty() {
    return slap.getReadOnlyProperty();
  }

  /** The span so far; null if none or a slap is being made. */
  public ReadOnlyObjectProperty<@Nullable Span> spanProperty() {
    return span.getReadOnlyProperty();
  }

  /** Begins with a copy of the first reading's mark, or of the second's if the first has none. */
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

  /** Sets a slap's side, or the start (palm) or end (back) of a span to the frame shown. */
  public void setSide(Side side) {
    Slap now = slap.get();
    if (now != null) {
      slap.set(now.withSide(side));
    }
    moveEnd(side == Side.PALM);
  }

  /** Sets the zone; the same zone again resets it to the centre. */
  public void toggleZone(Zone zone) {
    Slap now = slap.get();
    if (now != null) {
      slap.set(now.withZone(now.zone() == zone ? Zone.CENTRE : zone));
    }
  }

  /** Sets the kind; the same kind again resets it to a slap. */
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
      fail.accept("a span must end after it starts: go to another frame");
    }
  }

  void close() {
    active.set(false);
    slap.set(null);
    span.set(null);
    table = null;
  }
}
