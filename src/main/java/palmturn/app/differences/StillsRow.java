package palmturn.app.differences;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import org.jspecify.annotations.Nullable;
import palmturn.app.look.Follow;
import palmturn.app.look.Look;
import palmturn.clip.Picture;
import palmturn.settle.Difference;
import palmturn.trial.Estimate;
import palmturn.trial.Slap;
import palmturn.trial.Span;
import palmturn.trial.Trial;

/** Three pictures, 12 apart: before, the difference as it plays, after; or the two that differ. */
final class StillsRow extends HBox {
  private final Differences differences;
  private final StillView left;
  private final StillView middle;
  private final StillView right;

  StillsRow(Differences differences, Look look, Follow follow) {
    super(look.px(12));
    this.differences = differences;
    left = new StillView(look, false);
    middle = new StillView(look, true);
    right = new StillView(look, false);
    getStyleClass().setAll("stills");
    setMinWidth(0);
    for (StillView each : List.of(left, middle, right)) {
      HBox.setHgrow(each, Priority.ALWAYS);
    }
    getChildren().setAll(left, middle, right);
    aim();
    follow.changes(differences.openedProperty(), this::aim);
    follow.changes(differences.playing().stills().leftProperty(), this::beside);
    follow.changes(differences.playing().stills().rightProperty(), this::beside);
    follow.changes(differences.afresh().activeProperty(), this::beside);
    follow.changes(differences.stage().pictureProperty(), this::play);
    follow.changes(differences.stage().playingProperty(), this::play);
    follow.changes(differences.stage().speedProperty(), this::play);
    follow.changes(differences.afresh().activeProperty(), this::play);
    beside();
    play();
  }

  private void beside() {
    still(left, differences.playing().stills().leftProperty().get(), true);
    still(right, differences.playing().stills().rightProperty().get(), false);
  }

  /** Where the hands were found or pointed at, they are shown larger. */
  private void aim() {
    Opened opened = differences.openedProperty().get();
    if (opened == null) {
      return;
    }
    Trial trial = opened.trial();
    Estimate made = trial.estimate();
    Estimate.Region hands = trial.places().handRegion();
    Estimate.Region region = hands == null && made != null ? made.handRegion() : hands;
    for (StillView each : List.of(left, middle, right)) {
      each.aim(region);
    }
  }

  private void still(StillView view, @Nullable Picture picture, boolean first) {
    Item item = differences.current();
    Wording wording = Sight.wording(differences);
    if (picture == null || item == null || wording == null) {
      view.show(null, "", "", "");
      return;
    }
    view.show(
        picture,
        !differences.afresh().activeProperty().get() && Playing.twoMoments(item)
            ? end(item, wording, first)
            : first ? "the frame before" : "the frame after",
        wording.at(picture.timeS()),
        onFrame(item, wording, picture));
  }

  private static String end(Item item, Wording wording, boolean first) {
    Difference<?> difference = item.difference();
    if (item instanceof Item.OfSpan) {
      return first ? "where it begins" : "where it ends";
    }
    boolean secondIsLater = difference.gapS() >= 0;
    return wording.reading(first != secondIsLater) + "’s frame";
  }

  private void play() {
    Picture picture = differences.stage().pictureProperty().get();
    Item item = differences.current();
    Wording wording = Sight.wording(differences);
    if (picture == null || item == null || wording == null) {
      middle.show(null, "", "", "");
      return;
    }
    boolean playing = differences.stage().playingProperty().get();
    middle.show(
        picture,
        playing
            ? "playing at " + differences.stage().speedProperty().get().words()
            : differences.afresh().activeProperty().get() ? "your frame" : "this frame",
        wording.at(picture.timeS()),
        onFrame(item, wording, picture));
  }

  /** Returns what either reading has on a frame. */
  private String onFrame(Item item, Wording wording, Picture picture) {
    Opened opened = differences.openedProperty().get();
    if (opened == null) {
      return "";
    }
    List<String> words = new ArrayList<>();
    for (boolean second : new boolean[] {false, true}) {
      Object mark = second ? item.difference().b() : item.difference().a();
      String name = wording.name(second) + ": ";
      if (mark instanceof Slap slap && opened.frames().nearest(slap.timeS()) == picture.index()) {
        words.add(name + Wording.label(slap));
      } else if (mark instanceof Span span && span.contains(picture.timeS())) {
        words.add(name + palmturn.chart.MarkWords.fault(span.kind()));
      }
    }
    return String.join("   ", words);
  }
}
